using Contam.Plans;

namespace Contam.References.Masters;

/// <summary>
/// What a master does with a gearcase. Common practice, no source, where no manual is named.
/// <para>
/// <b>A chipped pinion.</b> Plugs out, bath through a cloth, magnet looked at; the drained case held under pressure and vacuum while it is whole. Propeller off,
/// case off the leg. Pump off the driveshaft, carrier out with the reverse gear, propeller shaft with the dog, pinion nut, driveshaft up, pinion down, forward
/// gear, shift parts. Pinion and both bevel gears are one set. All rolling bearings, every lip that was disturbed, nut and carrier ring new; case and riser
/// brushed and flushed with oil, never with water. Back the other way, backlash and contact mark before the pump; held again before it is filled.
/// </para>
/// <para>
/// <b>Water past the outer propeller shaft lip.</b> Hold and brush first: that says which seal. Propeller and carrier off, the carrier's three seals new, its
/// pockets looked at for rust. The rest of the case is opened only for water or rust found in the bath or the carrier. Held before it is filled, whatever was seen.
/// </para>
/// <para>
/// <b>A torn impeller.</b> Case off the leg, pump open, vanes counted; inlets, passage, tube and exhaust looked through. The bath is not opened.
/// </para>
/// </summary>
public sealed class An_outboard_gearcase
{
    private static readonly MastersPage Pinion = MastersPage.Of("outboard-gearcase", "pinion", "metal");
    private static readonly MastersPage Lip = MastersPage.Of("outboard-gearcase", "propshaft-water-seal", "water");
    private static readonly MastersPage Impeller = MastersPage.Of("outboard-gearcase", "water-impeller", "rubber");

    [Fact]
    public void Is_looked_at_as_it_is_drained()
    {
        Pinion.IsLookedAtBeforeStripping("pinion, gear-housing, lower-plug");
        Assert.True(Pinion.Plan.Steps.First(step => step.Circuit == "gear-oil").Number < Pinion.StepOf(StepAction.Inspect, "gear-housing"));
    }

