using Contam.Families;
using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// The page for the plain launch diesel (common practice, no source, where no manual is named): a scored plunger means that
/// the pump goes out whole, that tank, filter and injectors are looked after, and, as fuel past a plunger runs into the cam box, that the oil is drained and its
/// filter cut. A big end: as of the harbour diesel, without the turbocharger. A torn impeller: as there.
/// </summary>
public sealed class A_creek_diesel
{
    private const string Engine = "creek-diesel-i4";

    /// <summary>NAVEDTRA 14075: plunger and barrel are renewed as a pair. Here they are one part, inside of a pump that is renewed or sent out whole.</summary>
    [Fact]
    public void Has_a_scored_plunger_go_with_its_barrel_and_looks_after_the_oil_too()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "plunger-2", "metal");
        Assert.Equal("replace", plan.TreatmentOf("plunger-2"));
        Assert.Equal("clean, test", plan.TreatmentOf("injector-1"));
        Assert.Equal(Grade.Exposed, plan.GradeOf("fuel-tank"));
        Assert.Equal(Grade.Exposed, plan.GradeOf("pump-cambox"));
        Assert.Equal("inspect, replace", plan.TreatmentOf("oil-filter"));
    }

    /// <summary>The drive end of the cam box is open to the timing case.</summary>
    [Fact]
    public void Has_what_the_cam_box_sheds_in_its_timing_case() =>
        Assert.Equal(Grade.Exposed, PlanOnPaper.Flat(Engine, "pump-cambox", "metal").GradeOf("timing-gears"));

    [Fact]
    public void Comes_apart_like_its_turbocharged_sister()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "rod-bearing-2", "metal");
        plan.ComesOff("cylinder-head", "piston-2", "crankshaft", "main-bearing-5");
        plan.ComesOff("sump", "oil-strainer", "oil-pump", "rod-bearing-2");
        plan.GoesBack("main-bearing-5", "crankshaft", "piston-2", "rod-bearing-2", "oil-pump", "sump");
        Assert.False(plan.Lists("damper"));
    }

    [Fact]
    public void Opens_its_coolers_in_place_for_a_torn_impeller()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "raw-impeller", "rubber");
        Assert.Equal(["oil-cooler-water-side", "heat-exchanger-tubes", "siphon-break"], plan.Looks);
        Assert.False(plan.Orders("oil 15w40"));
    }
}

/// <summary>
/// The page for the generator set: a transfer pump that sheds is looked for in both tanks; a big end in the drain cloth, strainer and filter, and on the way to
/// the shaft the generator's coupling comes off before the flywheel; a turbine wheel as of the harbour diesel. Common practice, no source.
/// </summary>
public sealed class A_generator_diesel
{
    private const string Engine = "genset-diesel-i6";

    [Fact]
    public void Parts_from_its_generator_before_its_flywheel_comes_off()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "rod-bearing-6", "metal");
        plan.ComesOff("drive-coupling", "flywheel", "main-caps", "crankshaft", "main-bearing-7");
        plan.ComesOff("cylinder-head", "piston-6", "crankshaft");
        plan.GoesBack("main-bearing-7", "crankshaft", "main-caps", "flywheel", "drive-coupling");
    }

    [Fact]
    public void Has_what_its_transfer_pump_shed_looked_for_in_both_tanks()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "transfer-pump", "metal");
        Assert.Equal(Grade.Exposed, plan.GradeOf("fuel-tank"));
        Assert.Equal(Grade.Exposed, plan.GradeOf("storage-tank"));
        Assert.False(plan.Lists("sump"));
    }

    [Fact]
    public void Gets_six_of_all_that_stands_by_its_cylinders()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "turbo-turbine", "metal");
        Assert.Equal("replace", plan.TreatmentOf("turbo-bearings"));
        Assert.Equal("replace", plan.TreatmentOf("piston-jet-6"));
        Assert.Equal("replace", plan.TreatmentOf("main-bearing-7"));
    }
}

/// <summary>
/// The page for the tug's vee diesel (common practice, no source): a guide seal that crumbles is looked for under the cam cover, in the drain cloth, on the
/// pick-up strainer and in the filter; nobody pulls pistons for it. A wheel that bursts on one bank: that bank, its balance pipe, and by the one sump the other
/// bank's bearings, by looks. An injection pump: its own bank and the tank; the other bank's filter is absolute.
/// </summary>
public sealed class A_vee_diesel
{
    private const string Engine = "quay-diesel-v8";

    [Fact]
    public void Is_not_stripped_for_a_crumbled_guide_seal_while_strainer_and_filter_are_clean()
    {
        PlanOnPaper plan = PlanOnPaper.WithLooks(Engine, "port-valve-guide-seal-1", "rubber");
        Assert.Equal(["oil-strainer", "oil-filter"], plan.Looks.Take(2));
        Assert.InRange(plan.SureHours, 5, 30);
        Assert.Equal(Grade.Guarded, plan.GradeOf("port-inlet-valve-1"));
    }

    [Fact]
    public void Has_the_other_banks_bearings_reached_by_the_one_sump_where_a_wheel_bursts()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "port-turbo-compressor", "metal");
        Assert.Equal(Grade.Exposed, plan.GradeOf("starboard-rod-bearing-1"));
        Assert.Equal(Grade.Exposed, plan.GradeOf("starboard-turbo-bearings"));
        Assert.Equal(Grade.Guarded, plan.GradeOf("starboard-turbo-compressor"));
    }

    [Fact]
    public void Gives_up_both_banks_before_its_shaft()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "port-rod-bearing-1", "metal");
        plan.ComesOff("port-cylinder-head", "port-piston-1", "crankshaft", "main-bearing-1");
        plan.ComesOff("starboard-cylinder-head", "starboard-piston-4", "crankshaft");
        plan.GoesBack("main-bearing-1", "crankshaft", "starboard-piston-4", "starboard-cylinder-head");
    }
}

/// <summary>
/// The page for the plain vee generator set (common practice, no source): a transfer pump stops at the absolute filter; a left big end takes both banks' shells,
/// as they share shaft and sump; a plunger sheds for all eight injectors and into the oil.
/// </summary>
public sealed class A_plain_vee_generator
{
    private const string Engine = "barge-genset-v8";

    [Fact]
    public void Gets_shells_on_both_banks_where_one_big_end_has_gone()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "left-rod-bearing-3", "metal");
        Assert.Equal("replace", plan.TreatmentOf("right-rod-bearing-2"));
        plan.ComesOff("left-cylinder-head", "left-piston-3", "crankshaft", "main-bearing-3");
        plan.ComesOff("drive-coupling", "flywheel", "main-caps");
    }

    [Fact]
    public void Has_all_eight_injectors_tested_where_one_plunger_has_shed()
    {
        PlanOnPaper plan = PlanOnPaper.Flat(Engine, "plunger-5", "metal");
        Assert.All(Enumerable.Range(1, 8), n => Assert.Equal("clean, test", plan.TreatmentOf($"injector-{n}")));
        Assert.Equal(Grade.Exposed, plan.GradeOf("sump"));
    }

    [Fact]
    public void Is_guarded_from_its_transfer_pump_by_the_fuel_filter() =>
        Assert.Equal(Grade.Guarded, PlanOnPaper.Flat(Engine, "transfer-pump", "metal").GradeOf("injection-pump"));
}
