using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Plans;

/// <summary>What a plan is asked for.</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Standard">The standard to plan by, its layers already joined.</param>
/// <param name="Failures">The failed parts, each of the family, with what each shed; may be empty where something was found.</param>
/// <param name="Debris">What is followed: all that they shed, at least one. Empty where it is said of every failed part that it shed nothing, and nothing was found.</param>
public sealed record PlanRequest(Family Family, ShopStandard Standard, ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris)
{
    /// <summary>The failed parts, each once, in the order given.</summary>
    public ImmutableArray<PartId> Failed => Failures.PartsOf();

    /// <summary>What was seen.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Where no failed part was named: how <see cref="Failures"/> was taken from what was found. Else <c>null</c>.</summary>
    public PlanFromFindings? FromFindings { get; init; }

    /// <summary>How many technicians work at once, at least 1.</summary>
    public int Technicians { get; init; } = 1;

    /// <summary>By what the steps are numbered.</summary>
    public PlanSequence Sequence { get; init; } = PlanSequence.Bench;

    /// <summary>The most looks that may decide how far to go, from 0 to <see cref="HowFar.MostLooks"/>; 0 for the flat plan, which treats all that could be reached.</summary>
    public int MostLooks { get; init; }

    /// <summary>The places of the deciding looks, held fixed; <c>null</c> to have them chosen.</summary>
    public ImmutableArray<PartId>? LookAt { get; init; }

    /// <summary>Whether somebody has held the family against the machine; handed on as it is. <c>null</c> where nothing is known of that.</summary>
    public PlanReview? Review { get; init; }

    /// <summary>Whether the first schedule will do: the same steps, minutes and bench hours, but perhaps a later end. For whoever makes very many plans.</summary>
    internal bool TakesFirstSchedule { get; init; }
}
