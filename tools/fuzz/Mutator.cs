using System.Globalization;
using System.Text;

namespace Contam.Fuzz;

/// <summary>Changes texts as a hostile or a clumsy hand would: by characters, by words, by lines, by blocks and by what stands between brackets.</summary>
internal sealed class Mutator(Random random, Words words)
{
    private const int Longest = 12_000;

    private static readonly string[] Pieces =
    [
        "\t", "\r", "\n", "\r\n", "\n\n", "  ", "- ", ": ", ",", "[", "]", "{", "}", "\"", "'", "|", ">", ">-\n", "&a ", "*a", "!t ", "!!str ", "!", "<<: ", "# ", "#", "-#", "---\n", "...\n",
        "%YAML 1.2\n", "? ", "\u0007", "\u001b[31m", "\uFEFF", "\u2028", "\u202E", "\u00A0", "µ", "🙂", "e\u0301", "漢", "~", "null", "true", "=1+1", "<b>", "\\", "\"\\u0000\"", "\"\\x1b[2J\"",
        "@", "`", "=", "[[[[", "{a: {b: ", "\0", "..", "/", "../../stolen.yaml", "../modules/link.yaml", "../modules/zero.yaml", "../modules/circle.yaml", "out/stolen.yaml", "../modules/side.yaml",
    ];

    private static readonly string[] Numbers =
    [
        "0", "-0", "1", "-1", "00", "1e999", "1e-999", "0.0000000001", "99999", "1000000000", "2147483647", "2147483648", "-2147483648", "9223372036854775808", "9,5", "1.", ".5", "0x10", "0o7", "NaN", ".inf", "10000", "64", "65",
    ];

    /// <summary>A changed text; <paramref name="other"/> lends it pieces.</summary>
    public string Change(string text, string other)
    {
        int changes = random.Next(4) == 0 ? random.Next(2, 8) : 1;
        for (int i = 0; i < changes; i++)
            text = ChangeOnce(text, other);
        return text.Length > Longest ? text[..Longest] : text;
    }

    private string ChangeOnce(string text, string other) => random.Next(15) switch
    {
        0 => Cut(text, random.Next(text.Length + 1), random.Next(1, 30)),
        1 => text.Insert(random.Next(text.Length + 1), Pieces[random.Next(Pieces.Length)]),
        2 => ChangeCharacter(text),
        3 => text[..random.Next(text.Length + 1)],
        4 or 5 => ChangeWord(text, _ => words.Any(random)),
        6 => ChangeWord(text, _ => Numbers[random.Next(Numbers.Length)]),
        7 => ChangeWord(text, word => word + (random.Next(2) == 0 ? "-#" : "-1")),
        8 => ChangeWord(text, _ => ""),
        9 => ChangeBrackets(text, other),
        10 or 11 => ChangeLines(text, other),
        12 => ChangeWord(text, word => random.Next(3) switch { 0 => $"[{word}]", 1 => $"{{{word}: {words.Any(random)}}}", _ => $"\"{word}\"" }),
        13 => InsertEntry(text),
        _ => Joined(text, other),
    };

    private static string Cut(string text, int at, int length) => text.Remove(at, Math.Min(length, text.Length - at));

    private string ChangeCharacter(string text)
    {
        if (text.Length == 0)
            return text;
        int at = random.Next(text.Length);
        return text[..at] + (char)random.Next(' ', 127) + text[(at + 1)..];
    }

    private string ChangeWord(string text, Func<string, string> changed)
    {
        if (text.Length == 0)
            return text;
        int from = random.Next(text.Length);
        while (from > 0 && Words.IsOfWord(text[from - 1]))
            from--;
        int to = from;
        while (to < text.Length && Words.IsOfWord(text[to]))
            to++;
        return text[..from] + changed(text[from..to]) + text[to..];
    }

    /// <summary>Takes what stands between two brackets out, doubles it, or puts another such piece in its place.</summary>
    private string ChangeBrackets(string text, string other)
    {
        if (Bracketed(text) is not (int from, int to))
            return text;
        string replacement = random.Next(4) switch
        {
            0 => "",
            1 => text[from..to] + ", " + text[from..to],
            2 => "[" + text[from..to] + "]",
            _ => Bracketed(other) is (int otherFrom, int otherTo) ? other[otherFrom..otherTo] : "{}",
        };
        return text[..from] + replacement + text[to..];
    }

    private (int From, int To)? Bracketed(string text)
    {
        if (text.Length == 0)
            return null;
        int start = random.Next(text.Length);
        int from = text.IndexOfAny(['[', '{'], start);
        if (from < 0)
            from = text.IndexOfAny(['[', '{']);
        if (from < 0)
            return null;
        int depth = 0;
        for (int at = from; at < text.Length; at++)
        {
            depth += text[at] is '[' or '{' ? 1 : text[at] is ']' or '}' ? -1 : 0;
            if (depth == 0)
                return (from, at + 1);
        }

        return null;
    }

    /// <summary>Moves, doubles or takes out a line with everything that is indented below it, or puts one of another text in.</summary>
    private string ChangeLines(string text, string other)
    {
        List<string> lines = [.. text.Split('\n')];
        (int from, int count) = Block(lines);
        List<string> block = lines.GetRange(from, count);
        switch (random.Next(6))
        {
            case 0:
                lines.RemoveRange(from, count);
                break;
            case 1:
                lines.InsertRange(from, block);
                break;
            case 2:
                lines.RemoveRange(from, count);
                lines.InsertRange(random.Next(lines.Count + 1), block);
                break;
            case 3:
                int spaces = random.Next(0, 6);
                lines[from] = new string(' ', spaces) + lines[from].TrimStart(' ');
                break;
            case 4:
                lines[from] = lines[from].TrimEnd('\r') + "\r";
                break;
            default:
                List<string> others = [.. other.Split('\n')];
                (int otherFrom, int otherCount) = Block(others);
                lines.InsertRange(from, others.GetRange(otherFrom, otherCount));
                break;
        }

        return string.Join('\n', lines);
    }

    private (int From, int Count) Block(List<string> lines)
    {
        int from = random.Next(lines.Count);
        int indent = IndentOf(lines[from]);
        int to = from + 1;
        while (to < lines.Count && IndentOf(lines[to]) > indent)
            to++;
        return (from, to - from);
    }

    private static int IndentOf(string line) => line.Length - line.TrimStart(' ').Length;

    private string InsertEntry(string text)
    {
        int brace = text.Length == 0 ? -1 : text.IndexOf('}', random.Next(text.Length));
        string entry = string.Create(CultureInfo.InvariantCulture, $"{words.Any(random)}: {words.Any(random)}");
        return brace < 0 ? text + "\n" + entry : text[..brace] + ", " + entry + text[brace..];
    }

    private string Joined(string text, string other)
    {
        var joined = new StringBuilder();
        joined.Append(text, 0, random.Next(text.Length + 1));
        int from = random.Next(other.Length + 1);
        return joined.Append(other, from, Math.Min(other.Length - from, 2_000)).ToString();
    }
}
