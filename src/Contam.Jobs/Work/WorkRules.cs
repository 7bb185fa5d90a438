using System.Collections.Immutable;
using System.Globalization;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;

namespace Contam.Jobs.Work;

/// <summary>
/// What may be written into a job about its work, given how it stands. Pure: whoever asks, at whichever front, gets the same answer, and an import asks for
/// every entry once more.
/// </summary>
internal static class WorkRules
{
    /// <summary>
    /// A step is done. A reason excuses that another step comes first; it does not excuse putting a dirty part on, working on a part that is away, trying
    /// the engine before every part is cleaned, looked at and tested, or running an engine that is open, dirty or not released.
    /// </summary>
    public static Ruling Tick(JobState state, KeptSystem kept, int number, TickWords words, DateTimeOffset at, string by)
    {
        if (state.Steps.Find(number) is not { } step)
            return Ruling.Refuse(new NoSuchStep(number, state.Steps.All.Length));
        if (state.TickOf.TryGetValue(step.Key, out Tick? done))
            return Ruling.Refuse(new DoneAlready(step, done.Entry.By));
        if (step.Looks.FirstOrDefault(look => !LookStandings.IsDecided(state.StandingOf(look))) is { } unsaid)
            return Ruling.Refuse(new NeedsOutcome(step, unsaid));
        if (!step.IsBeforeRelease && (!state.IsReleased || ReleaseGate.Missing(state, kept) is { IsEmpty: false }))
            return Ruling.Refuse(new RunsTheEngine(step, ReleaseGate.Missing(state, kept)));
        ImmutableArray<WorkStep> open = TickOrder.OpenBefore(state, step);
        if (!open.IsEmpty && words.Anyway is null)
            return Ruling.Refuse(new NotItsTurn(step, TickOrder.ComesFirst(state, step)!));
        if (AwayFrom(state, step) is { } part)
            return Ruling.Refuse(new IsAway(step, part));
        if (BenchPlay.TriesTheEngine(step) && !state.SentOff.IsEmpty)
            return Ruling.Refuse(new WouldHarm(step, $"the engine is tried while {state.SentOff[0]}, which came off to be sent away, is not put back"));
        if (StillOn(state, step) is { } fitted)
            return Ruling.Refuse(new WouldHarm(step, $"{fitted} is worked on while it is on the engine"));
        if (UntreatedFor(state, step) is { } untreated)
            return Ruling.Refuse(new WouldHarm(step, $"the engine is tried while step {untreated.Number.ToString(CultureInfo.InvariantCulture)} at {untreated.Parts[0]} is open"));
        if (BenchPlay.HarmOf(state, kept.Family, step) is { } harm)
            return Ruling.Refuse(new WouldHarm(step, harm));
        return Ruling.Take(new Ticked
        {
            At = at,
            By = by,
            Step = step.Stamp,
            Minutes = words.Minutes,
            Note = words.Note,
            Anyway = open.IsEmpty ? null : words.Anyway,
            Skipped = [.. open.Select(one => one.Number)],
            SkippedSteps = [.. open.Select(one => one.Stamp)],
        });
    }

    /// <summary>A step is open again, and with it what was done on the strength of it.</summary>
    public static Ruling Untick(JobState state, KeptSystem kept, int number, string because, DateTimeOffset at, string by)
    {
        if (state.Steps.Find(number) is not { } step)
            return Ruling.Refuse(new NoSuchStep(number, state.Steps.All.Length));
        if (!state.IsDone(step))
            return Ruling.Refuse(new OpenAlready(step));
        var opened = new List<OpenAgain> { new(step.Key, because) };
        ImmutableArray<LookStands>? looks = Opening(state, kept, opened);
        return Ruling.Take(new Unticked { At = at, By = by, Step = step.Stamp, Because = because, Reopened = [.. opened.Skip(1)], Looks = looks });
    }

