using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>
/// A plan with two looks, one behind the other, written by hand, and what is said when any one thing of it is changed. It has three histories: the screen is clean;
/// the screen is not and the port is; neither is.
/// </summary>
public class A_plan_with_looks
{
    private static readonly Family Family = CaseReader.System("pump > screen[inplace look=good] > gallery[inplace] > port[inplace look=good] > tank[seals=o-ring access=cover]; cover; spare[inplace]");

    private const string Steps = """
        safe
        look pump
        remove pump
        inspect screen
        inspect port onlyif=A
        remove cover onlyif=B
        remove tank onlyif=B
        replace pump
        clean screen onlyif=A
        clean gallery onlyif=A
        clean port onlyif=B
        clean tank onlyif=B
        refit pump
        refit tank onlyif=B seals=o-ring
        refit cover onlyif=B
        prove
        """;

    private static readonly PlanDocument Plan = With(Steps);

    [Fact]
    public void Holds_in_every_history()
    {
        Verification verification = PlanVerifier.Verify(Plan, Family);

        Assert.Equal([null, null, null, null, null], verification.Claims.Select(claim => claim.Where));
        Assert.Equal(3, verification.Histories);
    }

    // A condition dropped, or a letter of it

    [Fact]
    public void Is_refused_where_a_step_hangs_on_too_few_looks() => Refused(
        WithStep(10, step => step with { OnlyIf = ["B"] }),
        ClaimKind.Treated,
        "with A found, B clean: gallery needs cleaning, but no step that is done does so: it would go back without");

    [Fact]
    public void Is_refused_where_a_step_is_struck_too_often() => Refused(
        WithStep(10, step => step with { Unless = ["B"] }),
        ClaimKind.Treated,
        "with A found, B found: gallery needs cleaning, but no step that is done does so: it would go back without");

    [Fact]
    public void Is_refused_where_a_step_has_lost_its_condition() => Refused(
        WithStep(12, step => step with { OnlyIf = [] }),
        ClaimKind.Treated,
        "with A clean, B not due: tank is said to be left alone, but a step that is done treats it: its list and its steps tell two things");

    [Fact]
    public void Is_refused_where_a_part_is_said_to_be_left_alone_and_needs_work() => Refused(
        WithPart("gallery", part => part with { OnlyIf = ["B"] }) with { Steps = WithStep(10, step => step with { OnlyIf = ["B"] }).Steps },
        ClaimKind.Treated,
        "with A found, B clean: gallery is said to be left alone, but debris can have come to it: it would go back as dirty as it is");

    // Access

    [Fact]
    public void Is_refused_where_what_is_in_the_way_comes_off_less_often() => Refused(
        Plan with { Steps = [.. Plan.Steps.Select(step => step.Part == "cover" ? step with { Unless = ["B"] } : step)] },
        ClaimKind.Ordered,
        "with A found, B found: step 7: tank is taken off while cover, which is in the way, is on");

    [Theory]
    [InlineData(7, "with A clean, B not due: step 7: tank is taken off while cover, which is in the way, is on")]
    [InlineData(6, "with A clean, B not due: when all is done: cover is never put back")]
    [InlineData(14, "with A clean, B not due: step 14: tank is put back although it was never taken off")]
    public void Is_refused_where_access_has_lost_its_condition(int number, string where) => Refused(
        WithStep(number, step => step with { OnlyIf = [] }),
        ClaimKind.Ordered,
        number == 6 ? "with A clean, B not due: step 16: the engine is tried while cover is off" : where);

    // Looks out of their order

    [Fact]
    public void Is_refused_where_a_look_is_made_after_what_hangs_on_it()
    {
        ImmutableArray<PlanStep> steps = Plan.Steps.SetItem(4, Plan.Steps[5] with { Number = 5, Start = 40, Finish = 50, After = [4] }).SetItem(5, Plan.Steps[4] with { Number = 6, Start = 50, Finish = 60, After = [5] });
        Refused(
            Plan with { Steps = steps, Looks = Plan.Looks.SetItem(1, Plan.Looks[1] with { Step = 6 }) },
            ClaimKind.Ordered,
            "step 5 hangs on look B, which is made in step 6 and not before it: nobody would know whether to do it");
    }

