using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Tests.Proof;

/// <summary>The plan for the compressor of the V6 outboard, held against every outcome of its looks, and with one condition of it changed.</summary>
public class A_shipped_plan_with_looks
{
    private static readonly Family Family = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/estuary-v6-outboard.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;

    private static readonly Lazy<PlanDocument> Planned = new(() => Planner.Plan(
        new PlanRequest(Family, BuiltInStandards.HouseOverKinds, [new PartId("compressor")], [Debris.Metal]) { MostLooks = HowFar.MostLooks, TakesFirstSchedule = true }));

    private static PlanDocument Plan => Planned.Value;

    [Fact]
    public void Holds_in_all_its_histories()
    {
        Verification verification = Verify(Plan);

        Assert.Equal([null, null, null, null, null], verification.Claims.Select(claim => claim.Where));
        Assert.InRange(verification.Histories, Plan.Looks.Length + 1, 256);
    }

    // A step that is struck in the one history where all is found, the last of all, is missed there.
    [Fact]
    public void Is_refused_where_the_worst_history_alone_is_left_without_a_step()
    {
        PlanStep step = Plan.Steps.First(step => step.Action == StepAction.Refit && step.OnlyIf.Length == 1 && step.Unless.IsEmpty);
        Assert.False(Verify(With(step with { Unless = [.. Plan.Looks.Select(look => look.Id).Except(step.OnlyIf)] })).Holds);
    }

    [Fact]
    public void Is_refused_for_every_removal_that_loses_its_condition()
    {
        PlanStep[] removals = [.. Plan.Steps.Where(step => step.Action == StepAction.Remove && !step.OnlyIf.IsEmpty)];
        Assert.NotEmpty(removals);
        Assert.All(removals, step => Assert.False(Verify(With(step with { OnlyIf = [] })).Holds, $"step {step.Number}"));
    }

    [Fact]
    public void Is_refused_for_every_look_that_is_not_made_where_it_is_due() =>
        Assert.All(Plan.Looks, look => Assert.False(Verify(With(Plan.Steps[look.Step - 1] with { Unless = [Plan.Looks[0].Id] })).Holds, look.Id));

    [Fact]
    public void Is_refused_for_every_cleaning_that_is_never_done()
    {
        PlanStep[] cleanings = [.. Plan.Steps.Where(step => step.Action is StepAction.Clean or StepAction.Replace && !step.OnlyIf.IsEmpty)];
        Assert.NotEmpty(cleanings);
        Assert.All(cleanings, step => Assert.False(Verify(With(step with { Unless = [.. Plan.Looks.Select(look => look.Id)] })).Holds, $"step {step.Number}"));
    }

    private static Verification Verify(PlanDocument plan) => PlanVerifier.Verify(plan, Family, BuiltInStandards.HouseOverKinds.CatalogueOf().Debris);

    private static PlanDocument With(PlanStep step) => Plan with { Steps = Plan.Steps.SetItem(step.Number - 1, step) };
}
