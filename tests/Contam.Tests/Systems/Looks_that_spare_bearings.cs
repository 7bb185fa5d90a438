using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Systems;

/// <summary>What clean looks leave alone in shipped families, and what they do not.</summary>
public class Looks_that_spare_bearings
{
    [Fact]
    public void Are_the_three_at_the_v6_compressor() => Assert.Equal(
        [],
        Renewed("estuary-v6-outboard", "compressor", "compressor-outlet-hose", "oil-return-screen-1", "oil-return-screen-2").Where(part => part.Contains("big-end", StringComparison.Ordinal) || part.Contains("main", StringComparison.Ordinal)));

    [Fact]
    public void Are_needed_all_three()
    {
        Assert.Contains("port-big-end-1", Renewed("estuary-v6-outboard", "compressor", "oil-return-screen-1", "oil-return-screen-2"));
        Assert.Contains("port-big-end-1", Renewed("estuary-v6-outboard", "compressor", "compressor-outlet-hose", "oil-return-screen-1"));
    }

    private static string[] Renewed(string family, string failed, params string[] clean)
    {
        Family read = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{family}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        PlanDocument plan = Planner.Plan(new PlanRequest(read, BuiltInStandards.HouseOverKinds, [new PartId(failed)], [Debris.Metal])
        {
            Findings = [.. clean.Select(part => new Finding(new PartId(part), Debris.Metal, Found: false))],
        });
        Assert.All(plan.Findings, finding => Assert.True(finding.Accepted, finding.NotAcceptedBecause));
        return [.. plan.Parts.Where(part => part.Treatment.Contains(TreatmentKind.Replace)).Select(part => part.Id)];
    }
}
