using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>What is asked: which looks decide?</summary>
/// <param name="Question">What failed, what it shed, what was seen beforehand.</param>
/// <param name="Minutes">A technician's minutes for a task at a part, at least 0.</param>
/// <param name="PassesOn">How often debris that came to a part goes further, from 0 to 1.</param>
internal sealed record ChoiceQuestion(LookQuestion Question, Func<Part, StepAction, double> Minutes, Func<Part, Debris, double> PassesOn)
{
    /// <summary>The most looks, from 0 for the flat plan.</summary>
    public int MostLooks { get; init; } = LookMask.Most;

    /// <summary>
    /// What each look costs besides its own time, in minutes: work stops, somebody decides, it is written down, and the sheet grows a branch. It weighs in the
    /// choice and stands in no figure. Half an hour is common practice put into a number, no source: over the metal failures of the shipped families it leaves
    /// about half of the histories and adds less than a hundredth to what is to be expected.
    /// </summary>
    public double MinutesADecision { get; init; } = 30;

    /// <summary>Where to look, held fixed; <c>null</c> to have it chosen.</summary>
    public ImmutableArray<PartId>? LookAt { get; init; }
}

/// <summary>How the looks came to be chosen.</summary>
internal enum ChoiceMethod
{
    /// <summary>They were named.</summary>
    Named,

    /// <summary>Every choice of the places that could pay was tried.</summary>
    All,

    /// <summary>There are too many choices; the best that a search came to.</summary>
    Search,
}

/// <summary>A deciding look in figures.</summary>
/// <param name="Odds">The chance of a find, from 0 to 1, where the look is due; 0 for one that is never due.</param>
/// <param name="Minutes">A technician's minutes: the looks at all its places, and what comes off for them alone.</param>
/// <param name="MinutesHanging">The minutes of every treatment whose condition names it.</param>
internal sealed record LookFigures(double Odds, double Minutes, double MinutesHanging);

/// <summary>Which looks decide, and what each part then needs.</summary>
/// <param name="Plan">The looks, parts and histories.</param>
/// <param name="Figures">The looks in figures, in their order.</param>
/// <param name="Method">How they were chosen.</param>
internal sealed record LookPlan(DecidedPlan Plan, ImmutableArray<LookFigures> Figures, ChoiceMethod Method)
{
    /// <summary>Minutes of the looks and treatments of the history with every look clean.</summary>
    public required double MinutesAllClean { get; init; }

    /// <summary>Minutes to be expected: over all histories, how likely each is times what it takes.</summary>
    public required double MinutesExpected { get; init; }

    /// <summary>Minutes of the history that takes most.</summary>
    public required double MinutesMost { get; init; }

    /// <summary>How likely each history of the plan is; in their order, together 1.</summary>
    public required ImmutableArray<double> Likely { get; init; }

    /// <summary>Less than these minutes no choice of looks is to be expected to take.</summary>
    public required double MinutesBound { get; init; }

    /// <summary>How many places could decide.</summary>
    public required int PlacesThatCould { get; init; }
}
