using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether every reservoir that is drained is filled again: after its circuits were last opened, and before the machine turns. A fluid that is free, as
/// sea water is, comes by itself.
/// </summary>
internal static class FilledAgain
{
    /// <summary>The first reservoir that would be run dry, or <c>null</c>. Linear in steps and family.</summary>
    internal static string? FirstFault(ImmutableArray<PlanStep> steps, Family family)
    {
        HashSet<string> free = [.. family.Fluids.Where(fluid => fluid.IsFree).Select(fluid => fluid.Id)];
        PlanStep? turns = steps.FirstOrDefault(step => step.Phase == Phase.Prove && (step.DueAfterRunningHours is not null || step.Frame is "crank"));
        foreach (PlanStep drain in steps)
        {
            foreach (string reservoir in drain.Drains?.OrEmpty() ?? [])
            {
                Circuit[] circuits = [.. family.Circuits.Where(circuit => circuit.Fluid is { } fluid && !free.Contains(fluid) && circuit.Parts.Contains(new PartId(reservoir)))];
                if (circuits.Length > 0 && Dry(drain, reservoir, circuits, steps, turns) is { } fault)
                    return fault;
            }
        }

        return null;
    }

    private static string? Dry(PlanStep drain, string reservoir, Circuit[] circuits, ImmutableArray<PlanStep> steps, PlanStep? turns)
    {
        HashSet<string> parts = [.. circuits.SelectMany(circuit => circuit.Parts).Select(part => part.Value)];
        PlanStep? fill = steps.LastOrDefault(step => step.Number > drain.Number && (step.Fills?.OrEmpty() ?? []).Any(name => circuits.Any(circuit => circuit.Name == name)));
        if (fill is null)
            return FormattableString.Invariant($"step {drain.Number} drains {reservoir}, and no step fills it again: it would run dry");
        if (turns is not null && turns.Number < fill.Number)
            return FormattableString.Invariant($"step {turns.Number} turns the machine before step {fill.Number} has filled {reservoir}: it would run dry");
        PlanStep? open = steps.FirstOrDefault(step => step.Number > fill.Number && step.Action is (StepAction.Remove or StepAction.Refit) && PlayedStep.PartsOf(step).Any(parts.Contains));
        return open is null ? null : FormattableString.Invariant($"step {fill.Number} fills {reservoir} before step {open.Number} has closed its circuit: it would run out");
    }
}
