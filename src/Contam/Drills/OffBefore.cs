using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Drills;

/// <summary>For every part what must come off before it: what is in its way, what stands on it, and what it rides on.</summary>
internal sealed class OffBefore
{
    private readonly Family family;
    private readonly ILookup<PartId, PartId> standing;

    public OffBefore(Family family)
    {
        this.family = family;
        standing = family.Parts.SelectMany(part => part.StandsOn.Select(below => (Below: below, part.Id))).ToLookup(pair => pair.Below, pair => pair.Id);
    }

    /// <summary>Each once: access in file order, then what stands on it in the order of the family, then what it rides on.</summary>
    public ImmutableArray<PartId> Of(PartId part)
    {
        Part asked = family[part];
        IEnumerable<PartId> carrier = asked.RidesOn is { } rides ? [rides] : [];
        return [.. asked.Access.Concat(standing[part]).Concat(carrier).Distinct()];
    }
}
