using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;
using static Contam.TreatmentKind;

namespace Contam.References.Instructions;

/// <summary>
/// The plans of shipped families against published instructions of what is to be done after a failure. Every difference is either mended in the
/// family or the house standard, or said here with its reason; a reason that is no longer needed is an error too.
/// </summary>
public sealed class After_a_failure
{
    /// <summary>TM 55-2840-251-23, para 1-78, p. 1-113, caution: metal made by the engine is in the oil, "residual matter remaining in propeller and airframe oil systems".</summary>
    [Fact]
    public void Of_an_aircraft_engine_that_puts_metal_into_its_oil() => Agrees(
        "flat-six-dry-sump", "rod-bearing-3", "metal",
        new Instruction("TM 55-2840-251-23, para 1-78", "tank-outlet-hose, oil-return-hose, cooler-tank-hose, breather-line", Flush),
        new Instruction("TM 55-2840-251-23, para 1-78", "oil-cooler", Replace),
        new Instruction("TM 55-2840-251-23, para 1-78", "oil-tank", Flush)
        {
            Ours = "inspect, clean",
            Because = "the tank is taken off and wiped, as AC 65-12A wants; what lies behind baffles is lifted by no flush",
        },
        new Instruction("TM 55-2840-251-23, para 1-78", "propeller-hub", Flush)
        {
            Ours = "clean, test",
            Because = "it goes to the propeller workshop, is opened and cleaned; it is a dead end that a flush does not sweep",
        },
        // Its line "governors: return to depot": ours is renewed, and the old one is what the workshop gets.
        new Instruction("TM 55-2840-251-23, para 1-78", "propeller-governor", Replace));

