using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>What a plan says of how one part is reached by one debris. Parts are meant by their place in the family.</summary>
/// <param name="Reach">The largest particle.</param>
/// <param name="From">The source; -1 for one that the family does not have.</param>
/// <param name="Via">The part before it; -1 for none, so that it is a source itself; -2 for one that the family does not have.</param>
internal readonly record struct ReachClaim(ParticleSize Reach, int From, int Via)
{
    /// <summary>No part before it.</summary>
    internal const int NoPart = -1;

    /// <summary>A part that the family does not have.</summary>
    internal const int UnknownPart = -2;

    /// <summary>The claim of a line, or <c>null</c> where its size is no size.</summary>
    internal static ReachClaim? Of(PlanReach line, Family family)
    {
        if (line.ReachUm is { } size && !(size >= 0))
            return null;
        int via = line.Via is null ? NoPart : family.IndexOf(new PartId(line.Via));
        return new ReachClaim(
            line.ReachUm is { } micrometres ? ParticleSize.FromMicrometres(micrometres) : ParticleSize.Unlimited,
            family.IndexOf(new PartId(line.From)),
            line.Via is not null && via < 0 ? UnknownPart : via);
    }
}
