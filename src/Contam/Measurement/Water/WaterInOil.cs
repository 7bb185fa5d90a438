using System.Text.Json.Serialization;
using Contam.Families.Quantities;

namespace Contam.Measurement.Water;

/// <summary>In what form water is in an oil. Ordered from the mildest to the worst.</summary>
public enum WaterForm
{
    /// <summary>Dissolved: it is not seen, and settles out when the oil cools.</summary>
    [JsonStringEnumMemberName("dissolved")]
    Dissolved,

    /// <summary>It may be dissolved or free: oils of this use differ. To be treated as free.</summary>
    [JsonStringEnumMemberName("dissolved or free")]
    DissolvedOrFree,

    /// <summary>Free or emulsified: the oil is cloudy, or water stands at the bottom; films break and steel rusts.</summary>
    [JsonStringEnumMemberName("free")]
    Free,
}

/// <summary>What water in an oil means.</summary>
/// <param name="Form">In what form it is.</param>
/// <param name="CrackleTestMayShow">Whether a drop on a hot plate may crackle, which shows free and emulsified water alone.</param>
/// <param name="MayStillLookBright">Whether the oil may look bright all the same, so that a look proves nothing.</param>
/// <param name="Source">Where the saturation comes from.</param>
public sealed record WaterMeaning(WaterForm Form, bool CrackleTestMayShow, bool MayStillLookBright, string Source);

/// <summary>
/// Water in oil, by mass or by volume as the laboratory gives it; the two differ by the oil's density, about a tenth, which is less than
/// the saturation figures are sure of.
/// </summary>
public static class WaterInOil
{
    // About 500 ppm is the least that crackles, and up to 0.1 % an oil can still be bright: articles in the trade press on the
    // crackle test and, after a naval training manual, on the clear-and-bright test. Both depend on the oil.
    private const double CracklesFrom = 500e-6;
    private const double BrightUpTo = 1000e-6;

    /// <summary>What so much water means.</summary>
    /// <param name="water">0 to 100 %.</param>
    /// <param name="saturation">What the oil dissolves: its maker's figures, or <see cref="Saturation.DefaultFor"/>.</param>
    public static Sum<WaterMeaning> Meaning(Share water, Saturation saturation)
    {
        ArgumentNullException.ThrowIfNull(saturation);
        Fault? fault = WaterFault(water)
            ?? Expect.Between("the least saturation", saturation.Least.PartsPerMillion, 0, 1e6, "ppm")
            ?? Expect.Between("the greatest saturation", saturation.Most.PartsPerMillion, saturation.Least.PartsPerMillion, 1e6, "ppm");
        if (fault is not null)
            return fault;
        WaterForm form = water > saturation.Most ? WaterForm.Free
            : water > saturation.Least ? WaterForm.DissolvedOrFree
            : WaterForm.Dissolved;
        bool crackles = form != WaterForm.Dissolved && water.OfOne >= CracklesFrom;
        return new WaterMeaning(form, crackles, water.OfOne <= BrightUpTo, saturation.Source);
    }

    internal static Fault? WaterFault(Share water) => Expect.Between("the water content", water.PartsPerMillion, 0, 1e6, "ppm");
}
