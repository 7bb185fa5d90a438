using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>What a plan may claim where ways part, meet and go round.</summary>
public class Ways_of_debris
{
    [Fact]
    public void May_come_back_to_their_source() => Holds(
        "pump > filter[holds metal 5 abs] > tank > pump", "pump",
        "pump clean; filter clean exposed any pump; tank clean guarded 5 filter");

    [Fact]
    public void May_be_wider_past_a_barrier_than_through_it() => Holds(
        "pump > filter[holds metal 5 abs] > tank; pump >(20)> tank", "pump",
        "pump clean; filter clean exposed any pump; tank clean guarded 20 pump");

    [Fact]
    public void Are_as_wide_as_the_widest_of_two_joints_side_by_side() => Holds(
        "pump >(5)> tank; pump >(20)> tank", "pump",
        "pump clean; tank clean guarded 20 pump");

    [Fact]
    public void May_be_none_at_all() => Holds(
        "pump > filter[holds metal all abs] > tank", "pump",
        "pump clean; filter clean exposed any pump; tank inspect guarded 0 filter");

    [Fact]
    public void May_pass_through_another_source_that_sheds_less() => Holds(
        "pump > valve[sheds metal 10 holds metal 1 abs] > tank", "pump valve",
        "pump clean; valve clean exposed any pump; tank clean exposed any valve");

    [Fact]
    public void Start_from_a_failed_part_with_all_it_sheds_and_from_a_find_with_any_size() => Holds(
        "pump[sheds metal 50] > filter[holds metal 60 abs] > tank", "pump",
        "pump clean exposed any; filter clean exposed any pump; tank clean exposed 60 filter",
        plan => plan with { Findings = [new PlanFinding { Part = "pump", Debris = "metal", Found = true }] });

    [Fact]
    public void Start_from_a_find_where_nothing_has_failed() => Holds(
        "pump > tank", "",
        "tank clean",
        plan => plan with { Findings = [new PlanFinding { Part = "tank", Debris = "metal", Found = true }] });

    [Fact]
    public void Are_exposed_where_a_finer_source_passes_what_holds_a_coarser_one_back() => Holds(
        "pump > filter[holds metal 60 abs] > tank; valve[sheds metal 20] > filter", "pump valve",
        "pump clean; filter clean exposed any pump; tank clean exposed 60 filter; valve clean exposed 20");

    [Fact]
    public void Hold_no_soft_debris_at_a_passage() => Holds(
        "pump >(5)> tank[passage=5] > pipe", "pump",
        "pump clean; tank clean exposed any pump; pipe clean exposed any tank",
        InRubber);

    [Fact]
    public void Hold_no_debris_without_size_at_a_passage_or_by_a_size_that_sheds() => Holds(
        "pump[sheds water] >(5)> tank[holds metal 5 abs] > sump[holds water all abs] > pipe", "pump",
        "pump clean; tank clean exposed any pump; sump clean exposed any tank; pipe clean guarded 0 sump",
        InWater);

    [Fact]
    public void Are_as_narrow_as_the_narrower_of_a_part_and_the_joint_that_leaves_it() => Holds(
        "pump > filter[holds metal 30 abs passage=20] >(5)> tank > screen[holds metal 2 abs] >(4)> pipe", "pump",
        "pump clean; filter clean exposed any pump; tank clean guarded 5 filter; screen clean guarded 5 tank; pipe clean guarded 2 screen");

    [Fact]
    public void Start_with_any_amount_where_debris_has_no_size() => Holds(
        "pump[sheds water 5] > tank", "pump",
        "pump clean; tank clean exposed any pump",
        InWater);

    [Fact]
    public void Hold_no_hard_debris_without_size_at_a_passage()
    {
        Family family = CaseReader.System("pump >(5)> tank[passage=5] > pipe");
        PlanDocument plan = In("grit", Plan(family, "pump", "pump clean; tank clean exposed any pump; pipe clean exposed any tank"));

        Assert.True(PlanVerifier.Verify(plan, family, [new Debris("grit", HasSize: false, IsHard: true)]).Holds);
    }

    [Fact]
    public void Go_on_beyond_a_joint_that_another_failure_would_open()
    {
        PlanConditional ring = new("ring", ["sump", "pan"], []);
        const string System = "pump >?ring> sump > pan; ring";
        Holds(System, "pump", "pump clean", plan => plan with { Conditional = [ring] });

        Family family = CaseReader.System(System);
        Assert.Equal(
            "pan is reached too if ring has failed, and the plan does not say so: nobody would look at ring",
            PlanVerifier.Verify(Plan(family, "pump", "pump clean") with { Conditional = [ring with { Parts = ["sump"] }] }, family).Claims[0].Where);
    }

    [Theory]
    [InlineData("nominal")]
    [InlineData("abs bypass")]
    public void Are_not_held_by_what_is_not_relied_on(string rating) => Holds(
        $"pump > filter[holds metal 5 {rating}] > tank", "pump",
        "pump clean; filter clean exposed any pump; tank clean exposed any filter");

    [Fact]
    public void Do_not_go_over_a_joint_of_no_state_that_the_engine_has() => Holds(
        "@states running\npump >/stopped> tank; pump >/running+stopped> pipe", "pump",
        "pump clean; pipe clean exposed any pump");

    [Fact]
    public void Go_over_a_joint_that_the_failure_opens() => Holds(
        "pump >?pump> tank", "pump",
        "pump clean; tank clean exposed any pump");

    // Two parts that each say the debris came through the other.
    [Fact]
    public void Do_not_go_round_in_a_circle()
    {
        Family family = CaseReader.System("pump >(5)> a <> b");
        PlanDocument plan = Plan(family, "pump", "pump clean; a clean guarded 5 pump; b clean guarded 5 a");
        PlanPart a = plan.Parts[1];
        plan = plan with { Parts = plan.Parts.SetItem(1, a with { Exposure = [a.Exposure[0] with { Via = "b" }] }) };

        Assert.Equal(
            "the way of metal to a goes round in a circle and comes from nowhere: its true source would be missed",
            PlanVerifier.Verify(plan, family).Claims[1].Where);
    }

    private static PlanDocument InRubber(PlanDocument plan) => In("rubber", plan);

    private static PlanDocument InWater(PlanDocument plan) => In("water", plan);

    private static PlanDocument In(string debris, PlanDocument plan) => plan with
    {
        Debris = [debris],
        Failed = [.. plan.Failed.Select(failure => failure with { Debris = [debris] })],
        Parts = [.. plan.Parts.Select(part => part with { Exposure = [part.Exposure[0] with { Debris = debris }] })],
    };

    private static void Holds(string system, string failed, string parts, Func<PlanDocument, PlanDocument>? change = null)
    {
        Family family = CaseReader.System(system);
        PlanDocument plan = Plan(family, failed, parts);

        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(change is null ? plan : change(plan), family).Claims.Select(claim => claim.Where));
    }

    // All off, all treated, all back on.
    private static PlanDocument Plan(Family family, string failed, string parts)
    {
        string[][] words = [.. parts.Split(';', StringSplitOptions.TrimEntries).Select(part => part.Split(' '))];
        ImmutableArray<string> steps =
        [
            "safe",
            .. failed.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(part => $"look {part}"),
            .. words.Select(part => $"remove {part[0]}"),
            .. words.OrderBy(part => part[1] == "inspect" ? 0 : 1).Select(part => $"{part[1]} {part[0]}"),
            .. words.Select(part => $"refit {part[0]}"),
            "prove",
        ];
        return BenchPlan.Of(family, failed, parts, string.Join('\n', steps));
    }
}
