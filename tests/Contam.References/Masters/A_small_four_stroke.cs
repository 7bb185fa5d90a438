namespace Contam.References.Masters;

/// <summary>
/// What a master does with a small upright four-stroke. Common practice, no source, where no manual is named.
/// <para>
/// <b>A wiped big-end.</b> Oil drained through a cloth, filter cut open. Flywheel and belt off, powerhead lifted, case opened, caps off: shell and journal are
/// looked at before anything else is decided. Crankshaft out before the main shells. Head off with what is in it, and only for pistons or camshaft.
/// </para>
/// <para>
/// <b>A torn impeller.</b> Water side alone: pump, tube, jacket behind the thermostat, pressure valve, tell-tale, and the joint of the powerhead that they wash.
/// </para>
/// <para>
/// <b>A housing that has rusted through.</b> Water in the oil and up at the valves of both cylinders. Looked at with the powerhead off; the sump in it too.
/// </para>
/// </summary>
public sealed class A_small_four_stroke
{
    private static readonly MastersPage BigEnd = MastersPage.Of("dinghy-four-stroke", "rod-bearing-1", "metal");
    private static readonly MastersPage Impeller = MastersPage.Of("dinghy-four-stroke", "water-impeller", "rubber");
    private static readonly MastersPage Housing = MastersPage.Of("dinghy-four-stroke", "exhaust-housing", "water");

    [Fact]
    public void With_a_wiped_big_end_is_opened_from_the_flywheel_to_the_shells()
    {
        BigEnd.ComesOff("flywheel, timing-belt, crankcase-cover, rod-bearing-1, crankshaft, main-bearing-1");
        BigEnd.ComesOff("powerhead-joint, crankcase-cover");
        BigEnd.ComesOff("cylinder-head, camshaft");
        BigEnd.ComesOff("piston-1, ring-pack-1");
        BigEnd.IsRenewed("rod-bearing-1");
        BigEnd.IsLookedAtBeforeStripping("sump");
    }

    [Fact]
    public void With_a_wiped_big_end_goes_together_from_the_shells_to_the_flywheel()
    {
        BigEnd.GoesBack("main-bearing-1, crankshaft, rod-bearing-1, crankcase-cover, timing-belt, flywheel");
        BigEnd.GoesBack("ring-pack-1, piston-1, rod-bearing-1");
        BigEnd.GoesBack("camshaft, cylinder-head, timing-belt");
        BigEnd.GoesBack("inlet-valve-1, cylinder-head");
    }

    [Fact]
    public void With_a_torn_impeller_has_pieces_on_the_water_side_alone()
    {
        Impeller.IsListed("water-pump, water-tube, water-screen, block-jacket, thermostat, pressure-valve, tell-tale");
        Impeller.IsNotListed("sump, crankcase-cover, main-bearing-1, carburettor-1, cylinder-1, exhaust-valve-1");
        Impeller.ComesOff("water-pump, water-impeller");
        Impeller.IsRenewed("water-impeller");
        Assert.DoesNotContain(Impeller.Plan.Steps, step => step.Circuit == "fuel");
    }

    [Fact]
    public void With_a_rusted_housing_has_water_at_its_valves_and_in_its_oil()
    {
        Housing.IsListed("exhaust-valve-1, exhaust-valve-2, cylinder-1, cylinder-2, crankcase-cover, sump");
        Housing.IsNotListed("boat-tank, lift-pump, water-pump");
        Housing.IsKept("crankshaft, piston-1, cylinder-head");
    }
}
