using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>Where a clean finding counts, the evidence stands twice: with it and without, and a critical part keeps to the latter.</summary>
public class A_plan_with_clean_findings
{
    private static readonly Family Family = CaseReader.System("pump > screen[inplace look=good] > gallery[inplace] > bearing[critical]");

    private static readonly PlanReach[] Without =
    [
        new("pump", null, "pump", null), new("screen", null, "pump", "pump"), new("gallery", null, "pump", "screen"), new("bearing", null, "pump", "gallery"),
    ];

    private static readonly PlanReach[] With =
    [
        Without[0], Without[1], Without[2] with { ReachUm = 0 }, Without[3] with { ReachUm = 0 },
    ];

    private static readonly PlanDocument Plan = BenchPlan.Of(
        Family,
        "pump",
        """
        pump replace
        screen - cleared any pump
        gallery - cleared 0 screen
        bearing clean exposed any gallery
        """,
        """
        safe
        look pump
        remove pump
        remove bearing
        replace pump
        clean bearing
        refit pump
        refit bearing
        prove
        """)
        with
    {
        Findings = [new PlanFinding { Part = "screen", Debris = "metal", Accepted = true }],
        Evidence = [new PlanEvidence("metal", true, [.. With]), new PlanEvidence("metal", false, [.. Without])],
    };

