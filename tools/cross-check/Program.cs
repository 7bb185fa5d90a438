using System.Globalization;
using Contam.CrossCheck;
using Contam.Support.Generation;

// Writes random families and this library's answers about them, a line of JSON each, for check.py to judge.
// Arguments: how many families (1000), the first seed (1). The same arguments give the same bytes.
int families = Number(0, 1000);
int firstSeed = Number(1, 1);
using Stream output = Console.OpenStandardOutput();
for (int seed = firstSeed; seed < firstSeed + families; seed++)
{
    CaseLine.Write(output, seed, Cases.Make(seed) with { Own = [] });
    output.WriteByte((byte)'\n');
}

int Number(int place, int otherwise) => args.Length > place ? int.Parse(args[place], NumberStyles.None, CultureInfo.InvariantCulture) : otherwise;
