using Contam.Families;

namespace Contam.Proof;

/// <summary>What a plan says of one debris: which parts it reaches, how wide and by which hops, with clean findings counted and without, and which grade each has.</summary>
internal sealed class DebrisClaims
{
    /// <summary>The debris.</summary>
    internal required Debris Debris { get; init; }

    /// <summary>What parts and joints let on of it.</summary>
    internal required DebrisPassages Passages { get; init; }

    /// <summary>For each part of the family the grade that the plan gives it; <c>null</c> where it is not listed for this debris.</summary>
    internal required Grade?[] Grades { get; init; }

    /// <summary>For each part what the plan's own line for it says.</summary>
    internal required ReachClaim?[] Line { get; init; }

    /// <summary>The evidence with accepted clean findings counted.</summary>
    internal required ReachClaim?[] Counted { get; init; }

    /// <summary>The evidence without them. The same list where the plan has no evidence apart.</summary>
    internal required ReachClaim?[] Uncounted { get; init; }

    /// <summary>The world of <see cref="Counted"/>.</summary>
    internal required DebrisWorld CountedWorld { get; init; }

    /// <summary>The world of <see cref="Uncounted"/>.</summary>
    internal required DebrisWorld UncountedWorld { get; init; }

    /// <summary>
    /// The evidence that the plan's line for this part rests on: a part that nothing clears is never the milder for a clean finding, and one that two looks
    /// clear only where they do.
    /// </summary>
    internal ReachClaim?[] EvidenceFor(Family family, int part) => family.Parts[part].ClearedBy switch
    {
        ClearedBy.OneLook => Counted,
        ClearedBy.TwoLooks when CountedWorld.IsBehindTwoCleanPlaces(part) => Counted,
        _ => Uncounted,
    };
}
