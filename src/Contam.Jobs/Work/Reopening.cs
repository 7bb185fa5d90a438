using System.Collections.Immutable;
using Contam.Jobs.Entries;

namespace Contam.Jobs.Work;

/// <summary>
/// What else opens when steps open. A part that was refitted, or an engine that was proved, on the strength of work that is now open was so too early:
/// putting back and proving open again, and a part that must be put back again must first come off again. Work of other kinds that was done stays done.
/// </summary>
internal static class Reopening
{
    /// <summary>The steps that open with one that is unticked, that one left out.</summary>
    public static List<OpenAgain> After(JobState state, WorkStep step, string because)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(step);
        var opened = new List<OpenAgain> { new(step.Key, because) };
        Follow(state, state.Steps, opened);
        opened.RemoveAt(0);
        return opened;
    }

    /// <summary>The steps that open when a part that is on the engine is taken off although no step says so.</summary>
    public static List<OpenAgain> TakenOff(JobState state, string part)
    {
        ArgumentNullException.ThrowIfNull(state);
        List<OpenAgain> opened =
        [
            .. state.Steps.All.Where(step => step.Action == StepAction.Refit && step.Parts.Contains(part) && state.IsDone(step)).Select(step => new OpenAgain(step.Key, $"{part} was taken off to be sent away")),
        ];
        if (opened.Count == 0)
            return opened;
        opened.AddRange(state.Steps.All.Where(step => step.Action == StepAction.Remove && step.Parts.Contains(part) && state.IsDone(step)).Select(step => new OpenAgain(step.Key, $"{part} was taken off to be sent away")));
        Follow(state, state.Steps, opened);
        return opened;
    }

    /// <summary>
    /// Adds to <paramref name="opened"/>, until nothing more follows, the steps of <paramref name="now"/> that were done and are open again.
    /// </summary>
    /// <param name="before">How the job stands.</param>
    /// <param name="now">The steps that will hold: the same, or those of a new plan.</param>
    /// <param name="opened">The steps that open for a reason of their own; takes the rest.</param>
    internal static void Follow(JobState before, WorkSteps now, List<OpenAgain> opened)
    {
        var open = opened.Select(one => one.Key).ToHashSet(StringComparer.Ordinal);
        bool IsDone(WorkStep step) => before.TickOf.ContainsKey(step.Key) && !open.Contains(step.Key);
        bool hasGrown = true;
        while (hasGrown)
        {
            hasGrown = false;
            foreach (WorkStep step in now.All.Where(step => step.Phase is Phase.Refit or Phase.Prove && IsDone(step)).ToArray())
            {
                if (CauseOf(step, before, now, IsDone, opened) is not { } cause)
                    continue;
                hasGrown = true;
                Open(step, $"it was done after step {cause.Number}, which is open");
                if (step.Action != StepAction.Refit)
                    continue;
                foreach (WorkStep off in now.All.Where(one => one.Action == StepAction.Remove && one.Parts.Any(step.Parts.Contains) && IsDone(one)).ToArray())
                    Open(off, $"it is back on, and must come off again for step {cause.Number}");
            }
        }

        void Open(WorkStep step, string because)
        {
            open.Add(step.Key);
            opened.Add(new OpenAgain(step.Key, because));
        }
    }

    /// <summary>
    /// Of the steps that this one waits for and that are open now the one that opened first, then by number. One that was open already does not count: a tick
    /// out of turn is not taken back by something else.
    /// </summary>
    private static WorkStep? CauseOf(WorkStep step, JobState before, WorkSteps now, Func<WorkStep, bool> isDone, List<OpenAgain> opened)
    {
        ImmutableArray<WorkStep> waitedFor = before.Steps.Find(step.Key) is { } old ? before.Steps.Before(old) : [];
        var wasOpen = waitedFor.Where(one => !before.IsDone(one)).Select(one => one.Key).ToHashSet(StringComparer.Ordinal);
        return now.Before(step)
            .Where(one => one.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit && !isDone(one) && !wasOpen.Contains(one.Key))
            .MinBy(one => opened.FindIndex(other => other.Key == one.Key));
    }
}
