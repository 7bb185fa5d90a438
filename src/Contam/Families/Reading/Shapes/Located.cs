using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>A value with where it is written.</summary>
/// <param name="Value">The value.</param>
/// <param name="Sheet">The sheet it stands in.</param>
/// <param name="Node">The value as written.</param>
internal readonly record struct Located<T>(T Value, Sheet Sheet, SheetNode Node)
{
    /// <summary>Where it begins.</summary>
    public SourceSpan Place => Sheet.PlaceOf(Node);

    /// <summary>Where a character of a text stands.</summary>
    public SourceSpan PlaceWithin(int offset) => Node is TextNode text ? Sheet.PlaceWithin(text, offset) : Place;
}
