using Contam.Families;
using Contam.Plans;
using static Contam.Tests.Procedure.ShippedPlans;

namespace Contam.Tests.Procedure;

/// <summary>What published manuals ask for before and at the first start, held by plans of the shipped families. The figures of a manual are those of its machine.</summary>
public sealed class Facts_of_the_restart
{
    /// <summary>TM 55-1905-223-24-5, step (8): prime until a pressure of 30 psi (207 kPa) is obtained; then crank with the fuel off.</summary>
    [Theory]
    [InlineData("harbour-diesel-i4", "oil-pump")]
    [InlineData("harbour-diesel-i4", "main-bearing-1")]
    public void Oil_is_primed_to_a_pressure_and_then_cranked_with_the_fuel_off(string name, string failed)
    {
        foreach (PlanDocument plan in BothPlans(name, failed))
        {
            Assert.InRange(plan.Frame("prime-oil"), 1, plan.Frame("crank") - 1);
            Assert.Contains("2 bar", plan.Steps[plan.Frame("prime-oil") - 1].Text, StringComparison.Ordinal);
            Assert.Contains("uel and ignition off", plan.Steps[plan.Frame("crank") - 1].Text, StringComparison.Ordinal);
            Assert.InRange(plan.Frame("crank-oil"), plan.Frame("crank") + 1, plan.Frame("first-run") - 1);
        }
    }

    /// <summary>TM 5-3810-201-35, paragraph 3-15: the oil return line is not connected until oil flows freely through the turbocharger. TM 5-2815-241-34&amp;P: not above 1000 rpm until the oil pressure is normal.</summary>
    [Theory]
    [InlineData("harbour-diesel-i4", "turbo-compressor")]
    public void The_return_of_a_turbocharger_is_joined_after_free_flow_and_it_is_kept_slow(string name, string failed)
    {
        foreach (PlanDocument plan in BothPlans(name, failed))
        {
            Assert.InRange(plan.Frame("turbo-return"), plan.Frame("prime-oil") + 1, plan.Frame("crank") - 1);
            Assert.Contains("when oil runs freely", plan.Steps[plan.Frame("turbo-return") - 1].Text, StringComparison.Ordinal);
            Assert.Contains("1000 rpm", plan.Steps[plan.Frame("turbo-run") - 1].Text, StringComparison.Ordinal);
        }
    }

    /// <summary>
    /// TM 5-3895-382-24: the engine is not started until the injection pump is full of fuel; it is primed when a filter was changed, a line was off, or the pump
    /// was off. So wherever the fuel circuit of such a pump is opened, not only where the pump itself was.
    /// </summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("quay-diesel-v8")]
    [InlineData("creek-diesel-i4")]
    [InlineData("genset-diesel-i6")]
    public void An_injection_pump_is_full_before_it_turns_whatever_of_its_fuel_was_opened(string name)
    {
        Family family = Family(name);
        HashSet<string> fuel = [.. family.Circuits.Where(circuit => circuit.Parts.Any(part => family[part].Kind.Name == "injection-pump") && FluidSort.Fits("diesel", family, circuit)).SelectMany(circuit => circuit.Parts).Select(part => part.Value)];
        int seen = 0;
        foreach (PlanDocument plan in Of(family, each: 9))
        {
            foreach (PlanStep off in plan.Steps.Where(step => step.Action == StepAction.Remove && step.PartsOf().Any(fuel.Contains)))
            {
                PlanStep? wet = plan.Steps.FirstOrDefault(step => step.Frame == "wet-pump" && plan.IsDoneWherever(step, off));
                Assert.True(wet is not null && wet.Number < plan.Frame("turn-by-hand") && wet.Number < plan.Frame("crank"), $"{plan.Failed[0]}: {off.Text}");
                seen++;
            }
        }

        Assert.True(seen > 0);
    }

    /// <summary>TM 5-3810-306-20, page 16-52: operate all hydraulic circuits several times in both directions. TM 5-3810-300-24&amp;P2: fill, keep topping up, slowly first, faster as the oil clears.</summary>
    [Fact]
    public void A_hydraulic_unit_is_bled_both_ways_before_it_works_under_load()
    {
        Family family = Family("stern-trim-unit");
        foreach (PlanDocument plan in Of(family, each: 5))
        {
            int[] order = [plan.Frame("fill-hydraulic"), plan.Frame("bleed-hydraulic"), plan.Frame("cycle-hydraulic"), plan.Frame("top-up-hydraulic")];
            Assert.DoesNotContain(0, order);
            Assert.Equal(order.Order(), order);
            string bleed = plan.Steps[plan.Frame("bleed-hydraulic") - 1].Text;
            Assert.Contains("several times both ways", bleed, StringComparison.Ordinal);
            Assert.Contains("topping up", bleed, StringComparison.Ordinal);
        }
    }

    /// <summary>TM 5-3805-261-23-1, work package 0020: implements down, engine off, pressure relieved through all positions before anything is opened.</summary>
    [Fact]
    public void Pressure_is_let_down_before_a_circuit_is_opened()
    {
        int seen = 0;
        foreach (Family family in Names.Select(Family))
        {
            foreach (PlanDocument plan in Of(family, each: 23))
            {
                foreach (PlanStep safe in plan.Steps.Where(step => step.Circuit is not null))
                {
                    HashSet<string> parts = [.. family.Circuits.First(circuit => circuit.Name == safe.Circuit).Parts.Select(part => part.Value)];
                    PlanStep? early = plan.Steps.FirstOrDefault(step => step.Action == StepAction.Remove && step.PartsOf().Any(parts.Contains));
                    Assert.True(early is null || early.Number > plan.Steps.First(step => step.Circuit == safe.Circuit).Number, $"{family.Id} {plan.Failed[0]}: {early?.Text}");
                    seen++;
                }
            }
        }

        Assert.True(seen > 100);
        PlanDocument unit = ShippedPlans.Of(Family("stern-trim-unit"), "trim-pump", "metal", 0);
        Assert.Contains("block the load", unit.Steps[unit.Frame("stop") - 1].Text, StringComparison.Ordinal);
        Assert.Contains(unit.Steps, step => step.Text.Contains("both ways until it is slack, gauge at zero", StringComparison.Ordinal));
    }

    /// <summary>TM 5-3895-376-14&amp;P, paragraph 5-18, and TM 9-6115-664-13&amp;P, paragraph 5-11: dip the oil pump in lubricating oil before it is fitted.</summary>
    [Fact]
    public void An_oil_pump_goes_in_wet()
    {
        PlanDocument plan = ShippedPlans.Of(Family("harbour-diesel-i4"), "oil-pump", "metal", 0);
        Assert.Contains(plan.Steps, step => step.Phase == Phase.Refit && step.PartsOf().Contains("oil-pump") && step.Text.Contains("in clean oil", StringComparison.Ordinal));
    }

    private static PlanDocument[] BothPlans(string name, string failed) => [ShippedPlans.Of(Family(name), failed, "metal", 0), ShippedPlans.Of(Family(name), failed, "metal", HowFar.MostLooks)];
}
