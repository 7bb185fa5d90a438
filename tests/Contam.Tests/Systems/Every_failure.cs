using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Systems;

/// <summary>Every part of every shipped family that can fail, with every debris that it sheds: the plan is verified.</summary>
public class Every_failure
{
    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;

    public static TheoryData<string> Families => ShippedFamilies.Families;

    [Theory]
    [MemberData(nameof(Families))]
    public void Has_a_plan_that_is_verified(string name)
    {
        Catalogue catalogue = House.CatalogueOf();
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), catalogue).Value!;
        var refused = new List<string>();
        int plans = 0;
        foreach (Part part in family.Parts)
        {
            foreach (Debris debris in catalogue.Debris.Where(debris => part.ShedOf(debris) is not null))
            {
                PlanDocument plan = Planner.Plan(new PlanRequest(family, House, [part.Id], [debris]) { TakesFirstSchedule = true });
                refused.AddRange(PlanVerifier.Verify(plan, family, catalogue.Debris).Claims.Where(claim => !claim.Holds).Select(claim => $"{part.Id} {debris.Name}: {claim.Where}"));
                plans++;
            }
        }

        Assert.True(plans > 0);
        Assert.Equal([], refused);
    }
}
