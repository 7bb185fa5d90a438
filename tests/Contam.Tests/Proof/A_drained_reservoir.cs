using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Proof;

/// <summary>What is drained is filled again, when all is closed and before anything turns; faults in a shipped plan, without looks and with them.</summary>
public class A_drained_reservoir
{
    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;
    private static readonly Family Family = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/harbour-diesel-i4.yaml"), House.CatalogueOf()).Value!;

    [Theory]
    [InlineData(0)]
    [InlineData(HowFar.MostLooks)]
    public void Is_filled_by_a_shipped_plan(int looks) => Assert.Null(Fault(Planned(looks)));

    [Theory]
    [InlineData(0)]
    [InlineData(HowFar.MostLooks)]
    public void Is_refused_where_nothing_fills_it(int looks) =>
        Assert.Contains("no step fills it again", Fault(Changed(Planned(looks), step => step with { Fills = null })), StringComparison.Ordinal);

    [Theory]
    [InlineData(0)]
    [InlineData(HowFar.MostLooks)]
    public void Is_refused_where_it_is_filled_after_the_engine_turned(int looks)
    {
        PlanDocument plan = Planned(looks);
        PlanStep last = plan.Steps.Last(step => step.OnlyIf.IsEmpty);

        Assert.Contains("turns the machine before", Fault(FilledIn(plan, last)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(HowFar.MostLooks)]
    public void Is_refused_where_it_is_filled_while_its_circuit_is_open(int looks)
    {
        PlanDocument plan = Planned(looks);
        PlanStep before = plan.Steps.First(step => step.Phase == Phase.Refit && step.OnlyIf.IsEmpty);

        Assert.Contains("has closed its circuit", Fault(FilledIn(plan, before)), StringComparison.Ordinal);
    }

    private static PlanDocument Planned(int looks) => Planner.Plan(new PlanRequest(Family, House, [new PartId("oil-pump")], [Debris.Metal]) { MostLooks = looks, TakesFirstSchedule = true });

    private static PlanDocument FilledIn(PlanDocument plan, PlanStep one)
    {
        ImmutableArray<string> all = [.. plan.Steps.SelectMany(step => step.Fills ?? []).Distinct()];
        return Changed(plan, step => step with { Fills = step.Number == one.Number ? all : null });
    }

    private static PlanDocument Changed(PlanDocument plan, Func<PlanStep, PlanStep> change) => plan with { Steps = [.. plan.Steps.Select(change)] };

    private static string? Fault(PlanDocument plan) => PlanVerifier.Verify(plan, Family, House.CatalogueOf().Debris).Claims.Single(one => one.Kind == ClaimKind.Ordered).Where;
}
