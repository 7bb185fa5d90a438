namespace Contam.Fuzz;

/// <summary>Every word that stands in the texts of the corpus: keys, ids, units and numbers, each as often as any other.</summary>
internal sealed class Words
{
    private readonly List<string> all = ["x"];
    private readonly HashSet<string> known = new(StringComparer.Ordinal);

    /// <summary>Takes the words of a text in.</summary>
    public void Take(string text)
    {
        int from = 0;
        for (int at = 0; at <= text.Length; at++)
        {
            if (at < text.Length && IsOfWord(text[at]))
                continue;
            if (at - from is > 0 and < 40 && all.Count < 5_000 && known.Add(text[from..at]))
                all.Add(text[from..at]);
            from = at + 1;
        }
    }

    /// <summary>One of them.</summary>
    public string Any(Random random) => all[random.Next(all.Count)];

    /// <summary>Whether a character is part of a word.</summary>
    public static bool IsOfWord(char c) => char.IsAsciiLetterOrDigit(c) || c is '-' or '#' or '.' or '_' or '<' or '>' or '=';
}
