using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>Turns cells into YAML: names with spaces into ids, lists parted by semicolons, and what is shed, held or meant.</summary>
internal static class CellWords
{
    private static readonly IdShape Part = new("the id of a part", "oil-filter", RepeatMark.AtEnd);
    private static readonly string[] Forms = ["flakes", "slivers", "grains", "fuzz"];
    private static readonly string[] Likely = ["rare", "occasional", "common"];

    /// <summary>The id that a cell means: <c>Oil filter</c> is <c>oil-filter</c>. What can be none stays as it is, so that the reader says so.</summary>
    public static string Id(string cell) => Part.IsId(cell) ? cell : Part.Mended(cell) ?? cell;

    /// <summary>The items of a list.</summary>
    public static string[] Items(string cell) => cell.Split([';', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>A list of ids in brackets; an empty one where the cell says none.</summary>
    public static string Ids(string cell) => IsNone(cell) ? "[]" : YamlWords.List(Items(cell).Select(Id));

    /// <summary>A list in brackets; an empty one where the cell says none.</summary>
    public static string List(string cell) => IsNone(cell) ? "[]" : YamlWords.List(Items(cell));

    /// <summary><c>true</c> or <c>false</c> for yes and no; anything else as it is, so that the reader says what is due.</summary>
    public static string Flag(string cell) => cell.ToLowerInvariant() switch
    {
        "yes" or "y" or "x" or "true" or "1" => "true",
        "no" or "n" or "false" or "0" => "false",
        _ => YamlWords.Of(cell),
    };

    /// <summary><c>metal common 400 um magnetic flakes; rubber rare</c> as a mapping, or <c>null</c> after a problem was raised.</summary>
    public static string? Sheds(string cell, CellPlace place, ProblemList problems)
    {
        var all = new List<string>();
        foreach (string item in Items(cell))
        {
            string[] words = item.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var keys = new List<string>();
            // Nothing is missed by how likely a part is to shed; it only orders the suspects.
            string likely = "occasional";
            for (int i = 1; i < words.Length; i++)
            {
                string word = words[i].ToLowerInvariant();
                if (Likely.Contains(word))
                    likely = word;
                else if (Forms.Contains(word))
                    keys.Add($"form: {word}");
                else if (word is "magnetic" or "not-magnetic")
                    keys.Add($"magnetic: {(word == "magnetic" ? "true" : "false")}");
                else if (char.IsAsciiDigit(word[0]))
                    keys.Add($"up-to: {YamlWords.Of(i + 1 < words.Length && !char.IsAsciiDigit(words[i][^1]) || i + 1 == words.Length ? words[i] : words[i] + " " + words[++i])}");
                else
                    return Refuse($"{Wording.Quoted(words[i])} says nothing of what is shed", Wording.DidYouMean(NearName.Of(word, [.. Likely, .. Forms, "magnetic", "not-magnetic"]), "write debris, how likely, and if known a size and looks: `metal common 400 um magnetic flakes`"));
            }

            keys.Insert(0, $"likely: {likely}");
            all.Add(keys.Count == 1 ? $"{YamlWords.Of(words[0])}: {likely}" : $"{YamlWords.Of(words[0])}: {{{string.Join(", ", keys)}}}");
        }

        return $"{{{string.Join(", ", all)}}}";

        string? Refuse(string text, string mend)
        {
            problems.Add(place.Problem(ProblemCodes.BadTable, text, mend));
            return null;
        }
    }

    /// <summary><c>metal 30 um; water all</c> or <c>remove 40; refit 50</c> as a mapping, or <c>null</c> after a problem was raised.</summary>
    public static string? Pairs(string cell, string example, CellPlace place, ProblemList problems)
    {
        var all = new List<string>();
        foreach (string item in Items(cell))
        {
            int space = item.IndexOfAny([' ', ':', '=']);
            if (space <= 0)
            {
                problems.Add(place.Problem(ProblemCodes.BadTable, $"nothing stands behind {Wording.Quoted(item)}", $"for instance `{example}`"));
                return null;
            }

            all.Add($"{YamlWords.Of(item[..space])}: {YamlWords.Of(item[(space + 1)..].TrimStart(' ', ':', '='))}");
        }

        return $"{{{string.Join(", ", all)}}}";
    }

    /// <summary><c>dead-end=it ends over the side</c> as a mapping, or <c>null</c> after a problem was raised.</summary>
    public static string? Meant(string cell, CellPlace place, ProblemList problems)
    {
        var all = new List<string>();
        foreach (string item in System.Text.RegularExpressions.Regex.Split(cell, @";\s*(?=[a-z-]+\s*=)"))
        {
            int sign = item.IndexOf('=', StringComparison.Ordinal);
            if (sign <= 0)
            {
                problems.Add(place.Problem(ProblemCodes.BadTable, $"{Wording.Quoted(item)} gives no reason", "write the code, `=` and the reason: `dead-end=it ends over the side`"));
                return null;
            }

            all.Add($"{YamlWords.Of(item[..sign].Trim())}: {YamlWords.Of(item[(sign + 1)..])}");
        }

        return $"{{{string.Join(", ", all)}}}";
    }

    private static bool IsNone(string cell) => cell.ToLowerInvariant() is "none" or "-" or "[]";
}
