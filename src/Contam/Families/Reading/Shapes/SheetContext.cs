using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>What a shape needs to read a value: the sheet it stands in, and where problems go.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Problems">Takes the problems.</param>
internal sealed record SheetContext(Sheet Sheet, ProblemList Problems)
{
    /// <summary>Where a value begins.</summary>
    public SourceSpan PlaceOf(SheetNode node) => Sheet.PlaceOf(node);
}