    /// <summary>A part goes to an outside workshop. Whatever says that it is on the engine opens again: it has come off to be sent.</summary>
    public static Ruling Send(JobState state, KeptSystem kept, string part, DateTimeOffset at, string by)
    {
        if (state.Away.Contains(part))
            return Ruling.Refuse(new AwayAlready(part));
        if (KnownParts(state) is var known && !known.Contains(part))
            return Ruling.Refuse(new NoSuchThing(NamedThing.Part, part, known));
        List<OpenAgain> opened = Reopening.TakenOff(state, part);
        ImmutableArray<LookStands>? looks = opened.Count == 0 ? null : Opening(state, kept, opened);
        return Ruling.Take(new Moved { At = at, By = by, Part = part, Back = false, Reopened = [.. opened], Looks = looks });
    }

    /// <summary>A part is back from an outside workshop.</summary>
    public static Ruling Return(JobState state, string part, DateTimeOffset at, string by)
    {
        if (state.Away.Contains(part))
            return Ruling.Take(new Moved { At = at, By = by, Part = part, Back = true });
        return KnownParts(state) is var known && known.Contains(part) ? Ruling.Refuse(new NotAway(part)) : Ruling.Refuse(new NoSuchThing(NamedThing.Part, part, known));
    }

    /// <summary>Something on the order list was ordered, or has come.</summary>
    public static Ruling Supply(JobState state, string item, bool hasArrived, DateTimeOffset at, string by)
    {
        ImmutableArray<string> known = [.. state.Plan.Order.Select(line => line.Item).Distinct(StringComparer.Ordinal)];
        return known.Contains(item) ? Ruling.Take(new Supplied { At = at, By = by, Item = item, Arrived = hasArrived }) : Ruling.Refuse(new NoSuchThing(NamedThing.Item, item, known));
    }

    /// <summary>A part was looked at. That it is clean after it was worked on, or after debris was found there, is no look that counts.</summary>
    public static Ruling Look(JobState state, SeenAt seen, DateTimeOffset at, string by)
    {
        WorkStep? worked = state.Steps.All.FirstOrDefault(step => step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace && step.Parts.Contains(seen.Part) && state.IsDone(step));
        if (!seen.Found && worked is not null)
            return Ruling.Refuse(new WorkedOnBefore(seen.Part, worked));
        if (!seen.Found && state.Looks.Any(look => look.Seen.Found && look.Seen.Part == seen.Part && look.Seen.Debris == seen.Debris))
            return Ruling.Refuse(new FoundBefore(seen.Part, seen.Debris));
        return Ruling.Take(new Looked { At = at, By = by, Seen = seen with { AfterWork = worked is null ? null : true } });
    }

    /// <summary>Adds what else opens when these steps do, the looks among them; how the looks stand then, or <c>null</c> for as before.</summary>
    private static ImmutableArray<LookStands>? Opening(JobState state, KeptSystem kept, List<OpenAgain> opened)
    {
        if (!state.Plan.Looks.IsEmpty)
            return LookChange.IfOther(state, LookChange.Follow(state, kept, state.Outcomes.ToDictionary(StringComparer.Ordinal), opened));
        Reopening.Follow(state, state, kept.Family, opened);
        return null;
    }

    private static ImmutableArray<string> KnownParts(JobState state) => [.. state.Steps.All.SelectMany(step => step.Parts).Concat(state.Away).Distinct(StringComparer.Ordinal)];

    /// <summary>A part of the step that the plan takes off before it is treated, and that is not off.</summary>
    private static string? StillOn(JobState state, WorkStep step) => !BenchPlay.IsTreatment(step)
        ? null
        : step.Parts.FirstOrDefault(part => state.Steps.All.Any(one => one.Action == StepAction.Remove && one.Phase != Phase.Prove && one.Parts.Contains(part) && !state.IsDone(one) && (state.ConditionOf(one) == StepCondition.Met || state.IsStruck(step))));

    /// <summary>For a step that tries the engine: a treatment, look or test that is open; a part that was cleaned and that nobody looked at may be dirty.</summary>
    private static WorkStep? UntreatedFor(JobState state, WorkStep step) =>
        BenchPlay.TriesTheEngine(step) ? state.Open.FirstOrDefault(BenchPlay.IsTreatment) : null;

    private static string? AwayFrom(JobState state, WorkStep step) =>
        BenchPlay.TriesTheEngine(step) ? state.Away.FirstOrDefault() : step.Action == StepAction.SendOut ? null : step.Parts.FirstOrDefault(state.Away.Contains);
}
