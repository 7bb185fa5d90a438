using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Looks;

/// <summary>A find says more than that one debris came: of two debris either may be what was found, and a find may void what is on record elsewhere. Each left a part dirty once.</summary>
public class What_a_find_shows_besides
{
    // Water is on record as stopped before; the look is made for metal, and may find water all the same.
    [Fact]
    public void Is_treated_where_nothing_on_record_lets_it_come() => Holds(
        """
        tank[look=good] > gauge[look=good] > filter > valve > port[look=good] > gallery
        @asked metal water
        @found tank water
        @clean gauge water
        @found filter metal
        """,
        "port",
        plan => Assert.Contains(plan.Parts.Single(part => part.Id == "port").Asks, ask => ask.Debris == "water"));

    // The find behind the clean place voids it; what was found before it is of any size, and gets past it whole.
    [Fact]
    public void Goes_past_a_void_record_at_its_full_size() => Holds(
        """
        pump > throat[passage=5] > rail[look=good] > gauge[look=good] > gallery > port[look=good] > sump
        @failed pump
        @asked metal rubber
        @clean gauge metal
        """,
        "rail port",
        plan => Assert.Contains(plan.Parts.Single(part => part.Id == "gallery").Asks, ask => ask is { Debris: "metal", Grade: Grade.Exposed }));

    private static void Holds(string notation, string lookAt, Action<PlanDocument> expected)
    {
        TestCase asked = CaseReader.Read(notation);
        PlanDocument plan = Planner.Plan(asked.ToRequest() with { LookAt = [.. lookAt.Split(' ').Select(place => new PartId(place))] });

        Assert.NotEmpty(plan.Looks);
        Assert.Equal([], PlanVerifier.Verify(plan, asked.Family, asked.Catalogue.Debris).Claims.Where(claim => !claim.Holds).Select(claim => claim.Where));
        expected(plan);
    }
}
