using System.Collections.Immutable;

namespace Contam.Reports.Layout;

/// <summary>A point; y grows downwards.</summary>
internal readonly record struct LayoutPoint(double X, double Y);

/// <summary>How large a box must at least be.</summary>
internal readonly record struct LayoutSize(double Width, double Height);

/// <summary>A line wanted from box to box.</summary>
/// <param name="From">The place of the box that it leaves.</param>
/// <param name="To">The place of the box that it enters.</param>
/// <param name="Leads">Whether it helps to decide what stands further right. A line that does not may run either way.</param>
internal readonly record struct LayoutEdge(int From, int To, bool Leads = true);

/// <summary>A box where it stands: its upper left corner and its size.</summary>
internal readonly record struct LayoutBox(double X, double Y, double Width, double Height);

/// <summary>Boxes and lines as they stand on the sheet.</summary>
/// <param name="Boxes">In the order asked for. A box with many lines may be higher than asked for, never less.</param>
/// <param name="Routes">In the order asked for: each from its first box to its second, with right angles only.</param>
/// <param name="Width">The width of the sheet, from 0.</param>
/// <param name="Height">The height of the sheet, from 0.</param>
internal sealed record LayoutSheet(ImmutableArray<LayoutBox> Boxes, ImmutableArray<ImmutableArray<LayoutPoint>> Routes, double Width, double Height)
{
    /// <summary>How often lines cross between the layers.</summary>
    public long Crossings { get; init; }
}
