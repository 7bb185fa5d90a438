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

    /// <summary>Where a value begins.</summary>
    public SourceSpan PlaceOf(SheetNode node) => Source.PlaceAt(node.Start);

    /// <summary>
    /// Where a character of a text stands in the file. Where the text is not written as it reads (folded over lines, with escapes), the place is
    /// that of the same word within it, else where the text begins.
    /// </summary>
    /// <param name="node">The text.</param>
    /// <param name="offset">The zero-based place of the character in the text's value.</param>
    public SourceSpan PlaceWithin(TextNode node, int offset)
    {
        ReadOnlySpan<char> written = Source.Text.AsSpan(node.Start, node.End - node.Start);
        int asItReads = written.IndexOf(node.Value, StringComparison.Ordinal);
        if (asItReads >= 0)
            return Source.PlaceAt(node.Start + asItReads + offset);

        ReadOnlySpan<char> word = WordAt(node.Value, offset);
        int found = word.Length == 0 ? -1 : written.IndexOf(word, StringComparison.Ordinal);
        return Source.PlaceAt(found < 0 ? node.Start : node.Start + found);
    }

    private static ReadOnlySpan<char> WordAt(string text, int offset)
    {
        int end = offset;
        while (end < text.Length && !char.IsWhiteSpace(text[end]))
            end++;
        return text.AsSpan(offset, end - offset);
    }
}
