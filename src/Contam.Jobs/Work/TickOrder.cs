using System.Collections.Immutable;

namespace Contam.Jobs.Work;

/// <summary>What may be done now, and what waits for what.</summary>
internal static class TickOrder
{
    /// <summary>The open steps that come before this one, by number; empty where it is its turn.</summary>
    public static ImmutableArray<WorkStep> OpenBefore(JobState state, WorkStep step)
    {
        ArgumentNullException.ThrowIfNull(state);
        return [.. state.Steps.Before(step).Where(state.IsOpen)];
    }

    /// <summary>Of the open steps before this one the first that can be done now; <c>null</c> where it is its turn.</summary>
    public static WorkStep? ComesFirst(JobState state, WorkStep step) =>
        OpenBefore(state, step) is { IsEmpty: false } open ? open.FirstOrDefault(before => OpenBefore(state, before).IsEmpty) ?? open[0] : null;

    /// <summary>The open steps whose turn it is, by number. After-run steps are among them only once the engine is released.</summary>
    public static ImmutableArray<WorkStep> Now(JobState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return [.. state.Open.Where(step => (step.IsBeforeRelease || state.IsReleased) && state.ConditionOf(step) != StepCondition.Waits && OpenBefore(state, step).IsEmpty)];
    }

    /// <summary>Open steps that wait, by number, each with the open steps that it waits for directly.</summary>
    public static ImmutableArray<(WorkStep Step, ImmutableArray<WorkStep> For)> Waiting(JobState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return [.. state.Open.Select(step => (step, NearestOpen(state, step))).Where(one => !one.Item2.IsEmpty)];
    }

    /// <summary>The open steps that a step waits for directly; where those are done and one further back is open again, that one.</summary>
    private static ImmutableArray<WorkStep> NearestOpen(JobState state, WorkStep step)
    {
        ImmutableArray<WorkStep> all = OpenBefore(state, step);
        ImmutableArray<WorkStep> near = [.. all.Where(before => step.After.Contains(before.Number))];
        return near.IsEmpty ? all : near;
    }
}
