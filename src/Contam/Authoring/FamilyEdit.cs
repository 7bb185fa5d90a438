using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>
/// Changes the text of a family file where something is added, and leaves all else as a person wrote it: comments, order, spaces. Nothing is written anew from what
/// was read. Cost: one reading of the text for each change.
/// </summary>
public static class FamilyEdit
{
    private static readonly string[] Order = ["fluids", "parts", "circuits", "links", "limits"];

    /// <summary>Adds an entry to a section, which is made at the end of the file where there is none; <c>null</c> where the text is not such a file.</summary>
    /// <param name="text">The file.</param>
    /// <param name="section">The section, for instance <c>parts</c>.</param>
    /// <param name="name">The name of the entry.</param>
    /// <param name="value">Its value: on one line, or lines without indentation that are indented under it.</param>
    public static string? AddEntry(string text, string section, string name, string value)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (RootOf(text) is not { } root)
            return null;
        if (Find(root.Map, section) is not MapNode entries)
            return NewSection(root.Source.Text, root.Map, section, $"{section}:\n{Block("  ", name, value)}");
        return Insert(root.Source, entries, name, value);
    }

    /// <summary>Sets a key of an entry of a section; what stood behind the key before is replaced. <c>null</c> where there is no such entry.</summary>
    public static string? Set(string text, string section, string name, string key, string value)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (RootOf(text) is not { } root || Find(root.Map, section) is not MapNode entries || Find(entries, name) is not MapNode entry)
            return null;
        if (Find(entry, key) is not { } old)
            return Insert(root.Source, entry, key, value);
        string source = root.Source.Text;
        return source[..old.Start] + value + source[EndOf(source, old)..];
    }

    /// <summary>Sets a key of the file itself; <c>null</c> where the text is no such file.</summary>
    public static string? SetTop(string text, string key, string value)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (RootOf(text) is not { } root)
            return null;
        string source = root.Source.Text;
        if (Find(root.Map, key) is { } old)
            return source[..old.Start] + value + source[EndOf(source, old)..];
        // Behind the family's own name, where a person looks for it.
        SheetNode after = Find(root.Map, "family") ?? root.Map.Entries[0].Value;
        int line = LineEnd(source, EndOf(source, after));
        return $"{source[..line]}\n{key}: {value}{source[line..]}";
    }

    /// <summary>Adds a run to a circuit; <c>null</c> where there is no such circuit.</summary>
    public static string? AddRun(string text, string circuit, string firstPart)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (RootOf(text) is not { } root)
            return null;
        if (Find(root.Map, "circuits") is not MapNode circuits || Find(circuits, circuit) is not MapNode one)
            return AddEntry(text, "circuits", circuit, $"\nruns:\n  - [{firstPart}]");
        if (Find(one, "runs") is not ListNode { Items.Count: > 0 } runs)
            return Insert(root.Source, one, "runs", IsFlow(root.Source.Text, one) ? $"[[{firstPart}]]" : $"\n- [{firstPart}]");
        string source = root.Source.Text;
        int end = EndOf(source, runs);
        if (IsFlow(source, runs))
            return $"{source[..(end - 1)]}, [{firstPart}]{source[(end - 1)..]}";
        int line = LineEnd(source, end);
        return $"{source[..line]}\n{IndentOf(source, DashBefore(source, runs.Items[^1].Start))}- [{firstPart}]{source[line..]}";
    }

    /// <summary>Adds a part to the end of the last run of a circuit that ends in another; <c>null</c> where there is none.</summary>
    public static string? ExtendRun(string text, string circuit, string lastPart, string part)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (RootOf(text) is not { } root || Find(root.Map, "circuits") is not MapNode circuits || Find(circuits, circuit) is not MapNode one || Find(one, "runs") is not ListNode runs)
            return null;
        if (runs.Items.FindLast(item => item is ListNode { Items: [.., TextNode last] } && last.Value == lastPart) is not ListNode run)
            return null;
        string source = root.Source.Text;
        var end = (TextNode)run.Items[^1];
        return IsFlow(source, run)
            ? $"{source[..end.End]}, {part}{source[end.End..]}"
            : $"{source[..end.End]}\n{IndentOf(source, DashBefore(source, end.Start))}- {part}{source[end.End..]}";
    }

    /// <summary>Adds a comment under the name of an entry; <c>null</c> where there is no such entry on lines of its own.</summary>
    public static string? Note(string text, string section, string name, string note)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (RootOf(text) is not { } root || Find(root.Map, section) is not MapNode entries || entries.Entries.Find(entry => entry.Key.Value == name) is not { Key: { } key, Value: MapNode entry })
            return null;
        string source = root.Source.Text;
        string comment = "# " + YamlWords.Of(note).Trim('\'');
        int line = IsFlow(source, entry) ? key.Start : entry.Entries[0].Key.Start;
        int start = line > 0 ? source.LastIndexOf('\n', line - 1) + 1 : 0;
        return IsFlow(source, entries) ? null : $"{source[..start]}{IndentOf(source, line)}{comment}\n{source[start..]}";
    }

    // Before the first of the sections that a person would write behind it, and before the comments that stand right above that.
    private static string NewSection(string text, MapNode root, string section, string block)
    {
        int own = Array.IndexOf(Order, section);
        if (root.Entries.Find(entry => Array.IndexOf(Order, entry.Key.Value) > own && own >= 0).Key is not { } next)
            return $"{text.TrimEnd('\n')}\n\n{block}";
        int at = next.Start;
        while (at > 0 && text.LastIndexOf('\n', Math.Max(at - 2, 0)) + 1 is var line && line < at && text[line] == '#')
            at = line;
        return $"{text[..at]}{block}\n{text[at..]}";
    }

    private static string Insert(SourceText source, MapNode map, string key, string value)
    {
        string text = source.Text;
        int end = EndOf(text, map);
        if (IsFlow(text, map))
        {
            int at = end - 1;
            while (at > 0 && char.IsWhiteSpace(text[at - 1]))
                at--;
            return $"{text[..at]}{(map.Entries.Count > 0 && text[at - 1] != ',' ? ", " : "")}{key}: {value.TrimStart('\n')}{text[at..]}";
        }

        int line = LineEnd(text, end);
        return $"{text[..line]}\n{Block(IndentOf(text, map.Entries[0].Key.Start), key, value).TrimEnd('\n')}{text[line..]}";
    }

    // `key: value`, or the value's own lines under the key.
    private static string Block(string indent, string key, string value) => value.StartsWith('\n')
        ? $"{indent}{key}:\n{string.Concat(value[1..].Split('\n').Select(line => $"{indent}  {line}\n"))}"
        : $"{indent}{key}: {value}\n";

    private static (SourceText Source, MapNode Map)? RootOf(string text)
    {
        var problems = new ProblemList(1);
        var budget = new ReadBudget(ReadLimits.Default);
        return SourceFile.FromText(text, "family", budget, problems) is { } source && SheetParser.Parse(source, budget, problems) is { Root: MapNode { Entries.Count: > 0 } map } ? (source, map) : null;
    }

    private static SheetNode? Find(MapNode map, string key) => map.Entries.Find(entry => entry.Key.Value == key).Value;

    private static bool IsFlow(string text, SheetNode node) => node.Start < text.Length && text[node.Start] is '{' or '[';

    /// <summary>The index behind the last character of a value.</summary>
    private static int EndOf(string text, SheetNode node) => node switch
    {
        TextNode one => one.End,
        _ when IsFlow(text, node) => Closing(text, node.Start),
        MapNode { Entries: [.., var last] } => last.Value is TextNode { IsNothing: true } ? last.Key.End + 1 : EndOf(text, last.Value),
        ListNode { Items: [.., var last] } => EndOf(text, last),
        _ => node.Start,
    };

    /// <summary>The index behind the bracket that closes the one here; brackets in quotes and comments do not count.</summary>
    private static int Closing(string text, int open)
    {
        int depth = 0;
        for (int at = open; at < text.Length; at++)
        {
            char c = text[at];
            if (c is '{' or '[')
                depth++;
            else if (c is '}' or ']' && --depth == 0)
                return at + 1;
            else if (c is '"' or '\'' && IsQuoteOpen(text, at))
                at = Math.Max(at, text.IndexOf(c, at + 1));
            else if (c == '#' && at > 0 && char.IsWhiteSpace(text[at - 1]))
                at = LineEnd(text, at) - 1;
        }

        return text.Length;
    }

    // A quote within a word, as in `o'clock`, opens nothing.
    private static bool IsQuoteOpen(string text, int at) => at == 0 || text[at - 1] is ' ' or '\n' or ',' or '[' or '{' or ':';

    private static int LineEnd(string text, int at) => text.IndexOf('\n', at) is >= 0 and var end ? end : text.Length;

    private static string IndentOf(string text, int at)
    {
        int start = at > 0 ? text.LastIndexOf('\n', at - 1) + 1 : 0;
        return text[start..at].All(c => c == ' ') ? text[start..at] : new string(' ', text[start..at].TakeWhile(c => c == ' ').Count());
    }

    private static int DashBefore(string text, int at) => text.LastIndexOf('-', at);
}
