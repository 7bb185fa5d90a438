using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Entries;

namespace Contam.Jobs.Work;

/// <summary>
/// What else opens when steps open. A part that was refitted, or an engine that was proved, on the strength of work that is now open was so too early:
/// putting back and proving open again, and a part that must be put back again must first come off again. Work of other kinds that was done stays done.
/// </summary>
internal static class Reopening
{
    /// <summary>The steps that open when a part that is on the engine is taken off although no step says so; what follows from them is left out.</summary>
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
        return opened;
    }

    /// <summary>
    /// Adds to <paramref name="opened"/>, until nothing more follows, the steps of <paramref name="after"/> that were done and are open again.
    /// </summary>
    /// <param name="before">How the job stands.</param>
    /// <param name="after">How it will stand, but for what is done: the same, or with the plan and the steps of a new plan.</param>
    /// <param name="opened">The steps that open for a reason of their own; takes the rest.</param>
    /// <param name="family">The family, as the job keeps it.</param>
    /// <remarks>
    /// What is left is then played by the step simulator: a part that is soiled there although all its treatments are ticked (it was flushed while another that
    /// leads into it was clean, and that one is open again) is treated once more, and what was done on the strength of it opens too.
    /// </remarks>
    internal static void Follow(JobState before, JobState after, Family family, List<OpenAgain> opened)
    {
        FollowOrder(before, after, opened);
        while (true)
        {
            var open = opened.Select(one => one.Key).ToHashSet(StringComparer.Ordinal);
            var left = after.Steps.All.Where(step => before.TickOf.ContainsKey(step.Key) && !open.Contains(step.Key)).ToDictionary(step => step.Key, step => before.TickOf[step.Key], StringComparer.Ordinal);
            OpenAgain[] again = [.. SoiledAgain(after with { TickOf = left }, family)];
            if (again.Length == 0)
                return;
            opened.AddRange(again);
            FollowOrder(before, after, opened);
        }
    }

    // A part that the plan does not treat cannot be treated again; then the flush that carries debris into it is made again, with everything off that was off.
    private static IEnumerable<OpenAgain> SoiledAgain(JobState left, Family family)
    {
        var given = new HashSet<string>(StringComparer.Ordinal);
        foreach ((string part, ImmutableArray<WorkStep> flushes) in BenchPlay.Soiled(left, family))
        {
            WorkStep[] treated = [.. left.Steps.All.Where(step => left.IsDone(step) && BenchPlay.IsTreatment(step) && step.Parts.Contains(part))];
            foreach (WorkStep step in (treated.Length > 0 ? treated : [.. flushes]).Where(step => given.Add(step.Key)))
                yield return new OpenAgain(step.Key, $"{part} can have been soiled by what is open again");
        }
    }

    private static void FollowOrder(JobState before, JobState after, List<OpenAgain> opened)
    {
        WorkSteps now = after.Steps;
        var open = opened.Select(one => one.Key).ToHashSet(StringComparer.Ordinal);
        bool IsDone(WorkStep step) => before.TickOf.ContainsKey(step.Key) && !open.Contains(step.Key);
        bool hasGrown = true;
        while (hasGrown)
        {
            hasGrown = false;
            foreach (WorkStep step in now.All.Where(step => step.Phase is Phase.Refit or Phase.Prove && IsDone(step)).ToArray())
            {
                if (CauseOf(step, before, after, IsDone, opened) is not { } cause)
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
    /// out of turn is not taken back by something else. One that was struck by a look was not open: what was done without it was done too early.
    /// </summary>
    private static WorkStep? CauseOf(WorkStep step, JobState before, JobState after, Func<WorkStep, bool> isDone, List<OpenAgain> opened)
    {
        ImmutableArray<WorkStep> waitedFor = before.Steps.Find(step.Key) is { } old ? before.Steps.Before(old) : [];
        var wasOpen = waitedFor.Where(before.IsOpen).Select(one => one.Key).ToHashSet(StringComparer.Ordinal);
        return after.Steps.Before(step)
            .Where(one => one.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit && !isDone(one) && !after.IsStruck(one) && !wasOpen.Contains(one.Key))
            .MinBy(one => opened.FindIndex(other => other.Key == one.Key));
    }
}
