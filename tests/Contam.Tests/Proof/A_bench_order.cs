using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>What the judges say where the order of a bench is broken on purpose.</summary>
public class A_bench_order
{
    // A hose below a tank, and a pump with two gears on their shafts.
    private static readonly Family Family = Changed(
        CaseReader.System("tank[inplace] > hose > pump > case; driver; follower"),
        part => part.Id.Value switch
        {
            "tank" => part with { Kind = part.Kind with { IsReservoir = true } },
            "pump" => part with { StandsOn = [new PartId("case")] },
            "driver" => part with { RidesOn = new PartId("pump"), Together = [new PartId("driver"), new PartId("follower")] },
            "follower" => part with { RidesOn = new PartId("pump"), Together = [new PartId("driver"), new PartId("follower")] },
            _ => part,
        });

    private const string Steps = """
        safe drains=tank
        look hose
        remove hose
        remove pump
        remove driver
        remove follower
        inspect pump
        clean hose
        replace driver
        replace follower
        clean pump
        refit driver
        refit follower
        refit pump
        refit hose
        prove
        """;

    [Fact]
    public void Holds() => Check(Steps, null);

    [Fact]
    public void Is_refused_where_a_part_is_looked_at_after_it_was_cleaned() => Check(
        Steps.Replace("inspect pump\n", "", StringComparison.Ordinal).Replace("clean pump\n", "clean pump\ninspect pump\n", StringComparison.Ordinal),
        "step 11: pump is looked at for debris after it was cleaned, flushed or renewed: what it had to show is gone");

    [Fact]
    public void Is_refused_where_a_reservoir_is_drained_after_its_hose_is_off() => Check(
        Steps.Replace("safe drains=tank", "safe", StringComparison.Ordinal).Replace("remove hose", "remove hose drains=tank", StringComparison.Ordinal),
        "step 3 takes hose off before tank of the flow circuit is drained: what stands there would run out");

    [Fact]
    public void Is_refused_where_a_reservoir_is_never_drained() => Check(
        Steps.Replace(" drains=tank", "", StringComparison.Ordinal),
        "step 3 takes hose off before tank of the flow circuit is drained: what stands there would run out");

    [Fact]
    public void Is_refused_where_a_rider_is_built_up_after_its_carrier_is_on() => Check(
        Steps.Replace("refit follower\nrefit pump", "refit pump\nrefit follower", StringComparison.Ordinal),
        "step 13: pump is put back before follower, which rides on it, is built up");

    [Fact]
    public void Is_refused_where_a_rider_comes_off_what_is_still_on() => Check(
        Steps.Replace("remove pump\nremove driver", "remove driver\nremove pump", StringComparison.Ordinal),
        "step 4: driver is taken off pump, which it rides on, while that is on");

    [Fact]
    public void Is_refused_where_a_part_is_built_onto_a_dirty_one() => Check(
        Steps.Replace("clean pump\nrefit driver\nrefit follower\n", "refit driver\nrefit follower\nclean pump\n", StringComparison.Ordinal),
        "step 11: driver is built onto pump, which is still dirty");

    [Fact]
    public void Is_refused_where_what_a_part_stands_on_goes_first_off() => Check(
        Steps.Replace("remove hose\n", "remove hose\nremove case\n", StringComparison.Ordinal).Replace("refit pump\n", "refit case\nrefit pump\n", StringComparison.Ordinal),
        "step 4: case is taken off while pump, which stands on it, is on");

    [Fact]
    public void Is_refused_where_a_part_goes_on_before_what_it_stands_on() => Check(
        Steps.Replace("remove follower\n", "remove follower\nremove case\n", StringComparison.Ordinal).Replace("refit pump\n", "refit pump\nrefit case\n", StringComparison.Ordinal),
        "step 15: pump is put back before case, which it stands on, is on");

    [Fact]
    public void Is_refused_where_a_set_is_renewed_by_half() => Check(
        Steps.Replace("replace follower\n", "clean follower\n", StringComparison.Ordinal),
        "driver is renewed without follower, with which it makes a set: new would run against old",
        ClaimKind.Treated,
        "driver replace; follower clean");

    [Fact]
    public void Is_refused_where_phases_come_in_turns() => Check(
        Steps.Replace("clean hose\n", "", StringComparison.Ordinal).Replace("refit driver\n", "refit driver\nclean hose\n", StringComparison.Ordinal),
        "step 12 goes back to an earlier phase after step 11: the bench would work the phases in turns");

    [Fact]
    public void Is_refused_where_something_is_tried_that_was_never_open() => Check(
        Steps.Replace("prove", "prove tank", StringComparison.Ordinal),
        "step 16 tries tank, which this plan never opens: time for nothing");

    [Fact]
    public void Holds_where_what_stands_on_a_part_in_its_fluid_opened_it() => Check(Steps.Replace("prove", "prove case", StringComparison.Ordinal), null);

    [Fact]
    public void Is_refused_where_a_circuit_is_opened_that_nobody_made_safe() => Check(
        Steps.Replace("safe drains=tank", "safe circuit=other drains=tank", StringComparison.Ordinal),
        "hose comes off, but no step makes the flow circuit safe: it would be opened under pressure or full");

    [Fact]
    public void Is_refused_where_a_clean_part_that_is_renewed_is_measured() => Check(
        Steps.Replace("clean pump\n", "clean pump\nmeasure driver\n", StringComparison.Ordinal),
        "step 12 treats driver in a way that its treatment does not ask for: its list and its steps tell two things",
        ClaimKind.Treated);

    [Fact]
    public void Is_refused_where_a_circuit_is_emptied_that_nothing_opens()
    {
        Family family = CaseReader.System("cooler[inplace look=good] > pan; other: x > y");
        family = Changed(family, part => part.Inspect is null ? part : part with { Inspect = part.Inspect with { Access = [] } });
        PlanDocument plan = BenchPlan.Of(family, "cooler", "cooler inspect; pan inspect exposed any cooler", "safe; look cooler; inspect cooler; inspect pan; prove");
        PlanDocument more = BenchPlan.Of(family, "cooler", "cooler inspect; pan inspect exposed any cooler", "safe; safe circuit=other; look cooler; inspect cooler; inspect pan; prove");

        Assert.Null(Where(plan, family, ClaimKind.Ordered));
        Assert.Equal("step 2 makes the other circuit safe, which nothing in this plan opens: it would be emptied for nothing", Where(more, family, ClaimKind.Ordered));
    }

    private static void Check(string steps, string? where, ClaimKind claim = ClaimKind.Ordered, string set = "driver replace; follower replace")
    {
        PlanDocument plan = BenchPlan.Of(Family, "hose", "hose clean; pump inspect+clean exposed any hose; case - cleared any pump; " + set, steps);
        Assert.Equal(where, Where(plan, Family, claim));
    }

    private static string? Where(PlanDocument plan, Family family, ClaimKind claim) => PlanVerifier.Verify(plan, family).Claims.Single(one => one.Kind == claim).Where;

    private static Family Changed(Family family, Func<Part, Part> change) => SystemBuilder.Build(family.Parts.Select(change), family.Joints);
}
