using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>A plan that holds, written by hand, and what is said when any one thing of it is changed.</summary>
public class A_verified_plan
{
    private static readonly Family Family = CaseReader.System("""
        pump[sheds metal 400 seals=o-ring] > filter[filter holds metal 30 abs] > rail[inplace seals=gasket] > injector > tank
        spare > injector
        tank >?ring> sump >?plug> drain
        ring; plug
        """);

    private const string Steps = """
        safe
        look pump
        remove pump
        remove filter
        remove injector
        remove tank
        replace pump
        replace filter
        flush rail seals=gasket
        clean injector
        clean tank
        test injector
        refit pump seals=o-ring
        refit filter
        refit injector
        refit tank
        prove
        """;

    private static readonly PlanDocument Plan = BenchPlan.Of(
        Family,
        "pump",
        """
        pump replace exposed 400
        filter replace exposed 400 pump
        rail flush guarded 30 filter
        injector clean+test guarded 30 rail
        tank clean guarded 30 injector
        """,
        Steps)
        with
    {
        Conditional = [new PlanConditional("ring", ["sump"], []), new PlanConditional("ring", ["drain"], ["plug"])],
    };

    [Fact]
    public void Holds()
    {
        Verification verification = PlanVerifier.Verify(Plan, Family);

        Assert.True(verification.Holds);
        Assert.Equal(Enum.GetValues<ClaimKind>(), verification.Claims.Select(claim => claim.Kind));
        Assert.All(verification.Claims, claim => Assert.True(claim.Holds));
    }

    // Closed

    [Fact]
    public void Is_refused_without_a_part_that_the_debris_reaches() => Refused(
        Plan with { Parts = Plan.Parts.RemoveAt(4), Clear = 6 },
        ClaimKind.Closed,
        "tank is left out, though injector leads into it: metal would stay in it");

    [Fact]
    public void Is_refused_without_the_part_that_failed() => Refused(
        Plan with { Parts = Plan.Parts.RemoveAt(0), Clear = 6 },
        ClaimKind.Closed,
        "pump, where the metal comes from, is left out: it would go on shedding");

    [Fact]
    public void Is_refused_with_a_narrower_reach() => Refused(
        WithLine("injector", line => line with { ReachUm = 20 }),
        ClaimKind.Closed,
        "injector is said to be reached by metal of 20 µm, but rail lets 30 µm into it: it would be taken too lightly");

    [Fact]
    public void Is_refused_with_a_smaller_source() => Refused(
        WithLine("pump", line => line with { ReachUm = 300 }),
        ClaimKind.Closed,
        "pump sheds metal of 400 µm, but is said to be reached by 300 µm only: what it sheds would be taken too lightly");

    [Theory]
    [InlineData("filter", Grade.Guarded, "filter is called guarded for metal, but it is exposed: it would be treated too lightly")]
    [InlineData("rail", Grade.Cleared, "rail is called cleared for metal, but it is guarded: it would be treated too lightly")]
    public void Is_refused_with_a_milder_grade(string part, Grade grade, string where) =>
        Refused(WithLine(part, line => line with { Grade = grade }), ClaimKind.Closed, where);

    [Fact]
    public void Is_refused_with_another_number_of_clear_parts() => Refused(
        Plan with { Clear = 4 },
        ClaimKind.Closed,
        "4 parts are called clear, but it is 5: a part has been lost count of");

    [Fact]
    public void Is_refused_where_a_part_would_be_reached_if_another_failed() => Refused(
        Plan with { Conditional = [Plan.Conditional[1]] },
        ClaimKind.Closed,
        "sump is reached too if ring has failed, and the plan does not say so: nobody would look at ring");

    [Fact]
    public void Is_refused_where_a_part_would_be_reached_if_two_others_failed() => Refused(
        Plan with { Conditional = [Plan.Conditional[0]] },
        ClaimKind.Closed,
        "drain is reached too if several parts have failed, and the plan does not say so: nobody would look at them");