    [Fact]
    public void Holds() => Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(Plan, Family).Claims.Select(claim => claim.Where));

    [Fact]
    public void Holds_with_its_evidence_the_other_way_round() =>
        Assert.True(PlanVerifier.Verify(Plan with { Evidence = [Plan.Evidence!.Value[1], Plan.Evidence.Value[0]] }, Family).Holds);

    [Fact]
    public void Is_refused_without_its_evidence() => Refused(
        Plan with { Evidence = null },
        ClaimKind.Closed,
        "gallery is said to be reached by metal of no size at all, but screen lets any size into it: it would be taken too lightly");

    [Fact]
    public void Is_refused_where_nobody_looked() => Refused(
        Plan with { Findings = [] },
        ClaimKind.Closed,
        "gallery is said to be reached by metal of no size at all, but screen lets any size into it: it would be taken too lightly");

    [Fact]
    public void Is_refused_where_the_finding_is_not_accepted() => Refused(
        Plan with { Findings = [Plan.Findings[0] with { Accepted = false }] },
        ClaimKind.Closed,
        "gallery is said to be reached by metal of no size at all, but screen lets any size into it: it would be taken too lightly");

    [Fact]
    public void Is_refused_where_debris_was_found_there_too() => Refused(
        Plan with { Findings = Plan.Findings.Add(new PlanFinding { Part = "screen", Debris = "metal", Found = true }) },
        ClaimKind.Closed,
        "the clean finding at screen may not count, as metal was found there too: what lies beyond it would be left as it is");

    [Fact]
    public void Is_refused_where_the_part_itself_has_failed() => Refused(
        Plan with { Failed = [.. Plan.Failed, new PlanFailure("screen", ["metal"], null)] },
        ClaimKind.Closed,
        "the clean finding at screen may not count, as the part has failed: what lies beyond it would be left as it is");

    [Fact]
    public void Is_refused_where_a_critical_part_is_cleared() => Refused(
        WithLine(3, line => line with { Grade = Grade.Cleared }),
        ClaimKind.Closed,
        "bearing is called cleared for metal, but it is exposed: it would be treated too lightly");

    [Fact]
    public void Is_refused_where_a_critical_part_takes_a_clean_finding_for_its_reach() => Refused(
        WithLine(3, line => line with { ReachUm = 0 }),
        ClaimKind.Closed,
        "what the plan lists for bearing is not what its evidence for metal says: one of the two would be worked by and the other relied on");

    [Fact]
    public void Is_refused_where_a_cleared_part_has_another_reach_than_its_evidence() => Refused(
        WithLine(2, line => line with { ReachUm = null }),
        ClaimKind.Closed,
        "what the plan lists for gallery is not what its evidence for metal says: one of the two would be worked by and the other relied on");

    [Fact]
    public void Is_refused_where_the_evidence_without_findings_is_too_narrow() => Refused(
        Plan with { Evidence = [Plan.Evidence!.Value[0], new PlanEvidence("metal", false, [.. Without[..2], .. With[2..]])] },
        ClaimKind.Closed,
        "gallery is said to be reached by metal of no size at all, but screen lets any size into it: it would be taken too lightly");

    [Fact]
    public void Is_refused_where_the_evidence_with_findings_is_too_wide() => Refused(
        Plan with { Evidence = [new PlanEvidence("metal", true, [.. Without]), Plan.Evidence!.Value[1]] },
        ClaimKind.Grounded,
        "gallery is said to be reached by metal of any size through screen, but that lets only no size at all on: the way that it came by would be missed");

    [Fact]
    public void Is_refused_where_the_evidence_leaves_a_part_out() => Refused(
        Plan with { Evidence = [Plan.Evidence!.Value[0], new PlanEvidence("metal", false, [.. Without[..3]])] },
        ClaimKind.Closed,
        "bearing is left out, though gallery leads into it: metal would stay in it");

    [Fact]
    public void Is_refused_where_the_evidence_with_findings_leaves_a_part_out() => Refused(
        Plan with { Evidence = [new PlanEvidence("metal", true, [.. With[..3]]), Plan.Evidence!.Value[1]] },
        ClaimKind.Closed,
        "bearing is left out, though gallery leads into it: metal would stay in it");

    [Fact]
    public void Is_refused_where_the_evidence_without_findings_has_a_hop_over_no_joint() => Refused(
        Plan with { Evidence = [Plan.Evidence!.Value[0], new PlanEvidence("metal", false, [.. Without[..2], Without[2] with { Via = "pump" }, Without[3]])] },
        ClaimKind.Grounded,
        "the metal in gallery is said to come through pump, but nothing leads from there into it: the way to it cannot be followed");

    // The clean finding turns the widest way to the bearing, and the bearing, being critical, does not follow.
    [Fact]
    public void Shows_a_critical_part_the_way_that_it_would_have_without_findings()
    {
        Family family = CaseReader.System("pump > screen[look=good] > bearing[critical]; pump > pipe >(5)> bearing");
        PlanDocument plan = BenchPlan.Of(
            family,
            "pump",
            "pump clean; screen - cleared any pump; bearing clean exposed any screen; pipe clean exposed any pump",
            "safe; look pump; remove pump; remove bearing; remove pipe; clean pump; clean bearing; clean pipe; refit pump; refit pipe; refit bearing; prove")
            with
        {
            Findings = [new PlanFinding { Part = "screen", Debris = "metal", Accepted = true }],
            Evidence =
            [
                new PlanEvidence("metal", true, [new("pump", null, "pump", null), new("screen", null, "pump", "pump"), new("bearing", 5, "pump", "pipe"), new("pipe", null, "pump", "pump")]),
                new PlanEvidence("metal", false, [new("pump", null, "pump", null), new("screen", null, "pump", "pump"), new("bearing", null, "pump", "screen"), new("pipe", null, "pump", "pump")]),
            ],
        };

        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(plan, family).Claims.Select(claim => claim.Where));
        Assert.Equal(
            "the path shown for bearing is not the way that its hops tell: who followed it would look in the wrong places",
            PlanVerifier.Verify(plan with { Parts = plan.Parts.SetItem(2, plan.Parts[2] with { Path = ["pump", "pipe", "bearing"] }) }, family).Claims[1].Where);
    }

    private static PlanDocument WithLine(int place, Func<PlanExposure, PlanExposure> change)
    {
        PlanPart part = Plan.Parts[place];
        return Plan with { Parts = Plan.Parts.SetItem(place, part with { Exposure = [change(part.Exposure[0])] }) };
    }

    private static void Refused(PlanDocument plan, ClaimKind claim, string where) =>
        Assert.Equal(where, PlanVerifier.Verify(plan, Family).Claims.Single(other => other.Kind == claim).Where);
}
