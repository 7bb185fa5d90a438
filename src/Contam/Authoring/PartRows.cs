using Contam.Families;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>Writes the parts of a table, and those that only joints name, as a section of a family file.</summary>
internal sealed class PartRows(TrackedText text, Catalogue catalogue, ProblemList problems)
{
    private const int LongestLine = 120;

    /// <summary>Writes a part of the table.</summary>
    public void Write(TableSheet sheet, TableRow row)
    {
        CellPlace place = sheet.Place(row, "id");
        string written = sheet.Cell(row, "id");
        string id = CellWords.Id(written);
        List<(string Key, string Value, CellPlace Place)> keys = KeysOf(sheet, row, written, id, place);
        string doubts = string.Join(", ", TableColumns.Parts.Select(column => column.Title).Where(title => sheet.SaysUnknown(row, title)));
        Entry(id, place, keys, doubts.Length == 0 ? "" : $"not known: {doubts}");
    }

    /// <summary>Writes a part that only joints name; its kind is the last word of its id.</summary>
    public void WriteUnsaid(string written, string id, CellPlace place)
    {
        if (KindIn(id) is not { } kind)
        {
            problems.Add(place.Problem(ProblemCodes.MissingKey, $"{Wording.Quoted(written)} is in no row of the table of parts, and its name does not end in a kind of part", "give it a row with `id` and `kind`, or a name that ends in its kind, as in `winch-pump`"));
            kind = "housing";
        }

        var keys = new List<(string, string, CellPlace)> { ("kind", kind, place) };
        if (NameIn(written, id) is { } name)
            keys.Add(("name", YamlWords.Of(name), place));
        Entry(id, place, keys, "kind taken from its name");
    }

    /// <summary>The kind that an id ends in, the longest that fits; <c>null</c> for none.</summary>
    private string? KindIn(string id)
    {
        string bare = id.EndsWith("-#", StringComparison.Ordinal) ? id[..^2] : id.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').TrimEnd('-');
        return catalogue.Kinds.Select(kind => kind.Name).Where(kind => bare == kind || bare.EndsWith("-" + kind, StringComparison.Ordinal)).MaxBy(kind => kind.Length);
    }

    private List<(string Key, string Value, CellPlace Place)> KeysOf(TableSheet sheet, TableRow row, string written, string id, CellPlace place)
    {
        var keys = new List<(string Key, string Value, CellPlace Place)>();
        string kind = sheet.Cell(row, "kind");
        if (kind.Length > 0)
            Add("kind", CellWords.Id(kind), "kind");
        else if (KindIn(id) is { } found)
            keys.Add(("kind", found, place));
        else
            problems.Add(place.Problem(ProblemCodes.MissingKey, $"{Wording.Quoted(written)} has no kind", "write it in the column kind, for instance hose, pump or bearing"));

        string name = sheet.Cell(row, "name");
        if (name.Length > 0)
            Add("name", YamlWords.Of(name), "name");
        else if (NameIn(written, id) is { } asWritten)
            keys.Add(("name", YamlWords.Of(asWritten), place));
        Said("count", YamlWords.Of);
        Made("sheds", (cell, at) => CellWords.Sheds(cell, at, problems));
        Made("holds", (cell, at) => CellWords.Pairs(cell, "metal 30 um; water all", at, problems));
        foreach (string word in new[] { "rating", "bypass", "passage", "clearance", "cleared-by", "test-at", "removable" })
            Said(word, word is "bypass" or "removable" ? CellWords.Flag : YamlWords.Of);
        foreach (string list in new[] { "access", "stands-on", "rides-on", "together", "assembly" })
            Said(list, list is "rides-on" or "assembly" ? cell => YamlWords.Of(CellWords.Id(cell)) : CellWords.Ids);
        Said("seals", CellWords.List);
        Group("inspect", ("look-minutes", "minutes", YamlWords.Of), ("look-shows", "shows", YamlWords.Of), ("look-how", "how", YamlWords.Of), ("look-access", "access", CellWords.Ids), ("look-uses-up", "uses-up", CellWords.Flag), ("look-takes-off", "takes-off", CellWords.Flag));
        Group("send-out", ("away-days", "days", YamlWords.Of), ("away-who", "who", YamlWords.Of));
        Made("minutes", (cell, at) => CellWords.Pairs(cell, "remove 40; refit 50", at, problems));
        foreach (string figure in new[] { "lead", "volume", "bore", "length" })
            Said(figure, YamlWords.Of);
        Made("meant", (cell, at) => CellWords.Meant(cell, at, problems));
        return keys;

        void Add(string key, string value, string column) => keys.Add((key, value, sheet.Place(row, column)));

        void Said(string column, Func<string, string> of)
        {
            if (sheet.Cell(row, column) is { Length: > 0 } cell)
                Add(column, of(cell), column);
        }

        void Made(string column, Func<string, CellPlace, string?> of)
        {
            if (sheet.Cell(row, column) is { Length: > 0 } cell && of(cell, sheet.Place(row, column)) is { } value)
                Add(column, value, column);
        }

        void Group(string key, params ReadOnlySpan<(string Column, string Inner, Func<string, string> Of)> inner)
        {
            var said = new List<string>();
            string first = "";
            foreach ((string column, string name, Func<string, string> of) in inner)
            {
                if (sheet.Cell(row, column) is not { Length: > 0 } cell)
                    continue;
                said.Add($"{name}: {of(cell)}");
                first = first.Length == 0 ? column : first;
            }

            if (said.Count > 0)
                Add(key, $"{{{string.Join(", ", said)}}}", first);
        }
    }

    private void Entry(string id, CellPlace place, List<(string Key, string Value, CellPlace Place)> keys, string comment)
    {
        string note = comment.Length == 0 ? "" : $"   # {comment}";
        text.Add("  ").Add(YamlWords.Of(id), place).Add(":");
        bool fits = id.Length + keys.Sum(key => key.Key.Length + key.Value.Length + 4) + note.Length < LongestLine;
        text.Add(fits ? " {" : note + "\n");
        for (int i = 0; i < keys.Count; i++)
        {
            text.Add(fits ? i > 0 ? ", " : "" : "    ").Add($"{keys[i].Key}: {keys[i].Value}", keys[i].Place);
            if (!fits)
                text.Add("\n");
        }

        if (fits)
            text.Add($"}}{note}\n");
    }

    // `Oil filter (spin-on)` stays what people read; `oil-filter` and `Oil filter` are what is read anyway.
    private static string? NameIn(string written, string id) =>
        written == id || string.Equals(written, FamilyTables.DefaultName(id), StringComparison.OrdinalIgnoreCase) ? null : written;
}
