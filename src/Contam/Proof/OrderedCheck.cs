using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>Whether the steps are numbered, timed and staffed so that they can be done as they stand, and whether the play of them ends clean.</summary>
internal static class OrderedCheck
{
    // Minutes are added up from the start, so that the last digits may differ.
    private const double Tolerance = 1e-6;

    /// <summary>The first thing out of order, or <c>null</c>. Time: that of sorting the steps, and of the play.</summary>
    internal static string? FirstFault(PlanDocument plan, Family family, OpenJoints joints)
    {
        ImmutableArray<PlanStep> steps = plan.Steps.OrEmpty();
        return Numbering(steps)
            ?? Played(plan, family, joints)
            ?? AsASheet(plan)
            ?? OpenedCircuits.FirstFault(plan, family)
            ?? DrainedFirst.FirstFault(steps, family)
            ?? FilledAgain.FirstFault(steps, family)
            ?? FiltersLast.FirstFault(steps, family);
    }

    /// <summary>
    /// The first thing out of order in the sheet of a plan with looks, or <c>null</c>: all that does not hang on how they come out. The steps are not played.
    /// </summary>
    internal static string? BeforeAnyLook(PlanDocument plan, PlanLooks looks, Family family)
    {
        ImmutableArray<PlanStep> steps = plan.Steps.OrEmpty();
        return Numbering(steps)
            ?? StepPlay.Misread([.. steps.Select(step => PlayedStep.Of(step, family))], family)
            ?? LookOrder.FirstFault(plan, looks)
            ?? AsASheet(plan)
            ?? OpenedCircuits.ForNothing(plan, family);
    }

    private static string? Played(PlanDocument plan, Family family, OpenJoints joints)
    {
        var ground = new PlayGround(family, joints);
        ImmutableArray<PlayedStep> steps = [.. plan.Steps.OrEmpty().Select(step => PlayedStep.Of(step, family))];
        DirtyPart[] dirty = [.. StepPlay.DirtyOf(family, plan)];
        return FirstOf(new StepPlay(ground, steps, dirty).Play()) ?? FirstOf(new StepPlay(ground, PlayedStep.ByNumber(steps), dirty).Play());
    }

    private static string? AsASheet(PlanDocument plan)
    {
        ImmutableArray<PlanStep> steps = plan.Steps.OrEmpty();
        return steps.Select(step => Staffing(step, plan.Hours.Technicians)).FirstOrDefault(problem => problem is not null)
            ?? TwoAtOnce(steps)
            ?? Phases(steps)
            ?? (plan.Sequence == PlanSequence.Bench ? EachPhaseOnce(steps) : null);
    }

    private static string? FirstOf(Simulation played) => played.Faults is [Fault fault, ..] ? fault.ToString() : null;

    private static string? Numbering(ImmutableArray<PlanStep> steps)
    {
        for (int i = 0; i < steps.Length; i++)
        {
            if (steps[i].Number != i + 1)
                return Text($"step {i + 1} is missing: what it does would be left undone");
        }

        return null;
    }

    private static string? Staffing(PlanStep step, int technicians)
    {
        if (step.Technician is not { } technician)
        {
            return step.Minutes > 0 && step.Phase != Phase.Prove && step.Action is not (StepAction.SendOut or StepAction.Note)
                ? Text($"step {step.Number} takes {step.Minutes} minutes of nobody's time: it would not be done")
                : null;
        }

        if (technician < 1 || technician > technicians)
            return Text($"step {step.Number} is for technician {technician} of {technicians}: nobody would do it");
        return Math.Abs(step.Finish - step.Start - step.Minutes) <= Tolerance ? null
            : Text($"step {step.Number} takes {step.Minutes} minutes, but is given {step.Finish - step.Start}: the times could not be kept");
    }

    private static string? TwoAtOnce(ImmutableArray<PlanStep> steps)
    {
        foreach (IGrouping<int, PlanStep> hand in steps.Where(step => step.Technician is not null).GroupBy(step => step.Technician!.Value))
        {
            PlanStep[] inTurn = [.. hand.OrderBy(step => step.Start).ThenBy(step => step.Finish).ThenBy(step => step.Number)];
            for (int i = 1; i < inTurn.Length; i++)
            {
                if (inTurn[i].Start < inTurn[i - 1].Finish)
                    return Text($"technician {hand.Key} is to do step {inTurn[i].Number} while still at step {inTurn[i - 1].Number}: the times could not be kept");
            }
        }

        return null;
    }

    // Made safe, then confirmed, then opened, then closed, then proved. A note may be written at any time.
    internal static string? Phases(ImmutableArray<PlanStep> steps)
    {
        PlanStep[] work = [.. steps.Where(step => step.Action != StepAction.Note)];
        PlanStep[] opened = [.. work.Where(step => step.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit)];
        if (opened.Length == 0)
            return null;
        if (!work.Any(step => step.Phase == Phase.MakeSafe))
            return "no step makes the engine safe: it would be opened under pressure or alive";
        if (!work.Any(step => step.Phase == Phase.Prove))
            return "no step proves the engine: it would leave the shop untried";
        return Before(work.Where(step => step.Phase == Phase.MakeSafe), work.Where(step => step.Phase > Phase.MakeSafe), "the engine is made safe")
            ?? Before(work.Where(step => step.Phase == Phase.Confirm), opened, "the failure is confirmed")
            ?? Before(opened, work.Where(step => step.Phase == Phase.Prove), "the work is done");
    }

    private static string? EachPhaseOnce(ImmutableArray<PlanStep> steps)
    {
        for (int i = 1; i < steps.Length; i++)
        {
            if (steps[i].Phase < steps[i - 1].Phase)
                return Text($"step {steps[i].Number} goes back to an earlier phase after step {steps[i - 1].Number}: the bench would work the phases in turns");
        }

        return null;
    }

    private static string? Before(IEnumerable<PlanStep> earlier, IEnumerable<PlanStep> later, string what)
    {
        PlanStep? last = earlier.MaxBy(step => step.Finish);
        PlanStep? first = later.MinBy(step => step.Start);
        return last is null || first is null || first.Start >= last.Finish ? null
            : Text($"step {first.Number} starts before {what} with step {last.Number}: it would be done too early");
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