    [Fact]
    public void Is_refused_where_a_look_hangs_on_a_later_one() => Refused(
        Plan with { Looks = [Plan.Looks[1], Plan.Looks[0]] },
        ClaimKind.Ordered,
        "look B hangs on look A, which does not come before it: nobody would know whether to make it");

    [Theory]
    [InlineData(99, "look A is to be made in step 99, which there is not: nobody would make it")]
    [InlineData(2, "look A is to be made in step 2, which is not a look for debris at its places and no others: nobody would know how it comes out")]
    [InlineData(5, "look A is to be made in step 5, which is not a look for debris at its places and no others: nobody would know how it comes out")]
    public void Is_refused_where_a_look_is_not_its_step(int step, string where) =>
        Refused(Plan with { Looks = Plan.Looks.SetItem(0, Plan.Looks[0] with { Step = step }) }, ClaimKind.Ordered, where);

    [Fact]
    public void Is_refused_where_a_look_is_due_and_its_step_is_not() => Refused(
        Plan with { Looks = Plan.Looks.SetItem(1, Plan.Looks[1] with { OnlyIf = [] }) },
        ClaimKind.Ordered,
        "with A clean, B clean: look B is due, but its step is not done: nobody would know how it comes out");

    [Fact]
    public void Is_refused_where_what_a_look_is_to_show_is_wiped_away_before()
    {
        ImmutableArray<PlanStep> steps = [.. Plan.Steps.Select(step => step.Number == 9 ? step with { Part = null, Parts = ["screen", "gallery"], OnlyIf = ["A"] } : step)];
        PlanDocument early = Plan with { Steps = steps.SetItem(3, steps[3] with { Action = StepAction.Clean, Phase = Phase.CleanOut, About = null }).SetItem(4, steps[3] with { Number = 5, Start = 40, Finish = 50, After = [4] }) };
        Assert.Contains("looked at for debris after it was cleaned", PlanVerifier.Verify(
            early with { Sequence = PlanSequence.Schedule, Looks = [Plan.Looks[0] with { Step = 5 }], Steps = [.. early.Steps.Select(step => step with { OnlyIf = step.Number > 5 && !step.OnlyIf.IsEmpty ? ["A"] : [] })], Parts = [.. early.Parts.Select(part => part with { OnlyIf = part.OnlyIf.IsEmpty ? [] : ["A"] })] },
            Family).Claims[(int)ClaimKind.Ordered].Where, StringComparison.Ordinal);
    }

    // Each history counts, the first and the last

    [Theory]
    [InlineData("refit pump onlyif=A", "with A clean, B not due: step 16: the engine is tried while pump is off")]
    [InlineData("refit pump unless=A\nrefit pump onlyif=B", "with A found, B clean: step 17: the engine is tried while pump is off")]
    [InlineData("refit pump unless=B", "with A found, B found: step 16: the engine is tried while pump is off")]
    public void Is_refused_where_it_fails_in_one_history_alone(string refit, string where) =>
        Refused(With(Steps.Replace("refit pump", refit, StringComparison.Ordinal)), ClaimKind.Ordered, where);

    [Fact]
    public void Is_refused_where_it_fails_in_the_last_history_alone() => Refused(
        WithStep(14, step => step with { Seals = [] }),
        ClaimKind.Ordered,
        "with A found, B found: step 14: tank is put back without a new o-ring");

    // Waiting

    [Fact]
    public void Is_refused_where_a_step_waits_only_through_one_that_is_not_done() => Refused(
        Plan with { Steps = [.. Plan.Steps.Select(step => step with { After = step.Number == 1 ? [] : [step.Number - 1] })] },
        ClaimKind.Ordered,
        "with A clean, B not due: done in another order that what the steps wait for allows, step 16: the engine is tried while pump is still dirty");

