using Contam.Audits;
using Contam.Families;
using Contam.Problems;
using Contam.Treatment.Reading;
using static Contam.Tests.Audits.Audited;

namespace Contam.Tests.Audits;

/// <summary>An audit tells a fault that was planted in a family, and is silent where it is mended or meant.</summary>
public sealed class A_planted_fault
{
    [Theory]
    [InlineData("return-hose: {kind: hose}", "- [return-hose, sump]", "nothing leads into `return-hose`, and nothing ever reaches it")]
    [InlineData("return-hose: {kind: hose}", "- [motor, return-hose, sump]", null)]
    [InlineData("return-hose: {kind: hose, meant: {on-no-run: blanked off on this build}}", "- [return-hose, sump]", null)]
    public void Of_a_forgotten_joint(string part, string run, string? told) => Assert.Equal(told is null ? [] : [told], Of(Winch(part, run)).Told(AuditCodes.NoWayIn));

    [Fact]
    public void Of_a_forgotten_joint_must_be_mended()
    {
        Audit audit = Of(Winch("return-hose: {kind: hose}", "- [return-hose, sump]"));
        Assert.Equal(1, audit.Errors);
        AuditMessage message = audit.Messages.Single(one => one.Severity == Severity.Error);
        Assert.Equal(("winch", "return-hose", "engine.yaml:11:3"), (message.Family, message.About, message.Place.ToString()));
        Assert.Equal(0, Of(Winch()).Errors);
    }

    [Fact]
    public void Of_a_free_fluid_that_begins_somewhere_is_none() => Assert.Equal(
        [],
        Of(Winch("strainer: {kind: strainer}\n  jacket: {kind: cooler}") + "\n  sea:\n    fluid: sea-water\n    runs: [[strainer, jacket]]\nfluids: {sea-water: {free: true}}\n").Told(AuditCodes.NoWayIn));

    [Fact]
    public void Of_a_part_that_nothing_gets_to() => Assert.Equal(
        ["no failure of another part carries anything to `far-hose`", "no failure of another part carries anything to `far-pipe`", "no failure of another part carries anything to `cooler`"],
        Of(Winch()).Told(AuditCodes.NeverReached));

    [Theory]
    [InlineData("line: {kind: hose, cleared-by: nothing}", "`line` is critical, and nothing shows it to be well after metal")]
    [InlineData("line: {kind: hose, cleared-by: nothing, inspect: {minutes: 5, shows: fair}}", "`line` is critical, and nothing shows it to be well after metal")]
    [InlineData("line: {kind: hose, cleared-by: nothing, inspect: {minutes: 5, shows: good}}", null)]
    [InlineData("line: {kind: hose, cleared-by: nothing, meant: {critical-without-test: seen through when it is flushed}}", null)]
    [InlineData("line: {kind: hose}", null)]
    public void Of_a_critical_part_without_proof(string line, string? told) =>
        Assert.Equal(told is null ? [] : [told], Of(Winch(line: line)).Told(AuditCodes.CriticalWithoutProof));

    [Theory]
    [InlineData("line: {kind: hose}", 3)]
    [InlineData("line: {kind: hose, inspect: {minutes: 5, shows: good}}", 0)]
    [InlineData("line: {kind: hose, inspect: {minutes: 5, shows: fair}}", 3)]
    [InlineData("line: {kind: hose, meant: {nowhere-to-look: seen when it is off}}", 2)]
    [InlineData("line: {kind: hose, cleared-by: nothing}", 2)]
    public void Of_parts_that_no_look_spares(string line, int told) => Assert.Equal(told, Of(Winch(line: line)).Told(AuditCodes.NoLookBefore).Length);

    [Fact]
    public void Of_a_failure_that_reaches_most() =>
        Assert.Equal(["metal from `pump` reaches 4 of 7 parts"], Of(Winch()).Told(AuditCodes.ReachesMost));

    [Fact]
    public void Of_a_repeated_part_is_told_once() => Assert.Equal(
        ["nothing leads into `bleed-#`, and nothing ever reaches it"],
        Of(Winch("bleed-#: {count: 3, kind: pipe}", "- [bleed-#, sump]")).Told(AuditCodes.NoWayIn));

    private const string Drums =
        """
        format: 1
        standard: shop
        kinds: {drum: {about: a drum, removable: true, minutes: {inspect: 5, remove: 10, refit: 10}}}
        debris: {carbon: {has-size: true, hard: false}}
        """;

