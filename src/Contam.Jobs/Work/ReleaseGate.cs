using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Plans;
using Contam.Reports.Text;
using Contam.Treatment;

namespace Contam.Jobs.Work;

/// <summary>Something that stands between an engine and its first start.</summary>
/// <param name="Text">What is missing, as a clause without a full stop.</param>
/// <param name="Mend">What to do, as a sentence.</param>
public sealed record Missing(string Text, string Mend);

/// <summary>
/// Whether the engine may be run again: only when nothing at all is open. Steps, exposed parts, readings, finds and parts that are away are each looked
/// at by themselves, so that a slip in one of them does not open the gate.
/// </summary>
internal static class ReleaseGate
{
    /// <summary>Everything that is missing, in the order in which it is best dealt with; empty where the engine may be run.</summary>
    /// <param name="state">How the job stands.</param>
    /// <param name="kept">Family and standard, as the job keeps them.</param>
    public static ImmutableArray<Missing> Missing(JobState state, KeptSystem kept)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(kept);
        ImmutableArray<Missing> missing = [.. Finds(state), .. Looks(state), .. Steps(state), .. Parts(state, kept), .. Away(state), .. Readings(state, kept)];
        // While something is open the play would only tell of the same work in other words.
        return missing.IsEmpty ? [.. Played(state, kept)] : missing;
    }

    /// <summary>What the step simulator, which knows nothing of how the steps were made or matched, finds wrong when all is done in the order in which it was.</summary>
    private static IEnumerable<Missing> Played(JobState state, KeptSystem kept) => BenchPlay.LeftWrong(state, kept.Family).Select(wrong =>
        new Missing($"in the order in which the work was done {wrong}", "Untick the last work at that part, and do it again."));

    /// <summary>The limits that must have been measured: of every part that is tested here, and the holds that are tried before fluid goes in. In file order.</summary>
    public static ImmutableArray<Limit> Due(JobState state, Family family)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(family);
        var tested = TestedParts(state);
        var held = state.Steps.All.Where(step => step is { Phase: Phase.Prove, IsBeforeRelease: true } && (state.IsDone(step) || !state.IsStruck(step))).SelectMany(step => step.Parts).ToHashSet(StringComparer.Ordinal);
        return [.. family.Limits.Where(limit => tested.Contains(limit.Part.Value) || (held.Contains(limit.Part.Value) && limit.Measures is Measure.PressureDrop or Measure.VacuumDrop))];
    }

    private static HashSet<string> TestedParts(JobState state) =>
        state.Steps.All.Where(step => step is { Action: StepAction.Test, Technician: not null } && (state.IsDone(step) || !state.IsStruck(step))).SelectMany(step => step.Parts).ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<Missing> Finds(JobState state) => state.Unanswered.Select(look => new Missing(
        $"{look.Seen.Debris} {(look.Seen.Found ? "was found" : "was looked for and not found")} at {look.Seen.Part} (entry {Number(look.Sequence)}), and no plan has been made with it",
        "Plan again: contam job replan."));

    private static IEnumerable<Missing> Looks(JobState state) => state.Plan.Looks.Where(look => !LookStandings.IsDecided(state.StandingOf(look.Id))).Select(look => new Missing(
        state.StandingOf(look.Id) == LookStanding.Due
            ? $"look {look.Id} at {string.Join(", ", look.Places)} has no outcome"
            : $"look {look.Id} at {string.Join(", ", look.Places)} hangs on look {string.Join(" or ", look.OnlyIf)}, which has no outcome yet",
        state.StandingOf(look.Id) == LookStanding.Due
            ? $"Look, then: contam job look {look.Id} --clean, or --found {look.Debris[0]}."
            : $"First say what look {look.OnlyIf[0]} showed."));

    private static IEnumerable<Missing> Steps(JobState state) => state.Open.Where(step => step.IsBeforeRelease).Select(step => new Missing(
        $"step {Number(step.Number)} is open{(state.ReopenedBecause.TryGetValue(step.Key, out string? why) ? $" again, because {why}" : "")}: {Shortened(step.Text)}",
        $"Do it, then: contam job tick {Number(step.Number)}."));

    /// <summary>Whether every treatment that a part needs has a step at it that is done: what the plan gives it or, of a plan with looks, what the standard asks for with all that was seen.</summary>
    private static IEnumerable<Missing> Parts(JobState state, KeptSystem kept)
    {
        if (!state.Plan.Looks.IsEmpty)
        {
            foreach ((string part, ImmutableArray<TreatmentKind> open) in Without(state, kept, state.IsDone))
                yield return new Missing($"{part} can have been reached and is not yet done: {Words(open)}", "Do its steps, struck ones too; where it has none, plan again: contam job replan.");
            yield break;
        }

        foreach (PlanPart part in state.Plan.Parts)
        {
            TreatmentKind[] open = [.. part.Treatment.Where(treatment => !IsTreated(state, part.Id, treatment, state.IsDone))];
            if (open.Length > 0)
            {
                string grade = part.Exposure.Any(line => line.Grade == Grade.Exposed) ? "exposed" : "guarded";
                yield return new Missing($"{part.Id} is {grade} and not yet done: {Words(open)}", "Do its steps.");
            }
        }
    }

    /// <summary>What the standard asks for with all that was seen, and no step gives that is done or may come to be due; by part.</summary>
    public static IEnumerable<(string Part, ImmutableArray<TreatmentKind> Treatments)> Unplanned(JobState state, KeptSystem kept) =>
        state.Plan.Looks.IsEmpty ? [] : Without(state, kept, step => state.IsDone(step) || !state.IsStruck(step));

    /// <summary>Parts with treatments that are asked for and that none of these steps gives.</summary>
    private static IEnumerable<(string Part, ImmutableArray<TreatmentKind> Treatments)> Without(JobState state, KeptSystem kept, Func<WorkStep, bool> counts)
    {
        foreach (PartTreatment asked in new LookTable(state, kept, state.Outcomes).Asked())
        {
            string part = asked.Part.Id.Value;
            ImmutableArray<TreatmentKind> open = [.. asked.Treatments.Where(treatment => !IsTreated(state, part, treatment, counts) && !IsDoneOtherwise(state, part, treatment, counts))];
            if (!open.IsEmpty)
                yield return (part, open);
        }
    }

    // A new part is neither flushed nor cleaned. A look that could not be made is no longer missed where the part is cleaned or renewed.
    private static bool IsDoneOtherwise(JobState state, string part, TreatmentKind treatment, Func<WorkStep, bool> counts) => treatment switch
    {
        TreatmentKind.Flush or TreatmentKind.Clean => IsTreated(state, part, TreatmentKind.Replace, counts),
        TreatmentKind.Inspect => state.Plan.Looks.Any(look => look.Places.Contains(part) && state.StandingOf(look.Id) == LookStanding.InDoubt)
            && new[] { TreatmentKind.Flush, TreatmentKind.Clean, TreatmentKind.Replace }.Any(kind => IsTreated(state, part, kind, counts)),
        _ => false,
    };

    private static bool IsTreated(JobState state, string part, TreatmentKind treatment, Func<WorkStep, bool> counts) =>
        state.Steps.All.Any(step => step.Parts.Contains(part) && step.Action == ActionOf(treatment) && (treatment != TreatmentKind.Inspect || step.About == LookAbout.Debris) && counts(step));

    private static string Words(IEnumerable<TreatmentKind> treatments) => string.Join(", ", treatments.Select(one => one.ToString().ToLowerInvariant()));

    private static StepAction ActionOf(TreatmentKind treatment) => treatment switch
    {
        TreatmentKind.Inspect => StepAction.Inspect,
        TreatmentKind.Flush => StepAction.Flush,
        TreatmentKind.Clean => StepAction.Clean,
        TreatmentKind.Test => StepAction.Test,
        _ => StepAction.Replace,
    };

    private static IEnumerable<Missing> Away(JobState state) => state.Away.Select(part =>
        new Missing($"{part} is at the outside workshop", $"When it is here again: contam job back {part}."));

    private static IEnumerable<Missing> Readings(JobState state, KeptSystem kept)
    {
        var due = Due(state, kept.Family).Select(limit => limit.Id).ToHashSet(StringComparer.Ordinal);
        var tested = TestedParts(state);
        long lastFitted = state.Steps.All.Where(step => step.Action == StepAction.Refit && state.IsDone(step)).Select(step => state.TickOf[step.Key].Sequence).DefaultIfEmpty().Max();
        foreach (Limit limit in kept.Family.Limits)
        {
            ReadingTaken? last = state.Readings.LastOrDefault(reading => reading.Entry.Limit == limit.Id);
            string measure = $"contam job measure {limit.Id} READINGS";
            if (last is null && due.Contains(limit.Id))
                yield return new Missing($"{limit.Id} at {limit.Part} has no reading", $"Measure it: {measure}.");
            else if (last is { IsStale: true } && due.Contains(limit.Id))
                yield return new Missing($"{limit.Id} at {limit.Part} was measured before the part was last worked on (entry {Number(last.Sequence)})", $"Measure it again: {measure}.");
            else if (last is not null && due.Contains(limit.Id) && !tested.Contains(limit.Part.Value) && last.Sequence < lastFitted)
                yield return new Missing($"{limit.Id} at {limit.Part} was measured before everything was back on (entry {Number(last.Sequence)})", $"Measure it again: {measure}.");
            else if (last is { Entry.Verdict: not ("good" or "marginal") })
                yield return new Missing($"the reading of {limit.Id} at {limit.Part} is {(last.Entry.Verdict == "reject" ? "rejected" : "undecided")} (entry {Number(last.Sequence)}): {last.Entry.Because}", $"Put it right and measure again: {measure}.");
        }
    }

    private static string Shortened(string text)
    {
        string harmless = TextPage.Harmless(text);
        int end = harmless.IndexOf(". ", StringComparison.Ordinal);
        return (end < 0 ? harmless : harmless[..end]).TrimEnd('.');
    }

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
