using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// Published orders of stripping and building up, each against a shipped family with the same parts. What both have must stand in the same order; what the
/// manual has and the family has not, and what stands otherwise, is said beside it.
/// </summary>
public sealed class Published_orders_of_large_engines
{
    /// <summary>
    /// TM 55-2815-574-24, WP 0061, steps 1–10: main cap bolts, main caps, lower shells from the caps, lift the crankshaft, upper shells. Ours has no stabilizers, and
    /// its shells are one part, which is out when the upper halves are.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4", "main-bearing-2")]
    [InlineData("genset-diesel-i6", "main-bearing-2")]
    [InlineData("barge-genset-v8", "main-bearing-2")]
    public void Of_lifting_out_a_diesels_crankshaft(string family, string failed) =>
        PlanOnPaper.Flat(family, failed, "metal").ComesOff("main-caps", "crankshaft", "main-bearing-2");

    /// <summary>
    /// TM 9-2815-205-24, WP 0097, steps 1–6: upper shells, oil, crankshaft, shells in the caps, caps. TM 10-4320-315-24, para 4-13c: shells in bores and caps,
    /// thrust halves, journals oiled, crankshaft, caps. Ours has its thrust halves with the shells, and its gear goes on when the shaft lies in the block: it is
    /// keyed, where theirs is pinned before.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("creek-diesel-i4")]
    [InlineData("quay-diesel-v8")]
    public void Of_putting_a_diesels_crankshaft_in(string family)
    {
        PlanOnPaper plan = PlanOnPaper.Flat(family, "main-bearing-2", "metal");
        plan.GoesBack("main-bearing-2", "crankshaft", "main-caps");
        plan.GoesBack("crankshaft", "timing-gears");
    }

    /// <summary>
    /// TM 55-1905-217-34, para 3-20a: drain oil and coolant, cylinder head, oil pump, then the ridge, and the piston is brought up and out. Ours cuts no ridge: a bore
    /// is measured and honed by the rule for its kind.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("creek-diesel-i4")]
    public void Of_drawing_a_piston(string family)
    {
        PlanOnPaper plan = PlanOnPaper.Flat(family, "rod-bearing-2", "metal");
        plan.ComesOff("cylinder-head", "piston-2");
        plan.ComesOff("oil-pump", "crankshaft");
        // TM 9-2815-225-34&P, para 3-29, steps 4–10: cap and lower shell, then the piston is pushed out, then its rings.
        plan.ComesOff("rod-bearing-2", "piston-2", "ring-pack-2");
        Assert.True(plan.DrainsFirst("oil", "cylinder-head"));
        Assert.True(plan.DrainsFirst("fresh-water", "cylinder-head"));
    }

    /// <summary>TM 9-2815-255-24, para 3-13.1 e–g: oil drain line, mounting bolts, turbocharger.</summary>
    [Theory]
    [InlineData("harbour-diesel-i4", "")]
    [InlineData("quay-diesel-v8", "port-")]
    public void Of_taking_a_turbocharger_off(string family, string bank) =>
        PlanOnPaper.Flat(family, $"{bank}turbo-bearings", "metal").ComesOff($"{bank}turbo-oil-return", $"{bank}turbo-turbine");

    /// <summary>
    /// TM 10-4320-307-24, para 4-7, steps 7–22: bearings and thrust parts, compressor wheel and housing, turbine housing. Ours has no turbine housing that goes on
    /// last: it is the carrier that the cartridge is set into, as it stays where the manifold's flange is. TM 5-3810-201-35, para 3-15: the return line comes after.
    /// </summary>
    [Fact]
    public void Of_building_a_turbocharger_up()
    {
        PlanOnPaper plan = PlanOnPaper.Flat("harbour-diesel-i4", "turbo-bearings", "metal");
        plan.GoesBack("turbo-compressor", "turbo-bearings", "turbo-turbine", "turbo-oil-return");
    }

    /// <summary>TM 5-2420-230-24-1, steps 1–8: gland from the tube, rod straight out, piston off the rod, gland off the rod last. Ours leaves the tube hanging.</summary>
    [Fact]
    public void Of_taking_a_hydraulic_cylinder_apart() =>
        PlanOnPaper.Flat("stern-trim-unit", "tilt-piston", "metal").ComesOff("tilt-rod", "tilt-piston", "tilt-gland");

    /// <summary>TM 10-3930-638-24, para 3-24d, steps 13–15, and TM 5-3805-255-14, WP 0123: gland onto the rod, piston onto the rod, rod into the tube.</summary>
    [Fact]
    public void Of_putting_a_hydraulic_cylinder_together() =>
        PlanOnPaper.Flat("stern-trim-unit", "tilt-piston", "metal").GoesBack("tilt-gland", "tilt-piston", "tilt-rod");

    /// <summary>TM 5-4310-354-14: pulley, gear cover, then the gears of injection pump, idler and camshaft, which are one part of ours.</summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("creek-diesel-i4")]
    public void Of_stripping_a_timing_case(string family)
    {
        PlanOnPaper plan = PlanOnPaper.Flat(family, "timing-gears", "metal");
        plan.ComesOff("damper", "timing-cover", "timing-gears");
        plan.GoesBack("timing-gears", "timing-cover", "damper");
    }

    /// <summary>TM 5-4210-229-14&amp;P, para 6-13: before flywheel, crankshaft and mains oil pan, head with valves, timing gears and oil pump are off. Ours has its flywheel off with no regard to the head.</summary>
    [Fact]
    public void Of_what_is_off_before_the_mains()
    {
        PlanOnPaper plan = PlanOnPaper.Flat("harbour-diesel-i4", "main-bearing-3", "metal");
        foreach (string first in new[] { "sump", "cylinder-head", "timing-gears", "oil-pump" })
            plan.ComesOff(first, "crankshaft", "main-bearing-3");
    }
}
