using System.Globalization;
using Contam.Families;

namespace Contam.Reports.Sheets;

/// <summary>Which circuits a part stands in, by number, so that a script can filter by them.</summary>
internal sealed class SheetCircuits
{
    private readonly Dictionary<string, List<int>> circuitsOf = new(StringComparer.Ordinal);

    public SheetCircuits(Family family)
    {
        for (int i = 0; i < family.Circuits.Length; i++)
        {
            foreach (PartId part in family.Circuits[i].Parts)
            {
                if (!circuitsOf.TryGetValue(part.Value, out List<int>? circuits))
                    circuitsOf.Add(part.Value, circuits = []);
                if (!circuits.Contains(i))
                    circuits.Add(i);
            }
        }

        Names = [.. family.Circuits.Select(circuit => circuit.Name)];
    }

    /// <summary>The circuits, in the order of the family.</summary>
    public string[] Names { get; }

    /// <summary>The numbers of the circuits that any of these parts stands in; empty for none, which is shown with every filter.</summary>
    public string Of(IEnumerable<string> parts) => string.Join(' ', parts.SelectMany(part => circuitsOf.GetValueOrDefault(part, [])).Distinct().Order().Select(Number));

    /// <summary>A whole number, the same in every culture.</summary>
    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