    [Fact]
    public void Is_held_under_pressure_before_it_is_opened_and_before_it_is_filled()
    {
        foreach (MastersPage page in new[] { Pinion, Lip })
        {
            Assert.Equal(Phase.Confirm, page.Says("Hold the drained case").Phase);
            PlanStep held = page.Says("before it is filled");
            Assert.Empty(held.OnlyIf);
            Assert.True(held.Number < page.Says("Fill gear oil").Number);
            // Water in the oil is read when there is oil again.
            Assert.DoesNotContain("water content", held.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Comes_apart_from_the_propeller_to_the_shift_parts()
    {
        Pinion.ComesOff("propeller-hub, leg-joint, water-pump, water-impeller, driveshaft-water-seal, driveshaft-oil-seal, driveshaft, pinion, forward-gear, shift-cam");
        Pinion.ComesOff("propeller-hub, bearing-carrier, propeller-shaft, pinion-nut, driveshaft");
        Pinion.ComesOff("bearing-carrier, reverse-gear, reverse-gear-bearing");
        Pinion.ComesOff("propeller-shaft, clutch-dog");
        Pinion.ComesOff("pinion, pinion-bearing");
    }

    [Fact]
    public void Has_its_plugs_out_once()
    {
        Pinion.Stays("lower-plug, upper-plug");
        Assert.Single(Pinion.Plan.Steps, step => step.Phase == Phase.MakeSafe && step.Circuit == "gear-oil");
    }

    [Fact]
    public void Gets_its_gears_as_a_set_and_no_old_lip_back()
    {
        Pinion.IsRenewed("pinion, forward-gear, reverse-gear, pinion-nut");
        Pinion.IsRenewed("driveshaft-bearing, pinion-bearing, forward-gear-bearing, reverse-gear-bearing, carrier-bearing");
        Pinion.IsRenewed("driveshaft-oil-seal, driveshaft-water-seal, propshaft-oil-seal, propshaft-water-seal, carrier-seal");
        Pinion.IsKept("propeller-shaft, driveshaft, water-impeller, clutch-dog, bearing-carrier");
    }

    /// <summary>With the case on its stand no shaft falls out of it when the carrier comes off.</summary>
    [Fact]
    public void Is_off_the_leg_before_its_carrier_comes_off_and_goes_back_on_it_whole()
    {
        Pinion.ComesOff("leg-joint, bearing-carrier");
        Pinion.GoesBack("bearing-carrier, leg-joint");
    }

    [Fact]
    public void Has_its_shaft_washed_before_a_new_bearing_is_tried_on_it() =>
        Assert.True(Pinion.StepOf(StepAction.Clean, "driveshaft") < Pinion.StepOf(StepAction.Replace, "driveshaft-bearing"));

    /// <summary>After the first hours the bath is looked at; nobody opens again what has just been closed and held.</summary>
    [Fact]
    public void Is_proved_by_its_bath_alone()
    {
        PlanStep last = Pinion.Plan.Steps[^1];
        Assert.Equal(FrameNames.SecondLook, last.Frame);
        Assert.Equal(["gear-housing"], last.Part is { } one ? [one] : last.Parts);
        Assert.Single(Pinion.Plan.Steps, step => step.Frame == FrameNames.SecondLook);
    }

    [Fact]
    public void Is_flushed_with_oil()
    {
        PlanStep flush = Pinion.Plan.Steps.First(step => step.Action == StepAction.Flush && step.Parts.Contains("gear-housing"));
        Assert.Contains("gear oil", Pinion.Plan.Methods.Single(method => method.Id == flush.Method).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Goes_together_with_the_mesh_measured_before_the_pump()
    {
        Pinion.GoesBack("shift-cam, forward-gear, pinion, driveshaft, pinion-nut, propeller-shaft, bearing-carrier, propeller-hub");
        Pinion.GoesBack("pinion-nut, water-pump, leg-joint, propeller-hub");
        Pinion.GoesBack("driveshaft-oil-seal, driveshaft-water-seal, water-impeller, water-pump");
        Assert.Contains(Pinion.Plan.Steps, step => step.Action == StepAction.Refit && step.Part == "pinion" && step.Text.Contains("backlash", StringComparison.Ordinal) && step.Text.Contains("contact mark", StringComparison.Ordinal));
    }

    [Fact]
    public void Lets_no_metal_out_of_the_bath_while_its_lips_hold() =>
        Pinion.IsNotListed("water-impeller, water-pump, water-tube, inlet-passage, water-inlet-screen, exhaust-passage, leg-joint, propeller-hub");

    [Fact]
    public void With_water_past_a_lip_is_opened_no_further_than_its_carrier_shows()
    {
        Lip.IsLookedAtBeforeStripping("propshaft-water-seal");
        Assert.Contains("soapy water", Lip.Plan.Steps.First(step => step.Action == StepAction.Inspect && step.Part == "propshaft-water-seal").Text, StringComparison.Ordinal);
        Lip.ComesOff("propeller-hub, bearing-carrier");
        Lip.IsRenewed("propshaft-water-seal, propshaft-oil-seal, carrier-seal");
        Lip.StaysUnlessFound("leg-joint, propeller-shaft, driveshaft, pinion, forward-gear, reverse-gear, water-pump");
        Lip.IsKept("pinion, forward-gear, reverse-gear, propeller-shaft");
        Assert.InRange(Lip.Plan.Hours.BenchAllClean, 4, 8);
    }

    [Fact]
    public void With_a_torn_impeller_keeps_its_bath_shut()
    {
        Assert.DoesNotContain(Impeller.Plan.Steps, step => step.Circuit == "gear-oil");
        Impeller.ComesOff("propeller-hub, leg-joint, water-pump, water-impeller");
        Impeller.IsListed("water-inlet-screen, inlet-passage, water-pump, water-tube, leg-joint, exhaust-passage, propeller-hub");
        Impeller.IsRenewed("water-impeller");
        Impeller.Stays("bearing-carrier, driveshaft, water-tube");
        Impeller.Says("Count the vanes");
        // The pump is two hours down and up again; the rest is looked at through its openings.
        Assert.InRange(Impeller.Plan.Hours.Bench, 4, 8);
    }
}