    [Fact]
    public void Is_refused_where_a_part_would_not_be_reached_if_another_failed() => Refused(
        Plan with { Conditional = Plan.Conditional.Add(new PlanConditional("plug", ["drain"], [])) },
        ClaimKind.Closed,
        "drain is said to be reached too if plug failed, but it is not: the wrong place would be looked at");

    [Fact]
    public void Is_refused_where_it_asks_about_a_part_that_is_not_there() => Refused(
        Plan with { Conditional = Plan.Conditional.Add(new PlanConditional("belt", [], [])) },
        ClaimKind.Closed,
        "the plan asks about belt, which this engine does not have: nobody could look at it");

    [Fact]
    public void Is_refused_where_nothing_is_said_of_what_reaches_a_part() => Refused(
        Plan with { Parts = Plan.Parts.Add(Part("spare")), Clear = 4 },
        ClaimKind.Closed,
        "nothing is said of what reaches spare: it would not be known how to treat it");

    // What cannot be read

    [Theory]
    [MemberData(nameof(Unreadable))]
    public void Is_refused_where_it_cannot_be_read(string where)
    {
        PlanDocument plan = UnreadablePlans[where];

        Refused(plan, ClaimKind.Closed, where);
        Refused(plan, ClaimKind.Grounded, where);
    }

    public static TheoryData<string> Unreadable => [.. UnreadablePlans.Keys.Order(StringComparer.Ordinal)];

    private static Dictionary<string, PlanDocument> UnreadablePlans => new(StringComparer.Ordinal)
    {
        ["the plan lists belt, which this engine does not have: the work would be done for another engine"] =
            Plan with { Parts = Plan.Parts.Add(Part("belt")) },
        ["the plan lists tank twice: it would not be known which of the two to work by"] =
            Plan with { Parts = Plan.Parts.Add(Plan.Parts[4]) },
        ["tank has a line for rubber, which the plan is not about: nobody has followed that debris"] =
            WithLine("tank", line => line with { Debris = "rubber" }),
        ["tank has two lines for metal: it would not be known which of the two to work by"] =
            WithPart("tank", part => part with { Exposure = [part.Exposure[0], part.Exposure[0]] }),
        ["tank is said to be reached by metal of a size that is none: it would not be known how to treat it"] =
            WithLine("tank", line => line with { ReachUm = -1 }),
        ["the plan is made for belt, which this engine does not have: the work would be done for another engine"] =
            Plan with { Failed = [.. Plan.Failed, new PlanFailure("belt", ["metal"], null)] },
        ["nobody says whether grit is hard or has a size, so it cannot be followed: verify with the standard that the plan was made by"] =
            Plan with { Debris = ["metal", "grit"] },
        ["the clean finding at tank may not count, as a look there does not show debris well enough: what lies beyond it would be left as it is"] =
            Plan with { Findings = [new PlanFinding { Part = "tank", Debris = "metal", Accepted = true }] },
        ["the clean finding at tank may not count, as something was found: what lies beyond it would be left as it is"] =
            Plan with { Findings = [new PlanFinding { Part = "tank", Debris = "metal", Found = true, Accepted = true }] },
        ["the evidence for metal does not stand once with the clean findings and once without: it cannot be told what they were taken to clear"] =
            Plan with { Evidence = [new PlanEvidence("metal", true, [])] },
        ["the evidence names belt, which this engine does not have: the work would be done for another engine"] =
            Plan with { Evidence = [new PlanEvidence("metal", true, [new PlanReach("belt", null, "belt", null)]), new PlanEvidence("metal", false, [])] },
    };

    [Fact]
    public void Holds_for_debris_of_the_shops_own_where_somebody_says_what_it_is()
    {
        PlanDocument plan = BenchPlan.Of(Family, "", "", "prove") with { Debris = ["grit"] };

        Assert.True(PlanVerifier.Verify(plan, Family, [new Debris("grit", HasSize: true, IsHard: true)]).Holds);
    }

    // Grounded

    [Fact]
    public void Is_refused_with_a_wider_reach() => Refused(
        WithLine("injector", line => line with { ReachUm = 40 }),
        ClaimKind.Grounded,
        "injector is said to be reached by metal of 40 µm through rail, but that lets only 30 µm on: the way that it came by would be missed");

