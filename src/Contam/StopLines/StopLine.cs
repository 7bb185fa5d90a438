using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.StopLines;

/// <summary>Why a part is treated although every look of the line was clean.</summary>
public enum StopLineReason
{
    /// <summary>It is the failed part.</summary>
    Failed,

    /// <summary>Debris was found there.</summary>
    Found,

    /// <summary>It is critical, so that no clean finding spares it.</summary>
    Critical,

    /// <summary>Debris gets to it without passing a look of the line.</summary>
    BeforeTheLine,
}

/// <summary>Why no look is named.</summary>
public enum StopLineSilence
{
    /// <summary>Looks are named.</summary>
    None,

    /// <summary>The shop's standard never lets a clean finding clear.</summary>
    StandardForbids,

    /// <summary>Whatever is found, every part that is reached is treated: it failed, debris was found there, it is critical, or it is cleared already.</summary>
    NothingToSpare,

    /// <summary>No place that the debris comes by shows it well.</summary>
    NowhereToLook,

    /// <summary>Looking takes as long as what it could spare, or longer.</summary>
    NothingSaved,

    /// <summary>Every place that shows it well lies on the way to where debris was found.</summary>
    FindsSpeakAgainst,
}

/// <summary>One look of the line.</summary>
/// <param name="Part">Where to look.</param>
/// <param name="Minutes">A technician's minutes for it: the look, and taking off and refitting what is in its way.</param>
/// <param name="InTheWay">What is in the way of this look and would not come off anyway; file order. Counted with every look that needs it.</param>
/// <param name="Clears">What this look spares by itself, found clean: file order, each in one look at most.</param>
public sealed record StopLineLook(PartId Part, double Minutes, ImmutableArray<PartId> InTheWay, ImmutableArray<PartId> Clears);

/// <summary>A part that is treated whatever the looks of the line find.</summary>
/// <param name="Part">The part.</param>
/// <param name="Reason">Why.</param>
/// <param name="Minutes">A technician's minutes at it, by the treatment that it has without looking.</param>
public sealed record StopLinePart(PartId Part, StopLineReason Reason, double Minutes);

/// <summary>Minutes of a technician's time, to the tenth.</summary>
/// <param name="Looks">All looks of the line.</param>
/// <param name="Treatment">What is treated although they were clean.</param>
/// <param name="WithoutLooking">Everything that is reached, treated.</param>
public sealed record StopLineMinutes(double Looks, double Treatment, double WithoutLooking)
{
    /// <summary>What looking saves if every look is clean; at least 0.</summary>
    public double Saved => Math.Round(WithoutLooking - Looks - Treatment, 1);
}

/// <summary>
/// Where to look, and what may then be left alone. Immutable; <see cref="StopLineFinder"/> makes it.
/// With every look of it recorded as a clean finding, the spread clears just <see cref="Clears"/> and <see cref="ClearedAlready"/> of all that is asked about.
/// </summary>
public sealed record StopLine
{
    /// <summary>Where to look, nearest to the failure first (fewest joints), ties in file order. Empty where looking saves nothing.</summary>
    public required ImmutableArray<StopLineLook> Looks { get; init; }

    /// <summary>What may be left alone if every look is clean, and only because of these looks; file order.</summary>
    public required ImmutableArray<PartId> Clears { get; init; }

    /// <summary>The parts of <see cref="Clears"/> that several looks spare together, all of which must be clean; file order.</summary>
    public required ImmutableArray<PartId> ClearsTogether { get; init; }

    /// <summary>What the findings so far have cleared of everything; file order.</summary>
    public required ImmutableArray<PartId> ClearedAlready { get; init; }

    /// <summary>What is treated although every look is clean; file order.</summary>
    public required ImmutableArray<StopLinePart> Treat { get; init; }

    /// <summary>The minutes.</summary>
    public required StopLineMinutes Minutes { get; init; }

    /// <summary>
    /// Whether no other choice of looks takes less. <c>false</c> only where several debris are asked about and a place is on record as clean of one and not of another,
    /// and where some looks are <see cref="Doubtful"/>: then what is cleared and what it takes is exact all the same, but a better choice may have been missed.
    /// </summary>
    public required bool IsLeast { get; init; }

    /// <summary>
    /// Places where no look is asked for because debris went past there to where it was found, or is taken to have done so: a clean look there would
    /// contradict the find, and count for nothing. File order.
    /// </summary>
    public required ImmutableArray<PartId> Doubtful { get; init; }

    /// <summary>The finds on record that disprove a clean look or speak for a further source; by debris, then in the order given.</summary>
    public required ImmutableArray<Contradiction> Contradictions { get; init; }

    /// <summary>Why there is no look, where there is none.</summary>
    public required StopLineSilence Silence { get; init; }
}
