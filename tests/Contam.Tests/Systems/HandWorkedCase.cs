using System.Globalization;

namespace Contam.Tests.Systems;

/// <summary>
/// A failure of a shipped family, worked out by hand: which parts it reaches and how, what some of them get, and what must come before what.
/// A file of lines: <c>family</c>, <c>failed</c>, <c>debris</c>, <c>exposed:</c>, <c>guarded:</c>, <c>clear:</c>, <c>treatment PART: …</c>,
/// <c>before: ACTION PART &lt; ACTION PART</c>, <c>conditional: PART: …</c>; <c>a-1..4</c> stands for a-1 to a-4.
/// </summary>
internal sealed class HandWorkedCase
{
    public string Family { get; private set; } = "";

    public string[] Failed { get; private set; } = [];

    public string[] Debris { get; private set; } = [];

    public string[] Exposed { get; private set; } = [];

    public string[] Guarded { get; private set; } = [];

    public string[] Clear { get; private set; } = [];

    public List<(string Part, string[] Treatments)> Treatments { get; } = [];

    public List<(string First, string Then)> Order { get; } = [];

    public List<(string IfFailed, string[] Parts)> Conditional { get; } = [];

    public static HandWorkedCase Read(string file)
    {
        var result = new HandWorkedCase();
        foreach (string line in File.ReadLines(file).Select(line => line.Split('#')[0].Trim()).Where(line => line.Length > 0))
            result.Take(line);
        return result;
    }

    private void Take(string line)
    {
        string word = line.Split([' ', ':'], 2)[0];
        string rest = line[word.Length..].TrimStart(':', ' ');
        switch (word)
        {
            case "family":
                Family = rest;
                break;
            case "failed":
                Failed = Ids(rest);
                break;
            case "debris":
                Debris = Ids(rest);
                break;
            case "exposed":
                Exposed = Ids(rest);
                break;
            case "guarded":
                Guarded = Ids(rest);
                break;
            case "clear":
                Clear = Ids(rest);
                break;
            case "treatment":
                string[] treated = rest.Split(':', 2, StringSplitOptions.TrimEntries);
                Treatments.Add((treated[0], Ids(treated[1])));
                break;
            case "before":
                string[] sides = rest.Split('<', StringSplitOptions.TrimEntries);
                Order.Add((sides[0], sides[1]));
                break;
            case "conditional":
                string[] condition = rest.Split(':', 2, StringSplitOptions.TrimEntries);
                Conditional.Add((condition[0], Ids(condition[1])));
                break;
            default:
                throw new FormatException($"a line of a hand-worked case begins with {word}");
        }
    }

    private static string[] Ids(string list) => [.. list.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).SelectMany(WrittenOut)];

    /// <summary>What <c>a-1..4</c> stands for.</summary>
    public static IEnumerable<string> WrittenOut(string id)
    {
        int dots = id.IndexOf("..", StringComparison.Ordinal);
        if (dots < 0)
            return [id];
        int dash = id.LastIndexOf('-', dots);
        int first = int.Parse(id[(dash + 1)..dots], CultureInfo.InvariantCulture);
        int last = int.Parse(id[(dots + 2)..], CultureInfo.InvariantCulture);
        return Enumerable.Range(first, last - first + 1).Select(number => string.Create(CultureInfo.InvariantCulture, $"{id[..dash]}-{number}"));
    }
}
