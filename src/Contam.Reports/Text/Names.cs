using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>Names of parts for people.</summary>
internal sealed class Names(Family family)
{
    private readonly Dictionary<int, string[]> namesByNumber = family.Parts
        .Where(part => part.RepeatIndex > 0)
        .GroupBy(part => part.RepeatIndex)
        .ToDictionary(group => group.Key, group => group.Select(part => part.Name).OrderByDescending(name => name.Length).ToArray());

    /// <summary>The name of a part, or its id where the family does not have it.</summary>
    public string Of(string id) => family.Find(new PartId(id))?.Name ?? id;

    /// <summary>The number of a repeated part, else 0.</summary>
    public int NumberOf(string id) => family.Find(new PartId(id))?.RepeatIndex ?? 0;

    /// <summary>The name without the number of a repeated part.</summary>
    public string WithoutNumber(string id)
    {
        string name = Of(id);
        string number = " " + NumberOf(id).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return NumberOf(id) > 0 && name.EndsWith(number, StringComparison.Ordinal) ? name[..^number.Length] : name;
    }

    /// <summary>The name as it stands in a sentence.</summary>
    public string InSentence(string id)
    {
        string name = Of(id);
        return name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
    }

    /// <summary>What a repeated part is a repeat of, else empty.</summary>
    public string RepeatOf(string id) => family.Find(new PartId(id))?.RepeatOf ?? "";

    /// <summary>Names of parts as they stand in a sentence, neighbours that differ only in their number folded.</summary>
    public string Folded(IEnumerable<string> ids) => string.Join(", ", RepeatFolding.Fold(ids, NumberOf, RepeatOf).Select(FoldedName));

    /// <summary>Names at the beginning of a line, the same way.</summary>
    public string FoldedAtStart(IEnumerable<string> ids)
    {
        string names = Folded(ids);
        return names.Length == 0 ? names : char.ToUpperInvariant(names[0]) + names[1..];
    }

    private string FoldedName(List<string> group) => group.Count == 1
        ? InSentence(group[0])
        : $"{InSentence(group[0])}–{NumberOf(group[^1]).ToString(System.Globalization.CultureInfo.InvariantCulture)}";

    /// <summary>A text in which the number of every repeated part of that number is written otherwise.</summary>
    public string Renumber(string text, int number, string otherwise)
    {
        string tail = " " + number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        foreach (string name in namesByNumber.GetValueOrDefault(number, []))
        {
            if (!name.EndsWith(tail, StringComparison.Ordinal))
                continue;
            // A name that begins with a capital stands in sentences without it.
            string rest = name[1..];
            for (int at = text.IndexOf(rest, StringComparison.Ordinal); at >= 0; at = text.IndexOf(rest, at + 1, StringComparison.Ordinal))
            {
                int end = at + rest.Length;
                bool isWhole = at > 0 && char.ToUpperInvariant(text[at - 1]) == char.ToUpperInvariant(name[0]) && (end == text.Length || !char.IsAsciiDigit(text[end]) && text[end] != '–');
                if (isWhole)
                    text = text[..(end - tail.Length + 1)] + otherwise + text[end..];
            }
        }

        return text;
    }
}
