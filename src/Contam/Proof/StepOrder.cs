using System.Collections.Immutable;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>In which order the steps of a plan begin and end, and whether each waits for what it says it waits for.</summary>
internal static class StepOrder
{
    /// <summary>Reports steps without times, numbers given twice, and steps that do not wait. Linear in steps and what they wait for.</summary>
    internal static void Check(ImmutableArray<PlayedStep> steps, ImmutableArray<Fault>.Builder faults)
    {
        var byNumber = new Dictionary<int, PlanStep>();
        foreach (PlayedStep step in steps)
        {
            if (!step.HasTimes)
                faults.Add(new Fault(step.Step.Number, null, "it has no times that can be kept"));
            if (!byNumber.TryAdd(step.Step.Number, step.Step))
                faults.Add(new Fault(step.Step.Number, null, "another step bears the same number"));
        }

        foreach (PlanStep step in steps.Select(played => played.Step))
        {
            foreach (int number in step.After.OrEmpty())
            {
                if (number >= step.Number || !byNumber.TryGetValue(number, out PlanStep? before))
                    faults.Add(new Fault(step.Number, null, $"it waits for step {number}, which does not come before it"));
                else if (!(step.Start >= before.Finish))
                    faults.Add(new Fault(step.Number, null, $"it starts before step {number}, which it waits for, is finished"));
            }
        }
    }

    /// <summary>
    /// Every start and finish in the order in which they happen: by time, then what finishes before what starts, then by number. A step that
    /// takes no time starts and finishes in one go, among the starts.
    /// </summary>
    internal static IEnumerable<(PlayedStep Step, bool IsFinish)> Events(ImmutableArray<PlayedStep> steps) =>
        steps.Where(step => step.HasTimes)
            .SelectMany(step => new[] { (Step: step, IsFinish: false), (Step: step, IsFinish: true) })
            .OrderBy(happening => happening.IsFinish ? happening.Step.Step.Finish : happening.Step.Step.Start)
            .ThenBy(happening => happening.IsFinish && !happening.Step.IsMomentary ? 0 : 1)
            .ThenBy(happening => happening.Step.Step.Number)
            .ThenBy(happening => happening.IsFinish);
}
