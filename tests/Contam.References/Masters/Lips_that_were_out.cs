using Contam.Plans;
using Contam.Proof;
using Contam.Treatment.Reading;

namespace Contam.References.Masters;

/// <summary>No lip, ring or gasket that was out of its place goes back; common practice, no source. Both the plan and the proof of the plan hold it.</summary>
public sealed class Lips_that_were_out
{
    private static readonly MastersPage Page = MastersPage.Of("outboard-gearcase", "pinion", "metal");

    [Fact]
    public void Are_renewed_though_no_debris_came_to_them()
    {
        Page.IsNotListed("propshaft-water-seal, driveshaft-water-seal");
        Page.IsRenewed("propshaft-water-seal, driveshaft-water-seal");
        foreach (string lip in new[] { "propshaft-water-seal", "driveshaft-water-seal" })
            Assert.Contains(Page.Plan.Order, line => line.Item.Contains(Page.Family[new(lip)].Name[1..], StringComparison.Ordinal));
    }

    [Fact]
    public void Are_missed_by_the_proof_where_one_is_put_back()
    {
        PlanDocument plan = Page.Plan;
        Assert.True(PlanVerifier.Verify(plan, Page.Family, BuiltInStandards.HouseOverKinds.CatalogueOf().Debris).Holds);
        PlanStep renewed = plan.Steps.First(step => step.Action == StepAction.Replace && step.Part == "propshaft-water-seal");
        PlanDocument old = plan with { Steps = plan.Steps.Replace(renewed, renewed with { Action = StepAction.Note }) };
        Verification verified = PlanVerifier.Verify(old, Page.Family, BuiltInStandards.HouseOverKinds.CatalogueOf().Debris);
        Assert.Contains(verified.Claims, claim => !claim.Holds && claim.Where is { } where && where.Contains("propshaft-water-seal", StringComparison.Ordinal));
    }
}
