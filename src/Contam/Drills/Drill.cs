using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.StopLines;

namespace Contam.Drills;

/// <summary>What a question asks, in the order in which they stand: each is harder than the one before.</summary>
public enum DrillKind
{
    /// <summary>What does the debris reach next?</summary>
    NextReached,

    /// <summary>What can be trusted to hold it back?</summary>
    TrustedFilter,

    /// <summary>What must come off first?</summary>
    OffFirst,

    /// <summary>Where to look so that the rest can be left alone?</summary>
    StopLine,

    /// <summary>Which order of work dirties a cleaned part?</summary>
    DirtyingOrder,

    /// <summary>What can be left alone when a look of the plan is clean?</summary>
    LeftAlone,
}

/// <summary>Why a question is left out.</summary>
public enum DrillSilence
{
    /// <summary>The debris goes no further than the failed parts.</summary>
    NothingBeyond,

    /// <summary>There are too few other parts to make wrong choices from.</summary>
    TooFewParts,

    /// <summary>Nothing that the debris comes to holds any of it back.</summary>
    NothingHolds,

    /// <summary>Nothing is in the way of any part that comes off.</summary>
    NothingInTheWay,

    /// <summary>No look saves anything; <see cref="LeftOutQuestion.Line"/> says why.</summary>
    NoLookSaves,

    /// <summary>No few steps of the plan were found that dirty a cleaned part in one order and not in two others.</summary>
    NoOrderDirties,

    /// <summary>The plan has no look that decides how far to go.</summary>
    NoLookDecides,
}

/// <summary>A question that this failure cannot pose.</summary>
/// <param name="Kind">The question.</param>
/// <param name="Why">Why it is left out.</param>
/// <param name="Line">Why there is no stop line, where that is the reason.</param>
public sealed record LeftOutQuestion(DrillKind Kind, DrillSilence Why, StopLineSilence Line = StopLineSilence.None);

/// <summary>A question with its choices, just one of which is right.</summary>
/// <param name="Kind">What is asked.</param>
/// <param name="Choices">The choices in the order in which they are offered, three to five.</param>
public sealed record DrillQuestion(DrillKind Kind, ImmutableArray<DrillChoice> Choices)
{
    /// <summary>The part that is asked about; <c>null</c> where it is the failure itself.</summary>
    public PartId? About { get; init; }

    /// <summary>The debris that is asked about; <c>null</c> where it is all of it.</summary>
    public Debris? Debris { get; init; }

    /// <summary>For <see cref="DrillKind.OffFirst"/>: what is directly in the way of the part asked about, of what is in the way of that, and of each choice. Parts with nothing in their way are left out.</summary>
    public ImmutableArray<InTheWay> InTheWay { get; init; } = [];

    /// <summary>For <see cref="DrillKind.StopLine"/>: every place that a choice names.</summary>
    public ImmutableArray<LookPlace> Places { get; init; } = [];

    /// <summary>For <see cref="DrillKind.LeftAlone"/>: the looks of the plan, in order of work.</summary>
    public ImmutableArray<PlanLook> Looks { get; init; } = [];

    /// <summary>For <see cref="DrillKind.LeftAlone"/>: the letter of the look that is clean; else <c>null</c>.</summary>
    public string? CleanLook { get; init; }

    /// <summary>The place of the right choice.</summary>
    public int Right => Choices.IndexOf(Choices.Single(choice => choice.IsRight));
}

/// <summary>What must be off before a part can be got at.</summary>
/// <param name="Part">The part.</param>
/// <param name="Access">What is in its way.</param>
public sealed record InTheWay(PartId Part, ImmutableArray<PartId> Access);

/// <summary>A place to look.</summary>
/// <param name="Part">The part.</param>
/// <param name="Minutes">What a look takes, with taking off and refitting what is in its way and would not come off anyway.</param>
/// <param name="Shows">How surely it shows debris; <c>null</c> where the family names no way to look there.</param>
public sealed record LookPlace(PartId Part, double Minutes, Shows? Shows);

/// <summary>How the debris comes to a part.</summary>
/// <param name="Hop">Over how many joints at least.</param>
/// <param name="Part">The part.</param>
/// <param name="Via">The part before it on a way that short.</param>
/// <param name="Circuit">The circuit of the joint between.</param>
public sealed record DrillHop(int Hop, PartId Part, PartId Via, string Circuit);

/// <summary>An exercise for an apprentice, with its answers. Immutable; <see cref="Drilling"/> makes it.</summary>
/// <param name="Request">What it was made from.</param>
/// <param name="Questions">The questions, the easiest first.</param>
/// <param name="LeftOut">The questions that this failure cannot pose, in the same order.</param>
/// <param name="Spread">How the debris goes on from the failed parts, hop by hop; within a hop in the order of the family.</param>
public sealed record Drill(DrillRequest Request, ImmutableArray<DrillQuestion> Questions, ImmutableArray<LeftOutQuestion> LeftOut, ImmutableArray<DrillHop> Spread);
