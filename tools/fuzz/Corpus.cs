using System.Security.Cryptography;

namespace Contam.Fuzz;

/// <summary>Texts from which others are made: a folder for each sort, a file for each text.</summary>
internal sealed class Corpus
{
    private readonly List<Input>[] inputs = [[], [], [], []];
    private readonly List<Input>[] sound = [[], [], [], []];

    /// <summary>How many there are.</summary>
    public int Count => inputs.Sum(sort => sort.Count);

    /// <summary>Adds one.</summary>
    public void Add(Input input, bool isSound)
    {
        inputs[(int)input.Sort].Add(input);
        if (isSound)
            sound[(int)input.Sort].Add(input);
    }

    /// <summary>One of a sort; sound ones, the newest and the shorter more often than the others.</summary>
    public Input Any(Sort sort, Random random)
    {
        // Of a broken text only broken ones come, and those never get to what is read last.
        List<Input> of = sound[(int)sort].Count > 0 && random.Next(2) == 0 ? sound[(int)sort] : inputs[(int)sort];
        int from = random.Next(2) == 0 ? of.Count * 3 / 4 : 0;
        Input one = of[random.Next(from, of.Count)];
        Input other = of[random.Next(from, of.Count)];
        return one.Bytes.Length < other.Bytes.Length || random.Next(8) == 0 ? one : other;
    }

    /// <summary>Every text of a folder, in the order of their names; none where there is no folder.</summary>
    public static IEnumerable<Input> Read(string folder)
    {
        foreach (Sort sort in Enum.GetValues<Sort>())
        {
            string of = Path.Combine(folder, NameOf(sort));
            if (!Directory.Exists(of))
                continue;
            foreach (string file in Directory.EnumerateFiles(of).Order(StringComparer.Ordinal))
                yield return new Input(sort, File.ReadAllBytes(file));
        }
    }

    /// <summary>Writes a text under the name of its hash; answers with the file.</summary>
    public static string Write(string folder, Input input)
    {
        string of = Path.Combine(folder, NameOf(input.Sort));
        Directory.CreateDirectory(of);
        string file = Path.Combine(of, Convert.ToHexStringLower(SHA256.HashData(input.Bytes))[..12] + ".yaml");
        File.WriteAllBytes(file, input.Bytes);
        return file;
    }

    /// <summary>The folder of a sort.</summary>
    public static string NameOf(Sort sort) => sort.ToString().ToLowerInvariant();
}