    [Fact]
    public void Is_refused_with_a_larger_source() => Refused(
        WithLine("pump", line => line with { ReachUm = null }),
        ClaimKind.Grounded,
        "pump sheds metal of 400 µm, not of any size: what comes of it would be judged wrongly");

    [Fact]
    public void Is_refused_with_a_hop_over_no_joint() => Refused(
        WithLine("injector", line => line with { Via = "filter" }),
        ClaimKind.Grounded,
        "the metal in injector is said to come through filter, but nothing leads from there into it: the way to it cannot be followed");

    [Theory]
    [InlineData("spare")]
    [InlineData("belt")]
    public void Is_refused_with_a_hop_from_a_part_that_is_not_reached(string via) => Refused(
        WithLine("injector", line => line with { Via = via }),
        ClaimKind.Grounded,
        "the metal in injector is said to come through a part that it does not reach: the way to it cannot be followed");

    [Fact]
    public void Is_refused_with_a_source_that_did_not_fail() => Refused(
        WithLine("rail", line => line with { From = "rail", Via = null }),
        ClaimKind.Grounded,
        "metal is said to come from rail, which neither failed nor had any found in it: its true source would be missed");

    [Fact]
    public void Is_refused_with_a_source_from_elsewhere() => Refused(
        WithLine("pump", line => line with { From = "rail" }),
        ClaimKind.Grounded,
        "pump is called a source of metal that comes from elsewhere: its true source would be missed");

    [Fact]
    public void Is_refused_with_another_source_than_the_hops_lead_to() => Refused(
        WithLine("tank", line => line with { From = "spare" }),
        ClaimKind.Grounded,
        "the metal in tank is said to come from another source than that in injector, through which it comes: its true source would be missed");

    [Fact]
    public void Is_refused_with_a_part_that_nothing_leads_to() => Refused(
        Plan with { Parts = Plan.Parts.Add(Part("spare") with { Exposure = [Plan.Parts[4].Exposure[0]] }), Clear = 4 },
        ClaimKind.Grounded,
        "the metal in spare is said to come through injector, but nothing leads from there into it: the way to it cannot be followed");

    [Theory]
    [InlineData("pump filter rail tank")]
    [InlineData("filter rail injector tank")]
    [InlineData("spare injector tank")]
    [InlineData("pump pump filter rail injector tank")]
    [InlineData("")]
    public void Is_refused_with_another_path(string path) => Refused(
        WithPart("tank", part => part with { Path = [.. path.Split(' ', StringSplitOptions.RemoveEmptyEntries)] }),
        ClaimKind.Grounded,
        "the path shown for tank is not the way that its hops tell: who followed it would look in the wrong places");

    [Fact]
    public void Is_refused_with_a_worse_grade() => Refused(
        WithLine("rail", line => line with { Grade = Grade.Exposed }),
        ClaimKind.Grounded,
        "rail is called exposed for metal, but it is guarded: work would be done that nothing asks for");

    // Treated

    [Fact]
    public void Is_refused_without_a_treatment() => Refused(
        WithPart("tank", part => part with { Treatment = [] }),
        ClaimKind.Treated,
        "tank is given no treatment: it would go back as dirty as it is");

    [Fact]
    public void Is_refused_with_one_treatment_less_than_its_steps() => Refused(
        WithPart("injector", part => part with { Treatment = [TreatmentKind.Clean] }),
        ClaimKind.Treated,
        "step 12 treats injector in a way that its treatment does not ask for: its list and its steps tell two things");

    [Fact]
    public void Is_refused_with_one_treatment_more_than_its_steps() => Refused(
        WithPart("rail", part => part with { Treatment = [TreatmentKind.Flush, TreatmentKind.Test] }),
        ClaimKind.Treated,
        "rail is to be treated by testing, but no step does so: it would go back without");

    [Fact]
    public void Is_refused_where_a_treatment_is_done_in_another_phase() => Refused(
        WithStep(9, step => step with { Phase = Phase.Confirm }),
        ClaimKind.Treated,
        "rail is to be treated by flushing, but no step does so: it would go back without");

