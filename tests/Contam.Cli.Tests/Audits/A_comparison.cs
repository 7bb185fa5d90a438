using System.Text.Json;

namespace Contam.Cli.Tests.Audits;

/// <summary>Families and standards side by side.</summary>
public sealed class A_comparison
{
    private const string Winch =
        """
        format: 1
        family: winch
        parts:
          sump: {kind: sump}
          pump: {kind: pump, sheds: {metal: common, rubber: rare}}
          motor: {kind: hydraulic-motor}
          drain: {kind: pipe}
        circuits: {oil: {runs: [[sump, pump, motor, sump]]}}
        """;

    private const string Shop =
        """
        format: 1
        standard: shop
        rules: [{for: {kind: hydraulic-motor, debris: metal}, exposed: [test], guarded: [test], because: a trial}]
        """;

    [Fact]
    public void Of_two_versions_of_a_family_names_the_joint()
    {
        using Folder folder = Files();
        CommandSession session = CommandSession.Of($"compare {folder.At("old.yaml")} {folder.At("new.yaml")} --failed pump --debris metal", width: 400);
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Contains("The same: sump, pump, motor\n", session.Out, StringComparison.Ordinal);
        Assert.Contains($"  - drain: not reached | inspect, flush\n      winch has no joint `motor` to `drain` ({folder.At("new.yaml")}:8)\n", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_failure_goes_through_all_that_both_have()
    {
        using Folder folder = Files();
        string json = CommandSession.Of($"compare {folder.At("old.yaml")} {folder.At("new.yaml")} --format json").Out;
        Answers_in_json.AssertFits("compare", json);
        using JsonDocument answer = JsonDocument.Parse(json);
        Assert.Equal((2, 2), (answer.RootElement.GetProperty("compared").GetInt32(), answer.RootElement.GetProperty("changed").GetInt32()));
        using JsonDocument metal = JsonDocument.Parse(CommandSession.Of($"compare {folder.At("old.yaml")} {folder.At("new.yaml")} --debris metal --format json").Out);
        Assert.Equal(1, metal.RootElement.GetProperty("compared").GetInt32());
    }

    [Fact]
    public void In_parallel_is_that_of_one_core_to_the_byte()
    {
        const string words = "compare systems/families/harbour-reverse-gear.yaml systems/families/outboard-gearcase.yaml --format json";
        string one = CommandSession.Of(words + " --jobs 1").Out;
        Answers_in_json.AssertFits("compare", one);
        Assert.Equal(one, CommandSession.Of(words + " --jobs 4").Out);
    }

    [Fact]
    public void In_markdown_is_a_table_a_plan()
    {
        using Folder folder = Files();
        string page = CommandSession.Of($"compare {folder.At("old.yaml")} {folder.At("new.yaml")} --failed pump --debris metal --format markdown").Out;
        Assert.Contains("\n| parts | ", page, StringComparison.Ordinal);
        Assert.Contains("\n| drain | not reached | inspect, flush | winch has no joint ", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_family_beside_a_standard_and_a_part_that_one_has_not()
    {
        using Folder folder = Files();
        Assert.Equal((2, "contam: house is a standard and " + folder.At("old.yaml") + " is none. Name two families or two standards.\n"), Refused($"compare house {folder.At("old.yaml")}"));
        File.WriteAllText(folder.At("other.yaml"), Winch.Replace("pump", "lift", StringComparison.Ordinal).Replace("kind: lift", "kind: pump", StringComparison.Ordinal));
        (int exit, string error) = Refused($"compare {folder.At("old.yaml")} {folder.At("other.yaml")} --failed pump --debris metal");
        Assert.Equal(2, exit);
        Assert.StartsWith("contam: there is no part pump in winch.", error, StringComparison.Ordinal);
        Assert.Equal(2, Refused($"compare house {folder.At("shop.yaml")} --failed pump").Exit);
    }

    [Fact]
    public void Of_a_changed_standard_counts_plans_and_hours_and_names_the_rules()
    {
        using Folder folder = Files();
        CommandSession session = CommandSession.Of($"standard diff house {folder.At("shop.yaml")} {folder.At("old.yaml")}", width: 400);
        Assert.Equal(0, session.Exit);
        Assert.Matches(@"\n2 failures compared; 1 plan differs; the bench hours by [+−][0-9.]+ in all(; 1 plan worded otherwise)?\.\n", session.Out);
        Assert.Matches($@"\n  - motor: [a-z, ]+ \| test\n      the first by house\.yaml:[0-9]+, the second by .*shop\.yaml:3\n", session.Out);
    }

    [Fact]
    public void Of_a_changed_share_tells_the_hours_to_be_expected()
    {
        using Folder folder = Files();
        File.WriteAllText(folder.At("shop.yaml"), "format: 1\nstandard: shop\npasses-on: [{for: {kind: hose}, share: 0.05}, {for: {kind: pipe}, share: 0.05}]\n");
        using JsonDocument answer = JsonDocument.Parse(CommandSession.Of($"standard diff house {folder.At("shop.yaml")} systems/families/harbour-diesel-i4.yaml --format json").Out);
        JsonElement[] changed = [.. answer.RootElement.GetProperty("failures").EnumerateArray().Where(one => one.GetProperty("changed").GetBoolean())];
        Assert.NotEmpty(changed);
        // A share chooses looks and never a treatment.
        Assert.All(changed, one => Assert.Equal(0, one.GetProperty("parts").GetArrayLength()));
        Assert.Contains(changed, one => one.GetProperty("benchExpected").GetProperty("first").GetDouble() != one.GetProperty("benchExpected").GetProperty("second").GetDouble());
    }

    [Fact]
    public void Of_a_standard_with_itself_changes_no_plan()
    {
        CommandSession session = CommandSession.Of("standard diff house house systems/families/outboard-gearcase.yaml systems/families/harbour-reverse-gear.yaml");
        Assert.Equal(0, session.Exit);
        Assert.Matches(@"^house against house\n[0-9]+ failures compared; no plan differs\.\n$", session.Out);
    }

    [Fact]
    public void Of_two_standards_by_either_command_is_the_same()
    {
        Assert.SkipUnless(LongRun.IsAsked, "CONTAM_EVERY_FAILURE is not set");
        using Folder folder = Files();
        string compared = CommandSession.Of($"compare house {folder.At("shop.yaml")} --format json").Out;
        Answers_in_json.AssertFits("compare", compared);
        Assert.Equal(compared, CommandSession.Of($"standard diff house {folder.At("shop.yaml")} --format json").Out);
    }

    private static (int Exit, string Error) Refused(string words)
    {
        CommandSession session = CommandSession.Of(words);
        Assert.Equal("", session.Out);
        return (session.Exit, session.Error);
    }

    private static Folder Files()
    {
        var folder = new Folder();
        File.WriteAllText(folder.At("old.yaml"), Winch);
        File.WriteAllText(folder.At("new.yaml"), Winch.Replace("motor, sump]]", "motor, sump], [motor, drain]]", StringComparison.Ordinal));
        File.WriteAllText(folder.At("shop.yaml"), Shop);
        return folder;
    }
}
