using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Tests.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Treatment;

/// <summary>A caution that names a fluid bears on work where this fluid runs, and nowhere else.</summary>
public sealed class Cautions_for_a_fluid
{
    [Fact]
    public void Stand_at_the_steps_whose_circuits_hold_it()
    {
        ShopStandard house = BuiltInStandards.HouseOverKinds;
        string[] said = [.. house.Cautions.Where(rule => rule.For.Fluid == "petrol").Select(rule => rule.Say)];
        Assert.NotEmpty(said);
        Family family = FamilyReader.ReadFile(Path.Combine(CaseFile.Root, "systems", "families", "sterndrive-petrol-v6.yaml"), house.CatalogueOf()).Value!;
        Circuit[] petrol = [.. family.Circuits.Where(circuit => circuit.Fluid == "petrol")];
        int holds = 0;
        int others = 0;
        foreach (Part failed in family.Parts.Where((part, place) => place % 10 == 0))
        {
            PlanDocument plan = Planner.Plan(new PlanRequest(family, house, [failed.Id], [house.CatalogueOf().Debris[0]]));
            int[] steps = [.. plan.Cautions.Where(caution => said.Contains(caution.Text)).SelectMany(caution => caution.Steps)];
            foreach (PlanStep step in steps.Select(number => plan.Steps[number - 1]).Where(step => step.Action is not (StepAction.MakeSafe or StepAction.Prove)))
            {
                Assert.Contains(petrol, circuit => circuit.Parts.Any(part => part.Value == step.Part || step.Parts.Contains(part.Value)));
                holds++;
            }

            others += plan.Steps.Length - steps.Length;
        }

        Assert.True(holds > 0 && others > 0);
    }
}
