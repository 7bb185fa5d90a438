using Contam.Families;
using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// What somebody who strips such engines does (common practice, no source, where no manual is named).
/// <list type="bullet">
/// <item><b>The compressor wheel has burst.</b> Intake hose off, count the blades. Charge hose off: metal there, on to the manifold; none, the air side ends
/// there. Drain the oil through a cloth, look at the pick-up strainer, cut the filter: a wheel that lets go beats its bearings. Air pipes, elbow, oil feed and
/// return off, then the turbocharger as one; it is taken apart on the bench. Cartridge, feed and return new; charge cooler new, air filter new.</item>
/// <item><b>A main bearing has gone.</b> Head, sump, strainer and pump off; rod caps and pistons out; damper, cover, gears from the front; coupling, flywheel
/// from the rear; caps, shaft, upper shells. Back the other way round. All shells new, the shaft measured.</item>
/// <item><b>The injection pump has shed.</b> The return hose says whether the tank has it, the rail whether the injectors' pipes have it. Pump new, delivery pipe
/// new; rail clean or, with metal in it, washed with new pipes and a new pressure valve; injectors to the workshop. The oil is smelt for fuel.</item>
/// </list>
/// </summary>
public sealed class A_harbour_diesel
{
    private const string Engine = "harbour-diesel-i4";

