using System.Collections.Immutable;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>Whether each look is made in a step of its own places, and before everything whose condition names it, by number and by time.</summary>
internal static class LookOrder
{
    /// <summary>The first look out of order, or <c>null</c>. Time: looks times steps. The steps must be numbered from 1.</summary>
    internal static string? FirstFault(PlanDocument plan, PlanLooks looks)
    {
        ImmutableArray<PlanStep> steps = plan.Steps.OrEmpty();
        for (int look = 0; look < looks.All.Length; look++)
        {
            if (FirstFault(look, steps, looks) is { } fault)
                return fault;
        }

        return null;
    }

    private static string? FirstFault(int look, ImmutableArray<PlanStep> steps, PlanLooks looks)
    {
        PlanLook asked = looks.All[look];
        if (asked.Step < 1 || asked.Step > steps.Length)
            return Text($"look {asked.Id} is to be made in step {asked.Step}, which there is not: nobody would make it");
        PlanStep made = steps[asked.Step - 1];
        if (!PlayedStep.IsDebrisLook(made) || !PlayedStep.PartsOf(made).ToHashSet(StringComparer.Ordinal).SetEquals(asked.Places.OrEmpty()))
            return Text($"look {asked.Id} is to be made in step {asked.Step}, which is not a look for debris at its places and no others: nobody would know how it comes out");
        for (int other = 0; other < looks.All.Length; other++)
        {
            if (Names(looks.Due[other], look) && looks.All[other].Step <= asked.Step)
                return Text($"look {looks.All[other].Id} hangs on look {asked.Id}, which is made after it: nobody would know whether to make it");
        }

        foreach (PlanStep step in steps.Where((_, step) => Names(looks.Steps[step], look)))
        {
            if (step.Number <= asked.Step || !(step.Start >= made.Finish))
                return Text($"step {step.Number} hangs on look {asked.Id}, which is made in step {asked.Step} and not before it: nobody would know whether to do it");
        }

        return null;
    }

    private static bool Names(HangsOn hangs, int look) => (hangs.Named & (1 << look)) != 0;

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
