using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// The order of our steps against lists that are published elsewhere: of the parts that both have, each comes before the next. Every difference is said with its
/// reason. A list that was read only in part says so.
/// </summary>
public sealed class Published_orders
{
    private static readonly MastersPage Pinion = MastersPage.Of("outboard-gearcase", "pinion", "metal");

    /// <summary>
    /// TM 5-2805-261-13, para 5-14, p. 5-56: gearcase of a two-stroke outboard, assembly steps 4 to 14; its removal and its last steps were not read. Its order:
    /// pinion bearing and washers, detents and clutch dog on the shaft, forward gear, its bearing, reverse gear, its bearing, oil retainer with housing and ring
    /// on the shaft, lower shift rod.
    /// <para>
    /// Ours differs in two things. Its forward gear goes on the propeller shaft, which is fitted as one; ours stands in the case, so dog and forward gear are in
    /// no order to each other. Its shift rod goes to a lever that is reached last; our shift cam lies behind the forward gear and goes in first.
    /// </para>
    /// </summary>
    [Fact]
    public void Of_a_gearcase_that_is_assembled()
    {
        Pinion.GoesBack("pinion-bearing, pinion");
        Pinion.GoesBack("pinion-bearing, forward-gear-bearing");
        Pinion.GoesBack("clutch-dog, propeller-shaft");
        // Reverse gear and its bearing before retainer, housing and ring: ours are in the carrier, whose ring is put on it.
        Pinion.GoesBack("reverse-gear, bearing-carrier");
        Pinion.GoesBack("reverse-gear-bearing, bearing-carrier");
        Pinion.GoesBack("carrier-seal, bearing-carrier");
        Pinion.GoesBack("forward-gear, bearing-carrier");
        // The two differences.
        Pinion.GoesBack("shift-cam, forward-gear");
    }

    /// <summary>
    /// TM 5-4210-229-14&amp;P, para 6-13, set-up: oil pan, cylinder head with valves, timing gear train and oil pump are off before crankshaft and mains; and
    /// TM 5-3825-221-15, para 136b: flywheel, heads, rods off the crankshaft, then bearings and crankshaft (read in part). Of a small four-stroke that stands upright.
    /// <para>
    /// Ours has its sump in the exhaust housing below, so that the pan is in no order to the crankshaft, and its oil pump and valves in the head: they come off
    /// with it. The heads of both lists come off for the pistons; our crankshaft comes out of a split case, so that the head is off before it only where a piston is.
    /// </para>
    /// </summary>
    [Fact]
    public void Of_a_crankshaft_that_comes_out()
    {
        MastersPage crank = MastersPage.Of("dinghy-four-stroke", "crankshaft", "metal");
        crank.ComesOff("flywheel, timing-belt, crankcase-cover, rod-bearing-1, crankshaft, main-bearing-1");
        crank.ComesOff("cylinder-head, oil-pump");
        crank.ComesOff("cylinder-head, inlet-valve-1");
        crank.ComesOff("rod-bearing-1, piston-1, ring-pack-1");
        // TM 9-2815-205-24, WP 0097: shells in the block, crankshaft, rod caps.
        crank.GoesBack("main-bearing-1, crankshaft, rod-bearing-1, crankcase-cover, timing-belt, flywheel");
    }

    /// <summary>
    /// Removal from a one-piece gearcase; from memory, not found in print: propeller, drain and look at the oil, gearcase off, water pump, bearing carrier,
    /// propeller shaft, pinion nut, driveshaft, pinion, forward gear and bearing, shift parts.
    /// <para>
    /// Ours drains first, because the oil is evidence and runs out warm whatever is on the shaft. Its carrier may come out with the case still on the leg, so case
    /// and pump are in no order to it; nothing else of the case is, and the pump is off before the nut.
    /// </para>
    /// </summary>
    [Fact]
    public void Of_a_gearcase_that_is_stripped()
    {
        Pinion.ComesOff("propeller-hub, leg-joint, water-pump, pinion-nut, driveshaft, pinion, forward-gear, forward-gear-bearing");
        Pinion.ComesOff("propeller-hub, bearing-carrier, propeller-shaft, pinion-nut");
        Pinion.ComesOff("leg-joint, propeller-shaft");
        Pinion.ComesOff("forward-gear, shift-cam");
        Assert.True(Pinion.Plan.Steps.First(step => step.Circuit == "gear-oil").Number < Pinion.StepOf(StepAction.Remove, "propeller-hub"));
    }
}