    // Asks

    [Fact]
    public void Is_refused_where_it_does_not_say_what_a_grade_asks_for() => Refused(
        WithPart("gallery", part => part with { Asks = [part.Asks[1]] }),
        ClaimKind.Closed,
        "with A found, B clean: gallery is exposed to metal, and the plan does not say what that asks for: it would not be treated for it");

    // What cannot be followed

    [Theory]
    [InlineData("gallery", "look A may not decide at gallery, as a look there does not show debris well enough: what lies beyond it would be left as it is")]
    [InlineData("belt", "look A may not decide at belt, as this engine has no such part: what lies beyond it would be left as it is")]
    [InlineData("port", "look B may not decide at port, as another look is made there: what lies beyond it would be left as it is")]
    [InlineData("", "look A is at no place or for no debris: nobody could say how it comes out")]
    public void Is_refused_where_a_look_may_not_decide(string place, string where) => Refused(
        Plan with { Looks = Plan.Looks.SetItem(0, Plan.Looks[0] with { Places = [.. place.Split(' ', StringSplitOptions.RemoveEmptyEntries)] }) },
        ClaimKind.Ordered,
        where);

    [Fact]
    public void Is_refused_where_a_look_is_for_another_debris() => Refused(
        Plan with { Looks = Plan.Looks.SetItem(0, Plan.Looks[0] with { Debris = ["rubber"] }) },
        ClaimKind.Ordered,
        "look A is for rubber, which the plan is not about: nobody has followed that debris");

    [Fact]
    public void Is_refused_where_two_looks_have_one_letter() => Refused(
        Plan with { Looks = Plan.Looks.SetItem(1, Plan.Looks[1] with { Id = "A" }) },
        ClaimKind.Ordered,
        "the plan has two looks A: it would not be known on which of the two something hangs");

    [Fact]
    public void Is_refused_where_something_hangs_on_a_look_that_is_none()
    {
        Refused(WithStep(9, step => step with { OnlyIf = ["C"] }), ClaimKind.Ordered, "step 9 hangs on look C, which the plan does not have: nobody would know whether to do it");
        Refused(WithPart("tank", part => part with { OnlyIf = ["C"] }), ClaimKind.Ordered, "tank hangs on look C, which the plan does not have: nobody would know whether to treat it");
        Refused(
            Plan with { Order = [new PlanOrderLine("o-ring", 1, "seal", null, null) { OnlyIf = ["C"] }] },
            ClaimKind.Ordered,
            "the order of o-ring hangs on look C, which the plan does not have: nobody would know whether to order it");
    }

    [Fact]
    public void Is_refused_where_a_plan_without_looks_hangs_on_one() => Refused(
        Plan with { Looks = [] },
        ClaimKind.Ordered,
        "step 5 hangs on look A, which the plan does not have: nobody would know whether to do it");

    private static PlanDocument With(string steps) => BranchingPlan.Of(
        Family,
        "pump",
        looks: "A screen 4; B port 5 A",
        hanging: "screen A; gallery A; port A; tank B",
        """
        pump replace
        screen inspect+clean exposed any pump
        gallery clean exposed any screen
        port inspect+clean exposed any gallery
        tank clean exposed any port
        """,
        steps);

    private static PlanDocument WithStep(int number, Func<PlanStep, PlanStep> change) => Plan with { Steps = Plan.Steps.SetItem(number - 1, change(Plan.Steps[number - 1])) };

    private static PlanDocument WithPart(string id, Func<PlanPart, PlanPart> change) => Plan with { Parts = [.. Plan.Parts.Select(part => part.Id == id ? change(part) : part)] };

    private static void Refused(PlanDocument plan, ClaimKind kind, string where) =>
        Assert.Equal(where, PlanVerifier.Verify(plan, Family).Claims[(int)kind].Where);
}
