using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Plans;

namespace Contam.Jobs.Work;

/// <summary>A tick that counts.</summary>
/// <param name="Sequence">The entry that made it.</param>
/// <param name="Entry">What the entry says.</param>
internal sealed record Tick(long Sequence, Ticked Entry);

/// <summary>A look at a part.</summary>
/// <param name="Sequence">The entry that tells of it; that of the opening for looks before it.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="By">Who.</param>
/// <param name="IsAnswered">Whether a plan has been made with it.</param>
internal sealed record LookTaken(long Sequence, SeenAt Seen, string By, bool IsAnswered);

/// <summary>An outcome of a deciding look that counts.</summary>
/// <param name="Sequence">The entry that tells of it.</param>
/// <param name="Entry">What the entry says.</param>
/// <param name="Look">The look, as it stood in its plan.</param>
/// <param name="IsOfThisPlan">Whether the plan that holds has the look; else a plan was made since with what it showed.</param>
internal sealed record LookMade(long Sequence, Decided Entry, PlanLook Look, bool IsOfThisPlan);

/// <summary>A reading.</summary>
/// <param name="Sequence">The entry that tells of it.</param>
/// <param name="Entry">What the entry says.</param>
/// <param name="IsStale">Whether the part was worked on since, so that it must be measured again.</param>
internal sealed record ReadingTaken(long Sequence, Measured Entry, bool IsStale);

/// <summary>How a job stands. Folded from its entries; nothing else is known of it.</summary>
internal sealed record JobState
{
    /// <summary>What it was opened with.</summary>
    public required Opened Opened { get; init; }

    /// <summary>The plan that holds now.</summary>
    public required PlanDocument Plan { get; init; }

    /// <summary>The hash of that plan's JSON.</summary>
    public required string PlanSha256 { get; init; }

    /// <summary>The steps that hold now.</summary>
    public required WorkSteps Steps { get; init; }

    /// <summary>The ticks that count, by the key of their step. Never enumerated; ask it for a step.</summary>
    public required IReadOnlyDictionary<string, Tick> TickOf { get; init; }

    /// <summary>Why steps that were done are open again, by key. Never enumerated; ask it for a step.</summary>
    public required IReadOnlyDictionary<string, string> ReopenedBecause { get; init; }

    /// <summary>Every look, in order.</summary>
    public required ImmutableArray<LookTaken> Looks { get; init; }

    /// <summary>The outcomes of deciding looks that count, in order, those of earlier plans among them.</summary>
    public ImmutableArray<LookMade> Made { get; init; } = [];

    /// <summary>What is said of the looks of the plan that holds, by letter. Never enumerated into an answer.</summary>
    public IReadOnlyDictionary<string, Decided> Outcomes { get; init; } = ImmutableDictionary<string, Decided>.Empty;

    /// <summary>How the looks of the plan that holds stand, in order of work.</summary>
    public ImmutableArray<LookStands> LooksStand { get; init; } = [];

    /// <summary>Every reading, in order.</summary>
    public required ImmutableArray<ReadingTaken> Readings { get; init; }

    /// <summary>Items that were ordered, in order, each once.</summary>
    public required ImmutableArray<string> Ordered { get; init; }

    /// <summary>Items that have come, in order, each once.</summary>
    public required ImmutableArray<string> Arrived { get; init; }

    /// <summary>Parts that are at an outside workshop, in the order in which they went.</summary>
    public required ImmutableArray<string> Away { get; init; }

    /// <summary>Parts that came off to be sent away, whatever was ticked, and that no step has put back since; in the order in which they went.</summary>
    public required ImmutableArray<string> SentOff { get; init; }

    /// <summary>Every tick that was made out of turn and still counts, in order.</summary>
    public required ImmutableArray<Tick> OutOfTurn { get; init; }

    /// <summary>The sequence of the release that holds; <c>null</c> where the engine may not be run.</summary>
    public required long? ReleasedAt { get; init; }

    /// <summary>The entry that took a release back, where nothing was released since; else <c>null</c>.</summary>
    public Withdrawn? Withdrawn { get; init; }

    /// <summary>Whether the engine may be run again.</summary>
    public bool IsReleased => ReleasedAt is not null;

    /// <summary>Whether a step is done.</summary>
    public bool IsDone(WorkStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return TickOf.ContainsKey(step.Key);
    }

    /// <summary>The steps that are open, by number: not done, and not struck by a look.</summary>
    public IEnumerable<WorkStep> Open => Steps.All.Where(IsOpen);

    /// <summary>Whether a step is open: not done, and not struck by a look.</summary>
    public bool IsOpen(WorkStep step) => !IsDone(step) && !IsStruck(step);

    /// <summary>How a look stands; a letter that is none is taken for one that is due, which keeps the gate shut.</summary>
    public LookStanding StandingOf(string letter) => LooksStand.FirstOrDefault(look => look.Look == letter) is { } stands ? LookStandings.Of(stands.Standing) : LookStanding.Due;

    /// <summary>
    /// Whether by the looks a step need not be done. What came off goes back on whatever the looks say, and a look that could not be made needs no tick.
    /// </summary>
    public bool IsStruck(WorkStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        if (!step.Looks.IsEmpty && step.Looks.All(look => StandingOf(look) is LookStanding.InDoubt or LookStanding.NotDue))
            return true;
        return ConditionOf(step) == StepCondition.Struck && !(step.Action == StepAction.Refit && step.Parts.Any(MustGoBack));
    }

    /// <summary>When a step is done, by the looks.</summary>
    public StepCondition ConditionOf(WorkStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        if (step.OnlyIf.IsEmpty && step.Unless.IsEmpty)
            return StepCondition.Met;
        if (step.Unless.Any(look => LookStandings.CountsAsFound(StandingOf(look))))
            return StepCondition.Struck;
        if (!step.OnlyIf.IsEmpty && !step.OnlyIf.Any(look => LookStandings.CountsAsFound(StandingOf(look))))
            return step.OnlyIf.All(look => LookStandings.IsDecided(StandingOf(look))) ? StepCondition.Struck : StepCondition.Waits;
        return step.Unless.All(look => LookStandings.IsDecided(StandingOf(look))) ? StepCondition.Met : StepCondition.Waits;
    }

    /// <summary>Looks that no plan has been made with yet.</summary>
    public IEnumerable<LookTaken> Unanswered => Looks.Where(look => !look.IsAnswered);

    /// <summary>Whether a part is off the engine: taken off and not put back.</summary>
    public bool IsOff(string part) =>
        Steps.All.Any(step => step.Action == StepAction.Remove && step.Parts.Contains(part) && IsDone(step))
        && !Steps.All.Any(step => step.Action == StepAction.Refit && step.Parts.Contains(part) && IsDone(step));

    /// <summary>Whether a part must be put back: it is off, or it came off to be sent away.</summary>
    public bool MustGoBack(string part) => IsOff(part) || SentOff.Contains(part);
}
