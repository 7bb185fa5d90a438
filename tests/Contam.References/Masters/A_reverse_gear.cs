using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// What a master does with a reverse gear. Common practice, no source, where no manual is named.
/// <para>
/// <b>A burnt forward pack.</b> Bath through a cloth, magnet and strainer looked at, the play of both packs measured before the box is opened. Control valve off
/// and its spool drawn: a pack empties through it, so it is washed and tried whatever the strainer shows. Pump, cover, flange, output gear; input shaft out with
/// everything on it and stripped on the bench; the other pack out and its plates looked at. Pack, seal rings and every bearing that the bath reaches new. The
/// filter new, the core new where metal got through the pump (see After_a_failure for the manuals). Plates soaked before they go in, play measured.
/// </para>
/// <para>
/// <b>A spalled output thrust bearing.</b> It comes out with the output gear on the bench; that gear and its mates are looked at tooth by tooth and renewed, all
/// three, only where a tooth is hurt. Both lips new, as both shafts were drawn through them.
/// </para>
/// <para>
/// <b>A core that leaks.</b> Milk in the oil, pressure test of the new core. Both sides opened, tubes tried; nothing on the engine's side of the tubes is stripped.
/// </para>
/// </summary>
public sealed class A_reverse_gear
{
    private static readonly MastersPage Pack = MastersPage.Of("harbour-reverse-gear", "forward-clutch", "metal");
    private static readonly MastersPage Thrust = MastersPage.Of("harbour-reverse-gear", "output-thrust-bearing", "metal");
    private static readonly MastersPage Core = MastersPage.Of("harbour-reverse-gear", "gear-oil-cooler", "water");

    [Fact]
    public void Is_looked_at_before_it_is_opened() => Pack.IsLookedAtBeforeStripping("forward-clutch, gear-sump, magnet-plug, suction-strainer");

    [Fact]
    public void Comes_apart_shaft_by_shaft()
    {
        Pack.ComesOff("control-valve, gear-cover, output-gear, input-shaft, forward-clutch, forward-seal-rings");
        Pack.ComesOff("output-coupling, output-seal, output-gear, reverse-clutch, reverse-shaft-bearing-1");
        Pack.ComesOff("gear-pump, input-shaft, input-bearing-1");
        Pack.ComesOff("input-seal, input-shaft");
        Pack.Stays("gear-sump, magnet-plug");
    }

    [Fact]
    public void Goes_together_built_up_on_the_bench()
    {
        Pack.GoesBack("input-bearing-1, input-shaft, output-gear, gear-cover");
        Pack.GoesBack("forward-seal-rings, input-shaft");
        Pack.GoesBack("forward-clutch, input-shaft, gear-pump, control-valve");
        Pack.GoesBack("reverse-shaft-bearing-1, reverse-clutch, output-gear, output-coupling");
        Assert.Contains(Pack.Plan.Steps, step => step.Action == StepAction.Refit && step.Part == "forward-clutch" && step.Text.Contains("Soak the plates", StringComparison.Ordinal));
    }

    [Fact]
    public void With_a_burnt_pack_gets_rings_bearings_and_lips_and_keeps_its_gears()
    {
        Pack.IsRenewed("forward-clutch, forward-seal-rings, reverse-seal-rings, input-bearing-1, input-bearing-2, reverse-shaft-bearing-1, output-thrust-bearing, input-seal, output-seal");
        Pack.IsKept("reverse-clutch, output-gear, forward-gear, reverse-gear, control-valve, input-shaft");
        Assert.Contains(Pack.Plan.Steps, step => step.Action == StepAction.Clean && step.Part == "control-valve" && step.OnlyIf.IsEmpty);
        Assert.Equal("sealing-ring", Pack.Family[new("forward-seal-rings")].Kind.Name);
    }

    [Fact]
    public void With_a_spalled_thrust_bearing_has_its_gears_looked_at_and_both_lips_renewed()
    {
        Thrust.ComesOff("output-coupling, output-seal, output-gear, output-thrust-bearing");
        Thrust.IsRenewed("output-thrust-bearing, output-seal");
        Thrust.IsListed("output-gear, forward-gear, reverse-gear");
        Thrust.IsKept("output-gear, forward-gear, reverse-gear, forward-clutch, reverse-clutch");
    }

    [Fact]
    public void With_a_leaking_core_has_both_its_sides_tried()
    {
        Core.IsLookedAtBeforeStripping("gear-oil-cooler");
        Core.IsRenewed("gear-oil-cooler");
        Core.IsListed("gear-sump, gear-cooler-water-side, water-outlet-hose");
        Core.IsKept("input-bearing-1, output-thrust-bearing, output-gear, forward-clutch");
        Assert.Contains(Core.Plan.Steps, step => step.Phase == Phase.Prove && step.Text.StartsWith("Oil cooler core", StringComparison.Ordinal) && step.Text.Contains("pressure drop", StringComparison.Ordinal));
    }
}
