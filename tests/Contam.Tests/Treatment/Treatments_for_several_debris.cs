using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Treatment;

/// <summary>A part that several debris reach gets what each of them asks for. A new part needs no cleaning; it is looked at and tested all the same.</summary>
public class Treatments_for_several_debris
{
    private static readonly TreatmentKind[] All = Enum.GetValues<TreatmentKind>();

    [Fact]
    public void Leave_out_cleaning_for_a_new_part_and_nothing_else()
    {
        for (int set = 0; set < 1 << All.Length; set++)
        {
            TreatmentKind[] asked = [.. All.Where((_, place) => (set & 1 << place) != 0)];
            TreatmentKind[] due = asked.Contains(TreatmentKind.Replace) ? [.. asked.Except([TreatmentKind.Flush, TreatmentKind.Clean])] : asked;
            Assert.Equal(due, RuleBook.Join(asked.Concat(asked).Reverse()).Order());
        }
    }

    [Theory]
    [InlineData("replace", "test")]
    [InlineData("replace", "inspect")]
    [InlineData("test", "replace")]
    public void Have_a_step_each_in_the_plan(string forMetal, string forWater)
    {
        ShopStandard standard = StandardReader.ReadText(
            $"format: 1\nstandard: s\nrules:\n  - {{for: {{kind: gear, debris: metal}}, exposed: [{forMetal}], because: ours}}\n  - {{for: {{kind: gear, debris: water}}, exposed: [{forWater}], because: ours}}\n",
            "s.yaml").Value!.Over(BuiltInStandards.HouseOverKinds);
        Family family = FamilyReader.ReadText("format: 1\nfamily: f\nparts:\n  pump: {kind: pump, sheds: {metal: common, water: common}}\n  gear: {kind: gear}\ncircuits:\n  oil:\n    runs:\n      - [pump, gear]\n", "f.yaml", standard.CatalogueOf()).Value!;
        PlanDocument plan = Planner.Plan(new PlanRequest(family, standard, [new PartId("pump")], [Debris.Metal, Debris.Water]));
        StepAction[] due = [.. new[] { forMetal, forWater }.Select(word => Enum.Parse<StepAction>(word, ignoreCase: true)).Order()];
        Assert.Equal(due, plan.Steps.Where(step => (step.Part == "gear" || step.Parts.Contains("gear")) && step.Frame is null && step.About != LookAbout.Condition && step.Action is StepAction.Inspect or StepAction.Test or StepAction.Replace or StepAction.Flush or StepAction.Clean).Select(step => step.Action).Order());
    }
}