    /// <summary>AC 65-12A, engine removal, and FAA-H-8083-32 ch. 8, "Inspection and Replacement of Powerplant External Units and Systems": an engine removed for internal failure. From memory.</summary>
    [Fact]
    public void Of_an_aircraft_engine_that_is_removed_for_internal_failure()
    {
        Agrees(
            "flat-six-dry-sump", "main-bearing-2", "metal",
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "oil-tank", Clean),
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "oil-separator", Inspect),
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "oil-separator", Clean) { Ours = "inspect, replace", Because = "its element is renewed, as a filter's is" },
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "vacuum-line", Inspect),
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "vacuum-line", Clean) { Ours = "inspect, flush", Because = "a hose is cleaned by flushing it" },
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "oil-cooler, propeller-governor", Replace),
            new Instruction("FAA-H-8083-32 ch. 8 (from memory)", "temperature-regulator", Clean, Test));

        // "Remove and send for overhaul".
        PlanDocument plan = PlanOf("flat-six-dry-sump", "main-bearing-2", "metal");
        Assert.Contains(plan.Steps, step => step.Action == StepAction.SendOut && step.Part == "temperature-regulator");
    }

    /// <summary>14 CFR 43, appendix D(d), from memory: the engine is inspected "for metal particles or foreign matter on screens and sump drain plugs".</summary>
    [Fact]
    public void With_metal_on_screens_and_sump_plugs() => Agrees(
        "flat-six-dry-sump", "rod-bearing-3", "metal",
        new Instruction("14 CFR 43 app. D(d) (from memory)", "oil-screen, scavenge-screen, tank-outlet-screen, governor-screen, sump-plug", Inspect));

    /// <summary>TM 1-1500-204-23-1, "Significance of Metal Particles": "Drain oil system, flush oil tank, and clean oil screen" after a piston that sheds.</summary>
    [Fact]
    public void Of_a_piston() => Agrees(
        "flat-six-dry-sump", "piston-4", "metal",
        new Instruction("TM 1-1500-204-23-1", "oil-tank", Flush) { Ours = "inspect, clean", Because = "it is opened and wiped, which is more" },
        new Instruction("TM 1-1500-204-23-1", "oil-screen", Clean) { Ours = "inspect, replace", Because = "its element is looked at and renewed" });

    /// <summary>
    /// TM 5-3810-295-34 and TM 5-3810-232-34, transmission after failure: drain it all, clean every line, replace the filter elements, back-flush the
    /// cooler, sump pan and screen cleaned with a new gasket, clutch assemblies out, cleaned and checked, the control cover off and checked.
    /// </summary>
    [Fact]
    public void Of_a_reverse_gear_with_a_burnt_clutch() => Agrees(
        "harbour-reverse-gear", "forward-clutch", "metal",
        new Instruction("TM 5-3810-295-34 step 2", "cooler-feed-hose, cooler-return-hose", Flush),
        new Instruction("TM 5-3810-295-34 step 3", "gear-filter", Replace),
        new Instruction("TM 5-3810-295-34 step 4", "gear-oil-cooler", Flush)
        {
            Ours = "replace",
            Because = "TM 55-2840-251-23 renews it, and a bundle of tubes cannot be shown to be clean; the harder of the two goes",
        },
        new Instruction("TM 5-3810-232-34 step 5", "gear-sump, suction-strainer", Clean),
        new Instruction("TM 5-3810-232-34 step 5", "reverse-clutch", Inspect, Clean),
        new Instruction("TM 5-3810-232-34 step 5", "control-valve", Inspect, Clean));

    /// <summary>
    /// Navy hydraulic decontamination (NAVAIR 01-1A-17 as taught in NAVEDTRA 14018): severe particulate from a major component failure is flushed; dead
    /// ends that a normal flow does not sweep are partly taken apart, drained and flushed; pump cases apart from the rest; new elements first.
    /// </summary>
    [Fact]
    public void Of_a_hydraulic_pump() => Agrees(
        "stern-trim-unit", "trim-pump", "metal",
        new Instruction("NAVEDTRA 14018, flushing", "up-hose, down-hose, valve-block", Flush),
        new Instruction("NAVEDTRA 14018, dead ends", "tilt-cylinder, trim-ram-1..2", Clean),
        new Instruction("NAVEDTRA 14018, elements", "pick-up-screen-1..2", Replace),
        new Instruction("NAVEDTRA 14018, reservoir", "reservoir", Clean));

    /// <summary>
    /// TM 55-1930-209-14&amp;P-19, Table 9-3, p. 9-44: strainer cleaned, the impeller replaced, "no pieces of the impeller (if broken) have passed into the
    /// connecting pipes (i.e., inlet and outlet)", the exchanger's tubes rodded through. Its sea cock is for a blocked inlet and lies before the strainer.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("quay-diesel-v8")]
    [InlineData("genset-diesel-i6")]
    [InlineData("creek-diesel-i4")]
    [InlineData("barge-genset-v8")]
    [InlineData("sterndrive-petrol-v6")]
    public void Of_a_raw_water_impeller(string family) => Agrees(
        family, "raw-impeller", "rubber",
        new Instruction("TM 55-1930-209-14&P-19, Table 9-3 (c)", "raw-impeller", Replace),
        new Instruction("TM 55-1930-209-14&P-19, Table 9-3 (b)", "raw-strainer", Clean),
        new Instruction("TM 55-1930-209-14&P-19, Table 9-3 (c)", "raw-suction-hose, raw-delivery-hose", Inspect),
        new Instruction("TM 55-1930-209-14&P-19, Table 9-3 (d)", "heat-exchanger-tubes, oil-cooler-water-side", Clean));

    /// <summary>
    /// TM 5-3895-359-14&amp;P, "Contaminated Engine", of a cracked oil cooler: coolant gets into the lubricating system when the engine is stopped, and both
    /// systems are flushed. What is held here is the oil side, as water is the debris; oil in the water is washed out with it.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("creek-diesel-i4")]
    public void Of_an_oil_cooler_that_lets_water_in(string family) => Agrees(
        family, "oil-cooler", "water",
        new Instruction("TM 5-3895-359-14&P, Contaminated Engine", "main-gallery, crankcase", Flush),
        new Instruction("TM 5-3895-359-14&P, Contaminated Engine", "sump", Flush) { Ours = "inspect, clean", Because = "the pan is off, and is washed by hand" },
        new Instruction("TM 5-3895-359-14&P, Contaminated Engine", "oil-filter", Replace),
        new Instruction("TM 5-3895-359-14&P, Contaminated Engine", "main-bearing-1..5, rod-bearing-1..4, camshaft", Inspect));

    /// <summary>
    /// TM 9-2815-260-24 p. 4-38 and TM 5-3805-280-24-2 p. 13-362, of something that went through the compressor wheel: inspect inlet, wheel, outlet,
    /// turbine; strip and inspect the intake system, and inspect the engine for internal damage.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("genset-diesel-i6")]
    public void Of_a_turbocharger_wheel(string family) => Agrees(
        family, "turbo-compressor", "metal",
        new Instruction("TM 9-2815-260-24, p. 4-38", "intake-hose, charge-pipe", Inspect),
        new Instruction("TM 9-2815-260-24, p. 4-38", "turbo-turbine", Inspect)
        {
            Ours = "replace",
            Because = "the wheel's pieces went through the engine and hit it at speed; a blade that is nicked cannot be put right",
        },
        new Instruction("TM 5-3805-280-24-2, p. 13-362", "charge-hose, intake-manifold", Inspect),
        new Instruction("TM 5-3805-280-24-2, p. 13-362", "inlet-valve-1..4, cylinder-1..4, exhaust-valve-1..4", Inspect),
        // No government text was found that names the charge cooler; that it holds what the wheel shed is common practice, no source.
        new Instruction("common practice, no source", "charge-cooler", Replace));

    /// <summary>NTSB CHI98IA095: bronze of a worn fuel pump lay in the filter and in the nozzle jets. The way pump, filter, control, nozzle is what is held.</summary>
    [Fact]
    public void Of_a_fuel_pump_that_wears_away() => Agrees(
        "flat-six-dry-sump", "fuel-pump", "metal",
        new Instruction("NTSB CHI98IA095", "fuel-hose, inlet-screen", Inspect),
        new Instruction("NTSB CHI98IA095", "fuel-nozzle-1..6", Inspect),
        // The screen is absolute, but 74 µm harm what runs with 10 µm.
        new Instruction("NTSB CHI98IA095", "fuel-control", Replace));

    /// <summary>Common practice, no source: an air compressor that sheds metal. Whatever the first look at the reed plate shows, all of this is on the list.</summary>
    [Fact]
    public void Of_an_air_compressor() => Agrees(
        "estuary-v6-outboard", "compressor", "metal",
        new Instruction("common practice, no source", "compressor, oil-return-screen-1..2", Replace),
        new Instruction("common practice, no source", "top-main, main-bearing-1..3", Replace),
        new Instruction("common practice, no source", "port-air-rail, starboard-air-rail", Clean),
        new Instruction("common practice, no source", "port-air-injector-1..3, starboard-air-injector-1..3, port-fuel-injector-1..3, starboard-fuel-injector-1..3", Clean, Test),
        new Instruction("common practice, no source", "air-regulator, fuel-regulator", Replace),
        new Instruction("common practice, no source", "tracker-diaphragm", Replace));

    /// <summary>Common practice, no source: a shredded compressor belt. Nothing filters the intake.</summary>
    [Fact]
    public void Of_a_belt_that_shreds() => Agrees(
        "estuary-v6-outboard", "compressor-belt", "rubber",
        new Instruction("common practice, no source", "compressor-belt", Replace),
        new Instruction("common practice, no source", "air-silencer, intake-manifold", Inspect, Clean),
        // Its bore and its valves.
        new Instruction("common practice, no source", "compressor", Clean, Test),
        new Instruction("common practice, no source", "port-air-rail, starboard-air-rail", Clean)
        {
            Ours = "inspect, flush",
            Because = "rubber leaves a straight bore with a flush, and the look shows whether it has; splinters would be brushed out",
        });

    /// <summary>Common practice, no source: single-use rings are renewed wherever something was opened. Whatever is refitted gets its family's seals, and they are ordered.</summary>
    [Theory]
    [InlineData("estuary-v6-outboard", "compressor", "metal")]
    [InlineData("harbour-diesel-i4", "injection-pump", "metal")]
    [InlineData("harbour-reverse-gear", "forward-clutch", "metal")]
    [InlineData("flat-six-dry-sump", "rod-bearing-3", "metal")]
    public void With_new_rings_wherever_something_was_opened(string familyId, string failed, string debris)
    {
        Family family = FamilyOf(familyId);
        PlanDocument plan = PlanOf(familyId, failed, debris);
        PlanStep[] refits = [.. plan.Steps.Where(step => step.Action == StepAction.Refit)];

        Assert.NotEmpty(refits);
        string[] due = [.. refits.SelectMany(step => step.Parts.IsEmpty ? [step.Part!] : step.Parts.AsEnumerable()).SelectMany(part => family[new PartId(part)].Seals).Order(StringComparer.Ordinal)];
        Assert.Equal(due, refits.SelectMany(step => step.Seals).Order(StringComparer.Ordinal));
        foreach (IGrouping<string, string> seal in due.GroupBy(one => one, StringComparer.Ordinal))
            Assert.Contains(plan.Order, line => line.Item.Replace(' ', '-').Equals(seal.Key, StringComparison.OrdinalIgnoreCase) && line.Quantity >= seal.Count());
    }

    /// <summary>The judge itself: a plan that leaves a part out, treats it less, or does what was explained away, is told.</summary>
    [Fact]
    public void Can_be_found_wanting()
    {
        PlanDocument plan = PlanOf("flat-six-dry-sump", "rod-bearing-3", "metal");
        PlanDocument shorter = plan with { Parts = [.. plan.Parts.Where(part => part.Id != "propeller-hub")] };
        PlanDocument milder = plan with { Parts = [.. plan.Parts.Select(part => part.Id == "oil-cooler" ? part with { Treatment = [Inspect] } : part)] };

        Assert.Equal(["x: propeller-hub is not on the list"], new Instruction("x", "propeller-hub", Clean).Against(shorter));
        Assert.Equal(["x: oil-cooler is to be Replace, and the plan says inspect"], new Instruction("x", "oil-cooler", Replace).Against(milder));
        Assert.Equal(["x: oil-cooler gets what is wanted, so nothing is left to explain"], new Instruction("x", "oil-cooler", Replace) { Ours = "replace", Because = "y" }.Against(plan));
        Assert.Equal(["x: oil-tank gets inspect, clean, not clean as is explained here"], new Instruction("x", "oil-tank", Flush) { Ours = "clean", Because = "y" }.Against(plan));
    }

    private static void Agrees(string family, string failed, string debris, params Instruction[] instructions)
    {
        PlanDocument plan = PlanOf(family, failed, debris);
        Assert.Equal([], instructions.SelectMany(one => one.Against(plan)));
        Assert.All(instructions, one => Assert.Equal(one.Ours.Length > 0, one.Because.Length > 0));
    }

    private static Family FamilyOf(string id) =>
        FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{id}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;

    private static PlanDocument PlanOf(string family, string failed, string debris)
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        return Planner.Plan(new PlanRequest(FamilyOf(family), standard, [new PartId(failed)], [standard.CatalogueOf().FindDebris(debris)!]));
    }
}
