using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Reports.Drawing;

/// <summary>How circuits are drawn.</summary>
public sealed record PictureOptions
{
    /// <summary>Whether every repeated part has a box of its own. Else those that are joined alike, and marked alike, share one.</summary>
    public bool Unfold { get; init; }

    /// <summary>Where to look, marked on the picture; usually the looks of a stop line. Empty for none.</summary>
    public ImmutableArray<PartId> StopLine { get; init; } = [];

    /// <summary>Whether nothing is said of what holds debris back, where a reader is to find it out.</summary>
    public bool HidesBarriers { get; init; }

    /// <summary>Which parts are drawn, with the joints between them; <c>null</c> for all of the family.</summary>
    public ImmutableArray<PartId>? Only { get; init; }

    /// <summary>The id of the picture within a page that refers to it; <c>null</c> for a picture that stands alone.</summary>
    public string? PageId { get; init; }

    /// <summary>How wide the legend may be; it is never narrower than its longest entry. <c>null</c> for as wide as the picture.</summary>
    public double? LegendWidth { get; init; }
}
