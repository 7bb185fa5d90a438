using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>Two debris, a loop of parts treated in place, two technicians, a part that is sent out, one that is only in the way.</summary>
public class A_plan_for_a_loop
{
    private static readonly Family Family = CaseReader.System("""
        pump[sheds metal 100 sendout=1] > gallery[inplace access=cover] > rail[inplace holds metal 20 abs] > gallery
        rail > cooler[look=fair]; cover; drip
        drip > cooler
        """);

    private static readonly PlanDocument Plan = TwoDebris(BenchPlan.Of(
        Family,
        "pump",
        """
        pump clean exposed 100
        gallery clean exposed 100 pump
        rail flush exposed 100 gallery
        cooler inspect guarded 20 rail
        """,
        """
        safe
        look pump
        remove pump
        remove cover by=2 at=20-30 after=2
        remove cooler at=30-40 after=3
        sendout pump by=nobody at=30-500 after=3
        clean gallery by=2 at=30-60 after=3+4
        flush gallery+rail at=60-80 after=5+7
        inspect cooler at=80-85 after=5
        clean pump at=500-510 after=6
        refit pump at=510-520 after=10
        refit cover at=520-530 after=8+11
        refit cooler by=2 at=520-530 after=9+11
        prove at=530-560 after=12+13
        """) with { Sequence = PlanSequence.Schedule });

    [Fact]
    public void Holds() => Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(Plan, Family).Claims.Select(claim => claim.Where));

    [Fact]
    public void Is_refused_where_a_part_is_listed_for_one_debris_and_not_for_the_other() => Refused(
        WithPart(3, part => part with { Exposure = [part.Exposure[0]] }),
        ClaimKind.Closed,
        "cooler is left out, though rail leads into it: water would stay in it");

    [Fact]
    public void Is_refused_where_it_is_milder_for_the_other_debris() => Refused(
        WithPart(3, part => part with { Exposure = [part.Exposure[0], part.Exposure[1] with { Grade = Grade.Guarded }] }),
        ClaimKind.Closed,
        "cooler is called guarded for water, but it is exposed: it would be treated too lightly");

    [Fact]
    public void Is_refused_where_a_loop_is_flushed_through_a_part_that_is_only_looked_at() => Refused(
        WithPart(1, part => part with { Treatment = [TreatmentKind.Inspect] }),
        ClaimKind.Treated,
        "gallery is to be treated by inspection, but no step does so: it would go back without");

    [Fact]
    public void Is_refused_where_a_loop_is_flushed_through_one_part_alone() => Refused(
        Plan with { Steps = Plan.Steps.SetItem(7, Plan.Steps[7] with { Part = "gallery", Parts = [] }) },
        ClaimKind.Treated,
        "rail is to be treated by flushing, but no step does so: it would go back without");

    [Fact]
    public void Is_refused_where_the_way_is_closed_too_early() => Refused(
        Plan with { Steps = Plan.Steps.SetItem(11, Plan.Steps[11] with { Number = 12, Start = 70, Finish = 75, Minutes = 5, Technician = 2, After = [4] }) },
        ClaimKind.Ordered,
        "step 8: gallery is worked on while cover, which is in the way, is on");

    [Fact]
    public void Is_refused_where_the_loop_is_cleaned_part_by_part() => Refused(
        Plan with { Steps = Plan.Steps.SetItem(7, Plan.Steps[7] with { Part = "rail", Parts = [] }) },
        ClaimKind.Ordered,
        "step 7: gallery is cleaned while rail, which leads into it, is still dirty");

    private static PlanDocument TwoDebris(PlanDocument plan) => plan with
    {
        Debris = ["metal", "water"],
        Failed = [new PlanFailure("pump", ["metal", "water"], null)],
        Parts =
        [
            .. plan.Parts.Select(part => part with
            {
                Exposure = [part.Exposure[0], part.Exposure[0] with { Debris = "water", Grade = Grade.Exposed, ReachUm = null }],
            }),
        ],
    };

    private static PlanDocument WithPart(int place, Func<PlanPart, PlanPart> change) => Plan with { Parts = Plan.Parts.SetItem(place, change(Plan.Parts[place])) };

    private static void Refused(PlanDocument plan, ClaimKind claim, string where) =>
        Assert.Equal(where, PlanVerifier.Verify(plan, Family).Claims.Single(other => other.Kind == claim).Where);
}
