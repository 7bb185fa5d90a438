namespace Contam.Families.Reading.Sheets;

/// <summary>A file as read: its text and the tree of its values.</summary>
/// <param name="source">The text.</param>
/// <param name="root">The outermost value.</param>
internal sealed class Sheet(SourceText source, SheetNode root)
{
    /// <summary>The file's text.</summary>
    public SourceText Source { get; } = source;

    /// <summary>The outermost value.</summary>
    public SheetNode Root { get; } = root;

    private (string Section, HashSet<string> Names)? described;

    /// <summary>Whether a section of the file, such as <c>parts</c>, has an entry of this name.</summary>
    public bool Describes(string section, string name)
    {
        if (described?.Section != section)
        {
            IEnumerable<(TextNode Key, SheetNode Value)> entries = Root is MapNode map && map.Entries.Find(entry => entry.Key.Value == section).Value is MapNode within ? within.Entries : [];
            described = (section, entries.Select(entry => entry.Key.Value).ToHashSet(StringComparer.Ordinal));
        }

        return described.Value.Names.Contains(name);
    }

    /// <summary>Where a value begins.</summary>
    public SourceSpan PlaceOf(SheetNode node) => Source.PlaceAt(node.Start);

    /// <summary>Where a character stands, from its zero-based index in the file's text.</summary>
    public SourceSpan PlaceAt(int index) => Source.PlaceAt(index);

    /// <summary>
    /// Where a character of a text stands in the file. Where the text is not written as it reads (folded over lines, with escapes), the place is
    /// that of the same word within it, else where the text begins.
    /// </summary>
    /// <param name="node">The text.</param>
    /// <param name="offset">The zero-based place of the character in the text's value.</param>
    public SourceSpan PlaceWithin(TextNode node, int offset) => PlaceWithin(node.Start, node.End, node.Value, offset);

    /// <summary>The same, of a text from its ends in the file.</summary>
    /// <param name="start">The index of the first character that is written.</param>
    /// <param name="end">The index after the last.</param>
    /// <param name="value">What is written there, escapes and quotes undone.</param>
    /// <param name="offset">The zero-based place of the character in <paramref name="value"/>.</param>
    public SourceSpan PlaceWithin(int start, int end, string value, int offset)
    {
        ReadOnlySpan<char> written = Source.Text.AsSpan(start, end - start);
        int asItReads = written.IndexOf(value, StringComparison.Ordinal);
        if (asItReads >= 0)
            return Source.PlaceAt(start + asItReads + offset);

        ReadOnlySpan<char> word = WordAt(value, offset);
        int found = word.Length == 0 ? -1 : written.IndexOf(word, StringComparison.Ordinal);
        return Source.PlaceAt(found < 0 ? start : start + found);
    }

    private static ReadOnlySpan<char> WordAt(string text, int offset)
    {
        int end = offset;
        while (end < text.Length && !char.IsWhiteSpace(text[end]))
            end++;
        return text.AsSpan(offset, end - offset);
    }
}