    [Fact]
    public void Is_refused_with_a_treatment_of_a_part_that_is_not_listed() => Refused(
        WithStep(10, step => step with { Part = null, Parts = ["injector", "spare"] }),
        ClaimKind.Treated,
        "step 10 treats spare in a way that its treatment does not ask for: its list and its steps tell two things");

    [Fact]
    public void Is_refused_where_a_part_without_treatment_is_sent_out() => Refused(
        WithStep(10, step => step with { Action = StepAction.SendOut, Part = "spare" }) with { Parts = WithPart("injector", part => part with { Treatment = [TreatmentKind.Test] }).Parts },
        ClaimKind.Treated,
        "step 10 treats spare in a way that its treatment does not ask for: its list and its steps tell two things");

    [Fact]
    public void Is_refused_where_a_replaced_part_is_never_off() => Refused(
        WithStep(3, step => step with { Part = "spare" }),
        ClaimKind.Treated,
        "pump is to be replaced, but no step takes the old one off: the old one would stay");

    [Fact]
    public void Is_refused_where_a_part_is_not_put_back() => Refused(
        WithStep(16, step => step with { Action = StepAction.Note }),
        ClaimKind.Treated,
        "tank is taken off, but no step puts it back: the engine would be run without it");

    [Fact]
    public void Is_refused_where_a_part_is_put_back_only_after_the_engine_has_run() => Refused(
        WithStep(16, step => step with { Phase = Phase.Prove }),
        ClaimKind.Treated,
        "tank is taken off, but no step puts it back: the engine would be run without it");

    [Fact]
    public void Is_refused_where_a_part_is_put_back_that_was_not_off() => Refused(
        WithStep(6, step => step with { Action = StepAction.Note }),
        ClaimKind.Treated,
        "tank is put back, but no step takes it off: it would not be opened at all");

    [Fact]
    public void Is_refused_where_nobody_looks_at_the_failed_part_first() => Refused(
        WithStep(2, step => step with { Part = "tank" }),
        ClaimKind.Treated,
        "no step looks at pump before the engine is opened: the cause of the failure would be missed");

    [Fact]
    public void Is_refused_where_a_cleared_part_is_treated() => Refused(
        WithLine("tank", line => line with { Grade = Grade.Cleared }),
        ClaimKind.Treated,
        "tank is cleared and given a treatment all the same: it would not be known which is meant");

    // Ordered

    [Fact]
    public void Is_refused_without_a_step() => Refused(
        Plan with { Steps = Plan.Steps.RemoveAt(8) },
        ClaimKind.Ordered,
        "step 9 is missing: what it does would be left undone");

    [Fact]
    public void Is_refused_where_the_play_of_its_steps_finds_a_fault() => Refused(
        WithStep(13, step => step with { Seals = [] }),
        ClaimKind.Ordered,
        "step 13: pump is put back without a new o-ring");

    [Fact]
    public void Is_refused_where_a_step_has_nobody_to_do_it() => Refused(
        WithStep(9, step => step with { Technician = null }),
        ClaimKind.Ordered,
        "step 9 takes 10 minutes of nobody's time: it would not be done");

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public void Is_refused_where_a_step_is_for_somebody_who_is_not_there(int technician) => Refused(
        WithStep(9, step => step with { Technician = technician }),
        ClaimKind.Ordered,
        $"step 9 is for technician {technician} of 1: nobody would do it");

    [Fact]
    public void Is_refused_where_a_step_is_given_less_time_than_it_takes() => Refused(
        WithStep(9, step => step with { Minutes = 12.5 }),
        ClaimKind.Ordered,
        "step 9 takes 12.5 minutes, but is given 10: the times could not be kept");

    [Fact]
    public void Is_refused_where_a_technician_is_at_two_steps_at_once() => Refused(
        WithStep(10, step => step with { Start = 85, Minutes = 15, After = [5] }),
        ClaimKind.Ordered,
        "technician 1 is to do step 10 while still at step 9: the times could not be kept");