    [Theory]
    [InlineData("", "", true)]
    [InlineData("", "\nrules: [{for: {kind: drum}, exposed: [inspect], guarded: [inspect], because: a trial}]", false)]
    [InlineData(", meant: {no-rule: nobody ever opens it}", "", false)]
    public void Of_a_kind_without_rule(string meant, string rule, bool isTold)
    {
        Audit audit = Of(Drums + rule, [Winch($"drum: {{kind: drum, sheds: {{carbon: rare}}{meant}}}", "- [motor, drum, bleed, sump]").Replace("parts:", "parts:\n  bleed: {kind: drum" + meant + "}", StringComparison.Ordinal)]);
        Assert.Equal(isTold, audit.Told(AuditCodes.NoRule).Contains("carbon reaches `bleed`, and the standard has no rule for the kind `drum`"));
        Assert.Equal(isTold, audit.Told(AuditCodes.GeneralRule).Contains("metal reaches `bleed`, and only a rule for the debris at large fits the kind `drum`"));
        Assert.DoesNotContain(audit.Told(AuditCodes.NoRule), text => text.StartsWith("metal", StringComparison.Ordinal));
        // The matrix shows the gap whatever is meant.
        Assert.Equal(rule.Length == 0, audit.Matrix.Contains(new AuditCell("drum", "carbon", "winch", false, 2)));
        Assert.Contains(new AuditCell("hydraulic-motor", "metal", "winch", true, 1), audit.Matrix);
    }

    [Theory]
    [InlineData("", "nobody says how long it takes to clean `drum`")]
    [InlineData(", minutes: {clean: 20}", null)]
    public void Of_a_step_without_time(string minutes, string? told) => Assert.Equal(
        told is null ? [] : [told],
        Of(Drums, [Winch($"drum: {{kind: drum{minutes}}}", "- [motor, drum, sump]")]).Told(AuditCodes.StepWithoutTime));

    [Theory]
    [InlineData("send-out: {who: winch workshop}", "nobody says how long it takes to send out `drum`")]
    [InlineData("send-out: {days: 3, who: winch workshop}", null)]
    [InlineData("send-out: {who: winch workshop}, meant: {away-without-days: it hangs on the season}", null)]
    public void Of_a_send_out_without_days(string sent, string? told) => Assert.Equal(
        told is null ? [] : [told],
        Of(Drums + "\nrules: [{for: {kind: drum}, exposed: [clean], guarded: [clean], because: a trial}]", [Winch($"drum: {{kind: drum, minutes: {{clean: 20}}, {sent}}}", "- [motor, drum, sump]")]).Told(AuditCodes.StepWithoutTime));

    [Fact]
    public void Of_a_rule_for_one_part_where_the_kind_is_treated_otherwise()
    {
        string[] families = [Winch(), Winch(id: "crane", parts: "lift: {kind: hydraulic-motor}", runs: "- [line, lift, sump]")];
        Assert.Equal([], Of(families).Told(AuditCodes.TreatedOtherwise));
        string told = Assert.Single(Of("format: 1\nstandard: shop\nrules: [{for: {part: lift}, exposed: [replace], guarded: [replace], because: a trial}]", families).Told(AuditCodes.TreatedOtherwise));
        Assert.StartsWith("exposed to metal, the kind `hydraulic-motor` gets ", told, StringComparison.Ordinal);
        Assert.EndsWith("; replace in crane (lift, shop.yaml:3)", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Leaves_the_costliest_failures_with_each_repeated_part_once()
    {
        Audit audit = Of(Winch("jet-#: {count: 3, kind: nozzle, sheds: {metal: rare}}\n  drain: {kind: pipe, sheds: {rubber: rare}}", "- [pump, jet-#, sump]\n      - [sump, drain]"));
        Assert.Equal(5, audit.Failures.Length);
        Assert.Equal(audit.Costliest.Select(failure => failure.BenchHours).OrderDescending(), audit.Costliest.Select(failure => failure.BenchHours));
        Assert.Equal(["drain", "jet-1", "pump"], audit.Costliest.Select(failure => failure.Part).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Of_a_plan_that_is_refused()
    {
        Family family = Family(Winch());
        FailureRun run = FailureRun.Of(family, BuiltInStandards.HouseOverKinds, family.Parts[1], Debris.Metal);
        Assert.Null(run.Refused);
        AuditMessage message = new FamilyAudit(family, [run with { Refused = "step 3: line is refitted dirty" }]).Messages().First();
        Assert.Equal((Severity.Error, "plan-refused", "pump metal"), (message.Severity, message.Code, message.About));
        Assert.Equal("the plan for metal from `pump` is refused: step 3: line is refitted dirty", message.Text);
    }
}
