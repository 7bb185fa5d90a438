using Contam.Plans;
using Contam.Spread;

namespace Contam.References.Masters;

/// <summary>A plan of a shipped family as somebody reads it who has a page of his own beside it: what comes before what, and what is done with what.</summary>
internal sealed class PlanOnPaper
{
    private readonly PlanDocument plan;

    private PlanOnPaper(PlanDocument plan) => this.plan = plan;

    /// <summary>The plan without looks: everything that could have been reached is treated, so that the whole order is seen.</summary>
    public static PlanOnPaper Flat(string family, string failed, string debris) => new(MastersPage.Shipped(family, failed, debris, 0).Plan);

    /// <summary>The plan with the looks that decide how far to go.</summary>
    public static PlanOnPaper WithLooks(string family, string failed, string debris) => new(MastersPage.Shipped(family, failed, debris, HowFar.MostLooks).Plan);

    /// <summary>The places of the looks that decide, in the order of work; of like parts the first.</summary>
    public string[] Looks => [.. plan.Looks.Select(look => plan.Steps[look.Step - 1]).Select(step => step.Part ?? step.Parts[0])];

    /// <summary>Hours at the bench that are sure, whatever the looks show.</summary>
    public double SureHours => plan.Hours.BenchAllClean;

    /// <summary>The treatments of a part; empty where it is not on the list.</summary>
    public string TreatmentOf(string part) =>
        string.Join(", ", plan.Parts.Where(one => one.Id == part).SelectMany(one => one.Treatment).Select(treatment => treatment.ToString().ToLowerInvariant()));

    /// <summary>Whether debris could have reached the part.</summary>
    public bool Lists(string part) => plan.Parts.Any(one => one.Id == part);

    /// <summary>How surely it is reached: exposed or guarded.</summary>
    public Grade GradeOf(string part) => plan.Parts.Single(one => one.Id == part).Exposure[0].Grade;

    /// <summary>Whether the part is told as one that opens more ways where it has failed too.</summary>
    public bool AsksAlsoFor(string part) => plan.Conditional.Any(one => one.IfFailed == part);

    /// <summary>Whether something is to be ordered.</summary>
    public bool Orders(string item) => plan.Order.Any(line => line.Item == item);

    /// <summary>The number of the step that does something at a part; where it is not in the plan the test fails.</summary>
    public int StepOf(StepAction action, string part) =>
        Assert.Single(plan.Steps, step => step.Action == action && step.Phase != Phase.Confirm && (step.Part == part || step.Parts.Contains(part))).Number;

    /// <summary>Whether a step on a part is in the plan at all.</summary>
    public bool Does(StepAction action, string part) => plan.Steps.Any(step => step.Action == action && (step.Part == part || step.Parts.Contains(part)));

    /// <summary>Whether a circuit is drained or opened safely before a part comes off.</summary>
    public bool DrainsFirst(string circuit, string part) => plan.Steps.Any(step => step.Circuit == circuit && step.Number < StepOf(StepAction.Remove, part));

    /// <summary>The parts come off in this order; where one is in it twice or not at all the test fails.</summary>
    public void ComesOff(params string[] order) => InOrder(StepAction.Remove, order);

    /// <summary>The parts go back in this order.</summary>
    public void GoesBack(params string[] order) => InOrder(StepAction.Refit, order);

    private void InOrder(StepAction action, string[] order)
    {
        string[] actual = [.. order.Select(part => (Part: part, Step: StepOf(action, part))).OrderBy(one => one.Step).Select(one => one.Part)];
        Assert.Equal(order, actual);
    }
}
