using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>Two looks in a row that are both made in any case: a find at the second disproves that the first was clean, and where the second comes first, settles it.</summary>
public class Looks_that_speak_against_each_other
{
    private static readonly Family Family = CaseReader.System("pump > screen[inplace look=good] > gallery[inplace] > port[inplace look=good] > tank[inplace]");

    private const string Parts = """
        pump replace
        screen inspect+clean exposed any pump
        gallery clean exposed any screen
        port inspect+clean exposed any gallery
        tank clean exposed any port
        """;

    private const string Steps = """
        safe
        look pump
        remove pump
        inspect screen
        inspect port
        replace pump
        clean screen onlyif=A
        clean gallery onlyif=A
        clean port onlyif=B
        clean tank onlyif=B
        refit pump
        prove
        """;

    private static readonly PlanDocument InTheOrderOfTheFlow = BranchingPlan.Of(Family, "pump", "A screen 4; B port 5", "gallery A; tank B", Parts, Steps);

    private static readonly PlanDocument AgainstTheFlow = BranchingPlan.Of(
        Family,
        "pump",
        "A port 4; B screen 5",
        "gallery B; tank A",
        Parts,
        Steps.Replace("inspect screen\ninspect port", "inspect port\ninspect screen", StringComparison.Ordinal)
            .Replace("screen onlyif=A", "screen onlyif=B", StringComparison.Ordinal).Replace("gallery onlyif=A", "gallery onlyif=B", StringComparison.Ordinal)
            .Replace("port onlyif=B", "port onlyif=A", StringComparison.Ordinal).Replace("tank onlyif=B", "tank onlyif=A", StringComparison.Ordinal));

    [Fact]
    public void Have_a_void_outcome_where_the_first_was_clean()
    {
        Holds(InTheOrderOfTheFlow, histories: 4);
        Refused(InTheOrderOfTheFlow, "gallery", unless: "B", "with A void, B found: gallery needs cleaning, but no step that is done does so: it would go back without");
    }

    [Fact]
    public void Have_a_settled_outcome_where_the_second_finds_debris_first()
    {
        Holds(AgainstTheFlow, histories: 3);
        Refused(AgainstTheFlow, "gallery", unless: "A", "with A found, B settled: gallery needs cleaning, but no step that is done does so: it would go back without");
    }

    // What is on record as clean clears what lies beyond it only as long as no look finds anything there.
    [Fact]
    public void Void_what_is_on_record()
    {
        PlanReach[] without = [new("pump", null, "pump", null), new("screen", null, "pump", "pump"), new("gallery", null, "pump", "screen"), new("port", null, "pump", "gallery"), new("tank", null, "pump", "port")];
        PlanDocument plan = BranchingPlan.Of(
            Family,
            "pump",
            "A port 4",
            "screen A; gallery A; tank A",
            """
            pump replace
            screen clean cleared any pump
            gallery clean cleared 0 screen
            port inspect+clean cleared 0 gallery
            tank clean cleared 0 port
            """,
            """
            safe
            look pump
            remove pump
            inspect port
            replace pump
            clean screen onlyif=A
            clean gallery onlyif=A
            clean port onlyif=A
            clean tank onlyif=A
            refit pump
            prove
            """)
            with
        {
            Findings = [new PlanFinding { Part = "screen", Debris = "metal", Accepted = true }],
            Evidence = [new PlanEvidence("metal", true, [without[0], without[1], .. without[2..].Select(line => line with { ReachUm = 0 })]), new PlanEvidence("metal", false, [.. without])],
        };

        Holds(plan, histories: 2);
        Refused(plan, "screen", unless: "A", "with A found: screen needs cleaning, but no step that is done does so: it would go back without");
        Refused(plan, "gallery", unless: "A", "with A found: gallery needs cleaning, but no step that is done does so: it would go back without");
    }

    [Fact]
    public void Are_followed_up_to_so_many_outcomes()
    {
        // Eight looks side by side have 256 histories, nine have 512; seventeen are too many looks.
        Assert.Equal(256, Beside(8).Histories);
        Assert.True(Beside(8).Holds, Beside(8).Claims.FirstOrDefault(claim => !claim.Holds)?.Where);
        Assert.All(Beside(9).Claims.Take(4), claim => Assert.True(claim.Kind == ClaimKind.Grounded || claim.Where == "its looks can come out in more than 256 ways: they cannot all be played", claim.Where));
        Assert.Equal("the plan has 17 looks, and at most 16 can be followed: make it with fewer", Beside(17).Claims[(int)ClaimKind.Ordered].Where);
    }

    private static Verification Beside(int looks)
    {
        string[] ports = [.. Enumerable.Range(1, looks).Select(number => $"port{number}")];
        Family family = CaseReader.System(string.Join(';', ports.Select(port => $"pump > {port}[inplace look=good]")));
        string letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        PlanDocument plan = BranchingPlan.Of(
            family,
            "pump",
            string.Join(';', ports.Select((port, look) => $"{letters[look]} {port} {look + 4}")),
            "",
            string.Join(';', ports.Select(port => $"{port} inspect+clean exposed any pump").Prepend("pump replace")),
            string.Join(';', ["safe", "look pump", "remove pump", .. ports.Select(port => $"inspect {port}"), "replace pump", .. ports.Select((port, look) => $"clean {port} onlyif={letters[look]}"), "refit pump", "prove"]));
        return PlanVerifier.Verify(plan, family);
    }

    private static void Holds(PlanDocument plan, int histories)
    {
        Verification verification = PlanVerifier.Verify(plan, Family);
        Assert.Equal([null, null, null, null, null], verification.Claims.Select(claim => claim.Where));
        Assert.Equal(histories, verification.Histories);
    }

    private static void Refused(PlanDocument plan, string cleaned, string unless, string where)
    {
        PlanDocument struck = plan with { Steps = [.. plan.Steps.Select(step => step.Action == StepAction.Clean && step.Part == cleaned ? step with { Unless = [unless] } : step)] };
        Assert.Equal(where, PlanVerifier.Verify(struck, Family).Claims[(int)ClaimKind.Treated].Where);
    }
}