    /// <summary>TM 9-2815-255-24, para 3-13.1 e–g: oil drain line, mounting bolts, turbocharger; the feed is not on the page read.</summary>
    [Fact]
    public void Gives_up_its_turbocharger_as_one_and_is_parted_from_it_on_the_bench()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "turbo-compressor", "metal");
        plan.ComesOff("turbo-oil-return", "turbo-turbine", "turbo-compressor");
        plan.ComesOff("exhaust-elbow", "turbo-turbine", "turbo-bearings");
        plan.ComesOff("intake-hose", "turbo-turbine", "exhaust-manifold");
        plan.GoesBack("turbo-bearings", "turbo-turbine", "turbo-oil-return");
    }

    [Theory]
    [InlineData("turbo-compressor")]
    [InlineData("turbo-turbine")]
    [InlineData("turbo-bearings")]
    public void Gets_a_new_cartridge_with_feed_and_return_where_its_turbocharger_shed(string failed)
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, failed, "metal");
        Assert.All(new[] { "turbo-bearings", "turbo-compressor", "turbo-turbine", "turbo-oil-feed", "turbo-oil-return" }, part => Assert.EndsWith("replace", plan.TreatmentOf(part), StringComparison.Ordinal));
        Assert.True(plan.Orders("turbo oil feed"));
        Assert.True(plan.Orders("turbo oil return"));
    }

    [Fact]
    public void Is_looked_at_from_the_charge_hose_on_and_in_its_oil_before_anything_more_is_opened()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "turbo-compressor", "metal");
        Assert.Equal(["charge-hose", "intake-manifold", "oil-strainer", "oil-filter"], plan.Looks.Take(4));
        Assert.InRange(plan.SureHours, 10, 26);
    }

    /// <summary>A wheel that bursts beats its own bearings out, and theirs is the engine's oil.</summary>
    [Theory]
    [InlineData("turbo-compressor")]
    [InlineData("turbo-turbine")]
    public void Has_metal_in_its_oil_where_a_wheel_has_burst(string wheel)
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, wheel, "metal");
        Assert.Equal(Grade.Exposed, plan.GradeOf("turbo-bearings"));
        Assert.Equal(Grade.Exposed, plan.GradeOf("sump"));
        Assert.Equal("replace", plan.TreatmentOf("main-bearing-2"));
    }

    /// <summary>Bearings that are gone let both wheels rub, and what is rubbed off goes with the air.</summary>
    [Fact]
    public void Has_metal_in_its_air_where_the_turbochargers_bearings_have_gone() =>
        Assert.Equal(Grade.Exposed, PlanOnPaper.Flat(Engine, "turbo-bearings", "metal").GradeOf("charge-hose"));

    [Fact]
    public void Comes_apart_from_the_head_down_and_from_both_ends_of_the_shaft()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "main-bearing-3", "metal");
        plan.ComesOff("cylinder-head", "piston-1", "crankshaft");
        plan.ComesOff("sump", "oil-strainer", "oil-pump", "main-caps", "crankshaft", "main-bearing-1");
        plan.ComesOff("rod-bearing-1", "piston-1");
        plan.ComesOff("damper", "timing-cover", "timing-gears", "main-caps");
        plan.ComesOff("drive-coupling", "flywheel", "main-caps");
        plan.GoesBack("main-bearing-1", "crankshaft", "main-caps", "flywheel", "drive-coupling");
        plan.GoesBack("crankshaft", "timing-gears", "timing-cover", "damper");
        plan.GoesBack("ring-pack-1", "piston-1", "rod-bearing-1", "oil-pump", "oil-strainer", "sump");
        plan.GoesBack("crankshaft", "piston-1", "cylinder-head", "camshaft");
    }

    /// <summary>TM 9-2815-205-24, WP 0097: a new or reground crankshaft takes new main and rod shells throughout.</summary>
    [Fact]
    public void Gets_all_shells_new_with_its_crankshaft()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "crankshaft", "metal");
        Assert.Equal("replace", plan.TreatmentOf("crankshaft"));
        Assert.All(Enumerable.Range(1, 5), n => Assert.Equal("replace", plan.TreatmentOf($"main-bearing-{n}")));
        Assert.All(Enumerable.Range(1, 4), n => Assert.Equal("replace", plan.TreatmentOf($"rod-bearing-{n}")));
    }

    [Fact]
    public void Tests_its_head_with_the_valves_in_and_fits_it_after()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "turbo-compressor", "metal");
        Assert.True(plan.StepOf(StepAction.Refit, "inlet-valve-1") < plan.StepOf(StepAction.Test, "cylinder-head"));
        Assert.True(plan.StepOf(StepAction.Test, "cylinder-head") < plan.StepOf(StepAction.Refit, "cylinder-head"));
    }

    [Fact]
    public void Gets_pipes_and_rail_valve_new_where_the_injection_pump_shed_and_its_rail_holds_metal()
    {
        PlanOnPaper flat = PlanOnPaper.Flat(Engine, "injection-pump", "metal");
        Assert.All(new[] { "injection-pump", "delivery-pipe", "injector-pipe-2", "rail-pressure-valve" }, part => Assert.Equal("replace", flat.TreatmentOf(part)));
        Assert.Equal("clean, test", flat.TreatmentOf("injector-3"));
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "injection-pump", "metal");
        Assert.Equal(["return-hose", "water-separator", "rail"], plan.Looks);
        Assert.False(plan.Lists("sump"));
        Assert.True(plan.AsksAlsoFor("pump-drive-seal"));
    }

    /// <summary>What breaks up in the chamber strikes the tips of the injectors, and does not get past their needles into the fuel.</summary>
    [Theory]
    [InlineData("inlet-valve-2")]
    [InlineData("piston-2")]
    public void Has_its_injector_tips_struck_by_what_breaks_in_the_chamber(string failed)
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, failed, "metal");
        Assert.Equal("inspect, clean, test", plan.TreatmentOf("injector-tip-2"));
        Assert.False(plan.Lists("return-rail"));
        Assert.True(plan.AsksAlsoFor("injector-2"));
    }

    /// <summary>TM 55-1930-209-14&amp;P-19, Table 9-3: the strainer, the pipes, then the tubes rodded. The water is followed cooler by cooler, covers off in place.</summary>
    [Fact]
    public void Has_a_torn_impeller_followed_downstream_cooler_by_cooler()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "raw-impeller", "rubber");
        Assert.Equal(["charge-cooler-water-side", "oil-cooler-water-side", "heat-exchanger-tubes", "siphon-break"], plan.Looks);
        Assert.False(plan.Does(StepAction.Remove, "raw-pump"));
        Assert.False(plan.Orders("oil 15w40"));
        Assert.False(plan.Orders("coolant"));
        Assert.InRange(plan.SureHours, 3, 7);
    }

    /// <summary>A blocked weep hole leads the sea along the pump's shaft into the timing case.</summary>
    [Fact]
    public void Has_the_sea_in_its_oil_where_the_raw_water_pumps_seal_has_gone()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "raw-pump-shaft-seal", "water");
        Assert.Equal(Grade.Exposed, plan.GradeOf("timing-gears"));
        Assert.Equal(Grade.Exposed, plan.GradeOf("main-bearing-1"));
    }

    /// <summary>A scrap of the flap goes down the exhaust with the water: eight parts, not a strip of the engine. A valve that has stuck is asked after.</summary>
    [Fact]
    public void Has_a_scrap_of_the_siphon_flap_looked_for_in_its_exhaust_alone()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "siphon-flap", "rubber");
        Assert.Equal(["siphon-break", "exhaust-elbow", "exhaust-hose", "silencer"], new[] { "siphon-break", "exhaust-elbow", "exhaust-hose", "silencer" }.Where(plan.Lists));
        Assert.False(plan.Lists("turbo-turbine"));
        Assert.True(plan.AsksAlsoFor("siphon-break"));
        Assert.Equal(Grade.Exposed, PlanOnPaper.Flat(Engine, "siphon-break", "water").GradeOf("cylinder-1"));
    }

    /// <summary>After the first hours one looks again where debris was found, unless a bath, a filter or a plug of that circuit tells it with nothing off.</summary>
    [Fact]
    public void Is_looked_at_again_where_debris_was_found()
    {
        PlanDocument plan = MastersPage.Shipped("harbour-diesel-i4", "injection-pump", "metal", HowFar.MostLooks).Plan;
        PlanStep[] again = [.. plan.Steps.Where(step => step.Frame == FrameNames.SecondLook)];
        Assert.Contains(again, step => step.OnlyIf.IsEmpty && step.Parts.Contains("injection-pump") && step.Parts.Contains("injector-1"));
        Assert.Contains(again, step => !step.OnlyIf.IsEmpty && step.Parts.Contains("water-separator"));
    }
}
