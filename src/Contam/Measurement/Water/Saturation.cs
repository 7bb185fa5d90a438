using Contam.Families.Quantities;

namespace Contam.Measurement.Water;

/// <summary>What an oil is for, as far as it bears on how much water it dissolves.</summary>
public enum OilUse
{
    /// <summary>Transformer oil.</summary>
    Transformer,

    /// <summary>Turbine oil.</summary>
    Turbine,

    /// <summary>Hydraulic oil.</summary>
    Hydraulic,

    /// <summary>Engine oil.</summary>
    Engine,
}

/// <summary>How much water an oil holds dissolved at room temperature.</summary>
/// <param name="Least">Every oil of the use dissolves this much.</param>
/// <param name="Most">None dissolves more.</param>
/// <param name="Source">Where the figures come from, and how sure they are.</param>
public sealed record Saturation(Share Least, Share Most, string Source)
{
    /// <summary>Figures to fall back on where the oil's maker gives none. They are labelled defaults, not a standard.</summary>
    public static Saturation DefaultFor(OilUse use)
    {
        (double least, double most) = use switch
        {
            OilUse.Transformer => (50d, 60d),
            OilUse.Turbine => (75d, 150d),
            OilUse.Hydraulic => (200d, 400d),
            OilUse.Engine => (500d, 2000d),
            _ => throw new ArgumentOutOfRangeException(nameof(use), use, "not a use of oil"),
        };
        return new Saturation(
            Share.FromPartsPerMillion(least),
            Share.FromPartsPerMillion(most),
            "default: common practice, no source; printed ranges differ, and all are for room temperature");
    }
}
