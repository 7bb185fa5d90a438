using Contam.Families;
using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// The page for the opposed six (common practice, no source, where none is named). A big end: drain the sump through a cloth,
/// look at screens and tank hose; propeller, governor and accessories off, cylinders, pistons, then the case is split, the shaft lifted out with its rods and the
/// rods parted from it on the bench; back the other way round: rods on the shaft, shaft in its shells, case closed, pistons on their pins, cylinders over them.
/// Cooler renewed, governor and propeller to their workshops. A piston: its cylinder off, and the oil side looked after. A fuel pump: screens, control, nozzles.
/// </summary>
public sealed class An_aircraft_engine
{
    private const string Engine = "flat-six-dry-sump";

    [Fact]
    public void Gives_up_propeller_and_accessories_then_its_cylinders_then_its_shaft()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "rod-bearing-3", "metal");
        plan.ComesOff("propeller-hub", "crankcase", "crankshaft", "rod-bearing-3");
        plan.ComesOff("vacuum-pump", "accessory-case", "crankcase");
        plan.ComesOff("cylinder-3", "piston-3", "crankcase", "crankshaft", "main-bearing-1");
        plan.ComesOff("piston-3", "ring-pack-3");
    }

    [Fact]
    public void Is_built_up_from_the_shaft_outwards()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "rod-bearing-3", "metal");
        plan.GoesBack("rod-bearing-3", "crankshaft", "crankcase", "piston-3", "cylinder-3", "propeller-hub");
        plan.GoesBack("main-bearing-1", "crankshaft");
        plan.GoesBack("ring-pack-3", "piston-3");
        plan.GoesBack("crankcase", "accessory-case", "vacuum-pump");
    }

    /// <summary>TM 55-2840-251-23, p. 1-113, caution: the oil cooler is replaced; governors and propeller are seen to.</summary>
    [Fact]
    public void Gets_a_new_cooler_and_sends_propeller_and_crankshaft_out()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "rod-bearing-3", "metal");
        Assert.Equal("replace", plan.TreatmentOf("oil-cooler"));
        Assert.True(plan.Does(StepAction.SendOut, "propeller-hub"));
        Assert.True(plan.Does(StepAction.SendOut, "crankshaft"));
    }

    [Fact]
    public void Is_looked_at_where_the_oil_comes_home_first()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "rod-bearing-3", "metal");
        Assert.Equal("dry-sump", plan.Looks[0]);
        Assert.Contains("oil-screen", plan.Looks);
    }

    [Fact]
    public void Has_a_worn_fuel_pump_followed_to_the_nozzles_and_leaves_its_oil_alone()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "boost-pump", "metal");
        Assert.True(plan.Lists("inlet-screen"));
        Assert.True(plan.Lists("fuel-nozzle-6"));
        Assert.False(plan.Lists("dry-sump"));
    }
}

/// <summary>
/// The page for the trim unit (common practice, no source, where no manual is named). A tilt piston that shed: load blocked,
/// gland out, rod drawn straight, the bore wiped: clean, and the rest is left; not, and reservoir and rams are looked at. A pump that shed: all of it, as every line
/// goes both ways. A torn gland: water; drained, wiped, new glands, and refilled.
/// </summary>
public sealed class A_trim_unit
{
    private const string Unit = "stern-trim-unit";

    /// <summary>TM 5-2420-230-24-1: rod straight out, piston off the rod, gland off the rod last. TM 10-3930-638-24, para 3-24d: gland, then piston on the rod, then the rod into the tube.</summary>
    [Fact]
    public void Has_its_gland_off_the_rod_last_and_on_it_first()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Unit, "trim-pump", "metal");
        plan.ComesOff("tilt-rod", "tilt-piston", "tilt-gland");
        plan.GoesBack("tilt-gland", "tilt-piston", "tilt-rod");
        plan.GoesBack("trim-gland-1", "trim-ram-1");
    }

    [Fact]
    public void Has_its_tilt_bore_decide_whether_the_rest_is_opened()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Unit, "tilt-piston", "metal");
        Assert.Equal("tilt-cylinder", plan.Looks[0]);
        Assert.True(plan.StepOf(StepAction.Remove, "tilt-rod") < plan.StepOf(StepAction.Inspect, "tilt-cylinder"));
    }

    [Fact]
    public void Has_its_cylinders_tried_when_there_is_oil_in_them_again()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Unit, "trim-pump", "metal");
        Assert.True(plan.StepOf(StepAction.Test, "tilt-cylinder") > plan.StepOf(StepAction.Refit, "up-hose"));
        Assert.True(plan.StepOf(StepAction.Test, "trim-ram-1") > plan.StepOf(StepAction.Refit, "reservoir-lid"));
    }

    [Fact]
    public void Leaves_nothing_out_where_its_pump_has_shed()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Unit, "trim-pump", "metal");
        Assert.All(new[] { "reservoir", "shuttle", "hand-release", "tilt-rod", "floating-piston", "trim-ram-2", "pick-up-screen-2" }, part => Assert.True(plan.Lists(part)));
    }
}
