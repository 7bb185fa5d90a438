using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Systems;

/// <summary>
/// Plans with looks, of failures of every shipped family: each is held against every way in which its looks can come out. A few of each family, evenly chosen; with
/// the variable <c>CONTAM_EVERY_FAILURE</c> set all of them, which takes some two minutes.
/// </summary>
public class Plans_of_every_failure
{
    private const int FewOfEach = 6;
    private static readonly ShopStandard Standard = BuiltInStandards.HouseOverKinds;

    public static TheoryData<string> Families => ShippedFamilies.Families;

    [Theory]
    [MemberData(nameof(Families))]
    public void Hold_however_the_looks_come_out(string name)
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), Standard.CatalogueOf()).Value!;
        (Part Part, Debris Debris)[] failures = [.. family.Parts.SelectMany(part => part.Sheds.Select(shed => (part, shed.Debris)))];
        int step = Environment.GetEnvironmentVariable("CONTAM_EVERY_FAILURE") is null ? Math.Max(1, failures.Length / FewOfEach) : 1;
        int looks = 0;
        for (int i = step / 2; i < failures.Length; i += step)
        {
            (Part part, Debris debris) = failures[i];
            PlanDocument plan = Planner.Plan(new PlanRequest(family, Standard, [part.Id], [debris]) { MostLooks = HowFar.MostLooks, TakesFirstSchedule = true });
            Assert.Equal([], PlanVerifier.Verify(plan, family).Claims.Where(claim => !claim.Holds).Select(claim => $"{part.Id} {debris.Name}: {claim.Where}"));
            looks += plan.Looks.Length;
        }

        Assert.NotEqual(0, looks);
    }

    /// <summary>What a compressor's plan must come to: a few looks, and what is sure within 26 hours of the bench.</summary>
    [Fact]
    public void Leave_of_the_outboards_compressor_at_most_26_hours_that_are_sure()
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/estuary-v6-outboard.yaml"), Standard.CatalogueOf()).Value!;
        PlanDocument plan = Planner.Plan(new PlanRequest(family, Standard, [new PartId("compressor")], [Debris.Metal]) { MostLooks = HowFar.MostLooks });

        Assert.InRange(plan.Looks.Length, 2, 8);
        Assert.InRange(plan.Hours.BenchAllClean, 10, 26);
        Assert.True(plan.Hours.BenchExpected < plan.Hours.Bench);
    }
}
