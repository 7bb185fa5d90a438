using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>A value with where it is written. Holds on to nothing of the tree that it was read from.</summary>
/// <param name="Value">The value.</param>
/// <param name="Sheet">The sheet it stands in.</param>
/// <param name="Start">The index of its first character in the file's text.</param>
/// <param name="End">The index after the last character of a text; that of its first for anything else.</param>
internal readonly record struct Located<T>(T Value, Sheet Sheet, int Start, int End)
{
    /// <summary>A value as written.</summary>
    public Located(T value, Sheet sheet, SheetNode node)
        : this(value, sheet, node.Start, node is TextNode text ? text.End : node.Start)
    {
    }

    /// <summary>Where it begins.</summary>
    public SourceSpan Place => Sheet.PlaceAt(Start);

    /// <summary>Where a character of a text stands.</summary>
    public SourceSpan PlaceWithin(int offset) => Value is string text ? Sheet.PlaceWithin(Start, End, text, offset) : Place;
}
