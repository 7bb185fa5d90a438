using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;

namespace Contam.Drills;

/// <summary>One choice of a question, with what the answer sheet says of it.</summary>
public abstract record DrillChoice
{
    /// <summary>Whether it is the right one.</summary>
    public abstract bool IsRight { get; }

    /// <summary>The parts that it names.</summary>
    public abstract ImmutableArray<PartId> Parts { get; }

    /// <summary>The way that shows it, from a failed part on; empty where there is none to show.</summary>
    public ImmutableArray<PartId> Path { get; init; } = [];
}

/// <summary>A part that the debris reaches next, or not next.</summary>
/// <param name="Part">The part.</param>
/// <param name="Hops">Over how many joints it is reached at least; <c>null</c> where no open way leads there.</param>
public sealed record NextChoice(PartId Part, int? Hops) : DrillChoice
{
    /// <summary>Whether an open joint leads from it to a failed part.</summary>
    public bool IsUpstream { get; init; }

    /// <summary>A closed joint that leads to it from a failed part, or <c>null</c>.</summary>
    public Joint? Closed { get; init; }

    /// <inheritdoc/>
    public override bool IsRight => Hops == 1;

    /// <inheritdoc/>
    public override ImmutableArray<PartId> Parts => [Part];
}

/// <summary>Whether a part can be trusted to hold debris back.</summary>
public enum FilterTrust
{
    /// <summary>Its rating is absolute and nothing goes round it.</summary>
    Trusted,

    /// <summary>It has failed itself.</summary>
    HasFailed,

    /// <summary>It opens past itself when it is loaded.</summary>
    OpensPast,

    /// <summary>Its rating is nominal.</summary>
    IsNominal,

    /// <summary>Both: nominal, and it opens past itself.</summary>
    IsNominalAndOpensPast,

    /// <summary>It is not said to hold any of it.</summary>
    HoldsNothing,

    /// <summary>The choice is that none of the others can be trusted.</summary>
    NoneOfThem,
}

/// <summary>A part that is trusted, or the choice that none is.</summary>
/// <param name="Part">The part; <c>null</c> for none of them.</param>
/// <param name="Trust">Whether it can be trusted, and why not.</param>
public sealed record FilterChoice(PartId? Part, FilterTrust Trust) : DrillChoice
{
    /// <summary>The largest particle that it is said to let on; <c>null</c> where it is not said to hold any.</summary>
    public ParticleSize? Holds { get; init; }

    /// <summary>For none of them: whether none can be.</summary>
    public bool NoneCan { get; init; }

    /// <inheritdoc/>
    public override bool IsRight => Trust == FilterTrust.Trusted || NoneCan;

    /// <inheritdoc/>
    public override ImmutableArray<PartId> Parts => Part is { } part ? [part] : [];
}

/// <summary>A part that must come off first, or not.</summary>
/// <param name="Part">The part.</param>
/// <param name="IsInTheWay">Whether it is in the way of the part asked about, or of what is in the way of that.</param>
public sealed record OffChoice(PartId Part, bool IsInTheWay) : DrillChoice
{
    /// <summary>What is directly in its own way.</summary>
    public ImmutableArray<PartId> Behind { get; init; } = [];

    /// <summary>Whether it can only come off after the part asked about.</summary>
    public bool ComesAfter { get; init; }

    /// <inheritdoc/>
    public override bool IsRight => IsInTheWay && Behind.IsEmpty;

    /// <inheritdoc/>
    public override ImmutableArray<PartId> Parts => [Part];
}

/// <summary>A choice of looks.</summary>
/// <param name="Looks">Where to look; file order.</param>
/// <param name="Takes">The minutes of the looks, and of treating what they leave open.</param>
/// <param name="IsLeast">Whether no other choice takes less.</param>
public sealed record LookChoice(ImmutableArray<PartId> Looks, double Takes, bool IsLeast) : DrillChoice
{
    /// <summary>How many parts are left alone if all of it is clean.</summary>
    public int Spares { get; init; }

    /// <summary>The looks of it whose clean finding would not count.</summary>
    public ImmutableArray<PartId> NotCounting { get; init; } = [];

    /// <inheritdoc/>
    public override bool IsRight => IsLeast;

    /// <inheritdoc/>
    public override ImmutableArray<PartId> Parts => Looks;
}

/// <summary>A part that is left alone when one look is clean, or not.</summary>
/// <param name="Part">The part.</param>
/// <param name="OnlyIf">Letters of looks: it is treated when debris was found at any of them; empty for always.</param>
public sealed record LeftAloneChoice(PartId Part, ImmutableArray<string> OnlyIf) : DrillChoice
{
    /// <summary>Those of its looks at which debris may still be found.</summary>
    public ImmutableArray<string> StillOpen { get; init; } = [];

    /// <inheritdoc/>
    public override bool IsRight => OnlyIf.Length > 0 && StillOpen.IsEmpty;

    /// <inheritdoc/>
    public override ImmutableArray<PartId> Parts => [Part];
}

/// <summary>A few steps of the plan in some order, all others in their places.</summary>
/// <param name="Steps">The steps in this order, with the numbers that they bear in it.</param>
/// <param name="Fault">The first thing that goes wrong when the plan is done so; <c>null</c> where nothing does.</param>
public sealed record OrderChoice(ImmutableArray<PlanStep> Steps, Fault? Fault) : DrillChoice
{
    /// <inheritdoc/>
    public override bool IsRight => Fault is not null;

    /// <inheritdoc/>
    public override ImmutableArray<PartId> Parts => [.. Steps.SelectMany(PartsOf).Distinct()];

    /// <summary>The parts that a step is done at.</summary>
    public static IEnumerable<PartId> PartsOf(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return PlayedStep.PartsOf(step).Select(id => new PartId(id));
    }
}
