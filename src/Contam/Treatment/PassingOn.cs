using Contam.Families;

namespace Contam.Treatment;

/// <summary>
/// How often debris that came to a part goes further, as the standard says it: the most specific share that fits (part with debris, part, kind with
/// debris, kind, debris), else <see cref="Unsaid"/>. These shares choose and rank looks; they never leave a part out.
/// </summary>
public sealed class PassingOn
{
    /// <summary>The share where the standard says none. Common practice, no source.</summary>
    public const double Unsaid = 0.9;

    private readonly Dictionary<RuleFor, double> shareFor = [];

    /// <summary>The shares of this standard, its layers already joined. Where two are for the same, the first holds; the reader refuses such a standard.</summary>
    public PassingOn(ShopStandard standard)
    {
        ArgumentNullException.ThrowIfNull(standard);
        foreach (PassesOn one in standard.PassesOn)
            shareFor.TryAdd(one.For, one.Share);
    }

    /// <summary>The share of this debris that goes further from this part, above 0 and at most 1.</summary>
    public double ShareOf(Part part, Debris debris)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(debris);
        foreach (RuleFor target in RuleFor.MostSpecificFirst(part, debris))
        {
            if (shareFor.TryGetValue(target, out double share))
                return share;
        }

        return Unsaid;
    }
}
