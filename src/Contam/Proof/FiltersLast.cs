using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether the filters of a circuit go back last: only when every other part of the circuit that is treated is done. A new filter that is fitted sooner catches what
/// the rest of the work still sheds, and is loaded before the first start.
/// </summary>
internal static class FiltersLast
{
    /// <summary>The first filter that goes back too early, or <c>null</c>. Time: that of the steps and of the parts on circuits.</summary>
    internal static string? FirstFault(ImmutableArray<PlanStep> steps, Family family)
    {
        var done = new Dictionary<string, PlanStep>(StringComparer.Ordinal);
        var back = new Dictionary<string, PlanStep>(StringComparer.Ordinal);
        foreach (PlanStep step in steps.Where(step => step.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit))
        {
            foreach (string part in PlayedStep.PartsOf(step))
            {
                if (step.Action == StepAction.Refit && !step.ForAccess)
                    back[part] = step;
                else if (Cleans(step) || (Looks(step) && !(done.TryGetValue(part, out PlanStep? before) && Cleans(before))))
                    done[part] = step;
            }
        }

        foreach (Circuit circuit in family.Circuits)
        {
            string[] parts = [.. circuit.Parts.Select(part => part.Value)];
            PlanStep? last = parts.Where(part => !IsFilter(part)).Select(part => done.GetValueOrDefault(part)).OfType<PlanStep>().MaxBy(step => step.Finish);
            PlanStep? first = parts.Where(IsFilter).Select(part => back.GetValueOrDefault(part)).OfType<PlanStep>().MinBy(step => step.Start);
            if (last is not null && first is not null && first.Start < last.Finish)
            {
                return FormattableString.Invariant(
                    $"step {first.Number} puts a filter of the {circuit.Name} circuit back before step {last.Number} is done there: the new filter would catch what that sheds");
            }
        }

        return null;

        bool IsFilter(string part) => family.IndexOf(new PartId(part)) is var index and >= 0 && family.Parts[index].Kind.IsFilter;
    }

    // What is cleaned, flushed or renewed sheds nothing more; a part that is only looked at or tried is done with that.
    private static bool Cleans(PlanStep step) => step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace;

    private static bool Looks(PlanStep step) => step.Action is StepAction.Inspect or StepAction.Test;
}
