using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>
/// The steps of a history in an order that somebody could choose who relies on nothing but what each step says it waits for, and on the looks that it hangs on:
/// of those that could be done next always the one that stands last on the sheet.
/// </summary>
internal sealed class AfterOrder
{
    private readonly ImmutableArray<PlayedStep> steps;
    private readonly int[][] waitsFor;
    private readonly int[][] waitedForBy;

    /// <param name="steps">All steps of the plan, by number from 1, each waiting for earlier ones only.</param>
    /// <param name="looks">What hangs on what.</param>
    internal AfterOrder(ImmutableArray<PlayedStep> steps, PlanLooks looks)
    {
        this.steps = steps;
        waitsFor = new int[steps.Length][];
        for (int step = 0; step < steps.Length; step++)
        {
            int named = looks.Steps[step].Named;
            waitsFor[step] =
            [
                .. steps[step].Step.After.OrEmpty().Select(number => number - 1)
                    .Concat(Enumerable.Range(0, looks.All.Length).Where(look => (named & (1 << look)) != 0).Select(look => looks.All[look].Step - 1)).Distinct(),
            ];
        }

        ILookup<int, int> after = Enumerable.Range(0, steps.Length).SelectMany(step => waitsFor[step].Select(before => (before, step))).ToLookup(pair => pair.before, pair => pair.step);
        waitedForBy = [.. Enumerable.Range(0, steps.Length).Select(step => after[step].ToArray())];
    }

    /// <summary>The steps that are done, one after the other.</summary>
    internal ImmutableArray<PlayedStep> LastFirst(bool[] isDone)
    {
        var waiting = new int[steps.Length];
        var ready = new PriorityQueue<int, int>();
        for (int step = 0; step < steps.Length; step++)
        {
            waiting[step] = waitsFor[step].Count(before => isDone[before]);
            if (isDone[step] && waiting[step] == 0)
                ready.Enqueue(step, -step);
        }

        var order = ImmutableArray.CreateBuilder<PlayedStep>();
        while (ready.TryDequeue(out int step, out _))
        {
            order.Add(steps[step].At(order.Count));
            foreach (int next in waitedForBy[step])
            {
                if (isDone[next] && --waiting[next] == 0)
                    ready.Enqueue(next, -next);
            }
        }

        return order.ToImmutable();
    }
}