    [Fact]
    public void Is_refused_where_the_engine_is_not_made_safe() => Refused(
        WithStep(1, step => step with { Action = StepAction.Note }),
        ClaimKind.Ordered,
        "no step makes the engine safe: it would be opened under pressure or alive");

    [Fact]
    public void Is_refused_where_the_engine_is_not_proved() => Refused(
        WithStep(17, step => step with { Action = StepAction.Note }),
        ClaimKind.Ordered,
        "no step proves the engine: it would leave the shop untried");

    [Fact]
    public void Is_refused_where_the_engine_is_opened_before_it_is_safe() => Refused(
        Plan with { Steps = Plan.Steps.Add(Plan.Steps[0] with { Number = 18, Start = 170, Finish = 180 }) },
        ClaimKind.Ordered,
        "step 2 starts before the engine is made safe with step 18: it would be done too early");

    [Fact]
    public void Is_refused_where_the_engine_is_opened_before_the_failure_is_confirmed() => Refused(
        Plan with { Steps = Swapped(2, 3) },
        ClaimKind.Ordered,
        "step 2 starts before the failure is confirmed with step 3: it would be done too early");

    [Fact]
    public void Is_refused_where_the_engine_is_proved_before_the_work_is_done() => Refused(
        WithPart("rail", part => part with { Treatment = [TreatmentKind.Flush, TreatmentKind.Test] }) with
        {
            Steps = Plan.Steps.Add(Plan.Steps[8] with { Number = 18, Phase = Phase.Test, Action = StepAction.Test, Start = 170, Finish = 180, After = [17] }),
        },
        ClaimKind.Ordered,
        "step 17 starts before the work is done with step 18: it would be done too early");

    [Fact]
    public void Is_refused_where_a_filter_goes_back_before_its_circuit_is_done() => Refused(
        Plan with
        {
            Sequence = PlanSequence.Schedule,
            Steps = BenchPlan.StepsOf(Steps
                .Replace("clean tank\ntest injector\n", "", StringComparison.Ordinal)
                .Replace("refit filter\n", "refit filter\nclean tank\ntest injector\n", StringComparison.Ordinal)),
        },
        ClaimKind.Ordered,
        "step 12 puts a filter of the flow circuit back before step 13 is done there: the new filter would catch what that sheds");

    // Same family

    [Fact]
    public void Is_refused_for_another_family() => Refused(
        Plan with { Family = Plan.Family with { Id = "other" } },
        ClaimKind.SameFamily,
        "the plan is for other, not for system: its parts and joints are another engine's");

    [Fact]
    public void Is_refused_where_the_family_was_changed() => Refused(
        Plan with { Family = Plan.Family with { Sha256 = "0" } },
        ClaimKind.SameFamily,
        "the description of system has been changed since the plan was made: its parts and joints may not be those planned for");

    private static void Refused(PlanDocument plan, ClaimKind claim, string where) =>
        Assert.Equal(where, PlanVerifier.Verify(plan, Family).Claims.Single(other => other.Kind == claim).Where);

    private static PlanDocument WithPart(string id, Func<PlanPart, PlanPart> change) =>
        Plan with { Parts = [.. Plan.Parts.Select(part => part.Id == id ? change(part) : part)] };

    private static PlanDocument WithLine(string id, Func<PlanExposure, PlanExposure> change) =>
        WithPart(id, part => part with { Exposure = [change(part.Exposure[0])] });

    private static PlanDocument WithStep(int number, Func<PlanStep, PlanStep> change) =>
        Plan with { Steps = [.. Plan.Steps.Select(step => step.Number == number ? change(step) : step)] };

    private static ImmutableArray<PlanStep> Swapped(int one, int other)
    {
        PlanStep first = Plan.Steps[one - 1];
        PlanStep second = Plan.Steps[other - 1];
        return Plan.Steps
            .SetItem(one - 1, second with { Number = first.Number, Start = first.Start, Finish = first.Finish, After = first.After })
            .SetItem(other - 1, first with { Number = second.Number, Start = second.Start, Finish = second.Finish, After = second.After });
    }

    private static PlanPart Part(string id) => new() { Id = id, Name = id, Kind = "part" };
}
