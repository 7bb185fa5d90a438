using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>How a finding bears on a suspect. For finds, a later one is a better account of the find.</summary>
public enum EvidenceSort
{
    /// <summary>Debris was found where nothing leads from the suspect.</summary>
    NoWay,

    /// <summary>Debris was found where a way leads, but what was seen is larger than what gets there: the suspect sheds nothing as large, or a barrier should have held it.</summary>
    HeldBack,

    /// <summary>Debris was found where what the suspect sheds arrives, but it looks otherwise.</summary>
    LooksOtherwise,

    /// <summary>Debris was found where what the suspect sheds arrives, and nothing seen speaks against it.</summary>
    Fits,

    /// <summary>A part was clean at which the suspect's full size would have arrived.</summary>
    CleanThoughExposed,

    /// <summary>A part was clean that only what passes a barrier would have reached: that says nothing.</summary>
    CleanBehindBarrier,

    /// <summary>A part was clean that nothing leads to from the suspect: that says nothing.</summary>
    CleanOutOfReach,
}

/// <summary>One finding held against one suspect.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Sort">How it bears on the suspect.</param>
/// <param name="Chance">The chance of this finding if the suspect were the source, above 0 and at most 1.</param>
/// <param name="Arrives">The largest particle that gets from the suspect to the place of the finding; <c>null</c> where no way leads there.</param>
public sealed record Evidence(Finding Finding, EvidenceSort Sort, double Chance, ParticleSize? Arrives);

/// <summary>A part that could be where the debris comes from.</summary>
/// <param name="Part">The part.</param>
/// <param name="Share">Its share of the suspicion, from 0 to 1; the shares of all suspects add to 1.</param>
/// <param name="Shed">What the family says of its shedding.</param>
/// <param name="Evidence">Every finding of this debris, in the order given.</param>
public sealed record Suspect(PartId Part, double Share, Shed Shed, ImmutableArray<Evidence> Evidence)
{
    /// <summary>Whether it accounts for some find at least as well as any other suspect does.</summary>
    public bool ExplainsSome { get; init; }
}
