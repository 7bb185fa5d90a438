using System.Text.Json;
using Contam.Support;
using Json.Schema;

namespace Contam.Cli.Tests.Check;

/// <summary><c>check --format sarif</c>, held against the published schema; where that comes from stands in <c>Assets/README.md</c>.</summary>
public class As_sarif
{
    private const string Engine = """
        format: 1
        family: engine
        parts:
          tank: {kind: tank, inspect: {minutes: 5}}
          pump: {kind: pump, sheds: {metal: common}}
          hose: {kind: hose}
        circuits:
          fuel:
            fluid: diesel
            runs:
              - [tank, pump, tank]
              - [pump, hose]
        fluids: {diesel: {}}
        """;

    private static readonly JsonSchema Published = JsonSchema.FromText(
        // The library reads drafts from 6 on. What this schema uses means the same in draft 7, but for the name of its own id.
        File.ReadAllText(RepositoryFiles.At("tests/Contam.Cli.Tests/Assets/sarif-2.1.0-rtm.5.json"))
            .Replace("http://json-schema.org/draft-04/schema#", "http://json-schema.org/draft-07/schema#", StringComparison.Ordinal)
            .Replace("\n    \"id\": \"https://raw", "\n    \"$id\": \"https://raw", StringComparison.Ordinal));

    public static TheoryData<string> Texts => new()
    {
        Engine,
        Engine.Replace("kind: hose", "kind: hoes, colour: red", StringComparison.Ordinal),
        Engine.Replace("  hose: {kind: hose}", "  hose: {kind: hose}\n  hose: {kind: hose}", StringComparison.Ordinal),
        "format: 1\nfamily: [engine\nparts: {}\n",
        "",
        "parts: {\"a\\u0007 </script> <b>\": {kind: \"\\u202E\"}}",
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Fits_the_published_schema(string text) => AssertFits(CommandSession.About(text, file => $"check {file} --format sarif").Out);

    [Fact]
    public void Fits_it_where_there_is_nothing_to_say_and_where_a_file_is_missing()
    {
        CommandSession clean = CommandSession.Of("check systems/families/harbour-diesel-i4.yaml --format sarif");
        Assert.Equal((0, ""), (clean.Exit, clean.Error));
        AssertFits(clean.Out);
        CommandSession missing = CommandSession.Of("check no-such-file.yaml --format sarif");
        Assert.Equal((2, ""), (missing.Exit, missing.Error));
        AssertFits(missing.Out);
    }

    [Fact]
    public void Does_not_fit_it_when_it_is_spoilt()
    {
        string log = CommandSession.About(Engine, file => $"check {file} --format sarif").Out;
        Assert.False(IsValid(log.Replace("\"startColumn\": 3", "\"startColumn\": 0", StringComparison.Ordinal)));
        Assert.False(IsValid(log.Replace("\"level\": \"warning\"", "\"level\": \"grave\"", StringComparison.Ordinal)));
        Assert.False(IsValid(log.Replace("\"message\"", "\"massage\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void Says_place_rule_and_mend()
    {
        using JsonDocument log = JsonDocument.Parse(CommandSession.About(Engine, file => $"check {file} --format sarif").Out);
        JsonElement run = log.RootElement.GetProperty("runs")[0];
        JsonElement[] results = [.. run.GetProperty("results").EnumerateArray()];
        JsonElement end = Assert.Single(results);
        Assert.Equal("dead-end", end.GetProperty("ruleId").GetString());
        Assert.Equal(
            "a run of `fuel` ends at `hose`, and fluid cannot end in a hose. Write where it goes from there: a return, a drain, a leak-off",
            end.GetProperty("message").GetProperty("text").GetString());
        JsonElement place = end.GetProperty("locations")[0].GetProperty("physicalLocation");
        Assert.Equal("engine.yaml", place.GetProperty("artifactLocation").GetProperty("uri").GetString());
        Assert.Equal((6, 3), (place.GetProperty("region").GetProperty("startLine").GetInt32(), place.GetProperty("region").GetProperty("startColumn").GetInt32()));
        JsonElement rule = run.GetProperty("tool").GetProperty("driver").GetProperty("rules")[end.GetProperty("ruleIndex").GetInt32()];
        Assert.Equal("dead-end", rule.GetProperty("id").GetString());
        Assert.Contains("`meant: {dead-end: the drain ends over the side}`", rule.GetProperty("help").GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("engine.yaml")]
    [InlineData("missing.yaml")]
    public void Names_no_folder_of_the_machine(string asked)
    {
        // The session's own helper would take the folder out of what is answered.
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            // A part that is described twice is told with the place of the first in its text.
            File.WriteAllText(
                Path.Combine(folder.FullName, "engine.yaml"),
                Engine.Replace("  hose: {kind: hose}", "  hose: {kind: hose}\n  hose-1: {kind: hose}\n  hose-#: {kind: hose, count: 2}", StringComparison.Ordinal));
            string log = CommandSession.Of(["check", Path.Combine(folder.FullName, asked), "--format", "sarif"]).Out;
            AssertFits(log);
            Assert.DoesNotContain(folder.Name[..12], log, StringComparison.Ordinal);
            Assert.DoesNotContain("`/", log, StringComparison.Ordinal);
            if (asked == "engine.yaml")
                Assert.Contains("is described twice, first at engine.yaml:7:3", log, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Shows_a_file_below_the_folder_of_the_call_from_there()
    {
        string file = RepositoryFiles.At("systems/README.md");
        string relative = CommandSession.Of("check systems/README.md --format sarif").Out;
        Assert.Contains("\"uri\": \"systems/README.md\"", relative, StringComparison.Ordinal);
        Assert.Equal(relative, CommandSession.Of(["check", file, "--format", "sarif"]).Out);
    }

    [Fact]
    public void Escapes_what_no_uri_may_hold()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            string file = Path.Combine(folder.FullName, "a b#c%ü.yaml");
            File.WriteAllText(file, "format: 2\nfamily: f\n");
            string log = CommandSession.Of(["check", file, "--format", "sarif"]).Out;
            AssertFits(log);
            Assert.Contains("\"uri\": \"a%20b%23c%25%C3%BC.yaml\"", log, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Says_in_what_it_counts_columns()
    {
        string log = CommandSession.About("format: 1\nfamily: f\nparts: {\"😀\": {kind: hose}, pump: {kind: pmup}}\n", file => $"check {file} --format sarif").Out;
        using JsonDocument document = JsonDocument.Parse(log);
        JsonElement result = document.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().Single(one => one.GetProperty("ruleId").GetString() == "unknown-kind");
        // parts: {"😀": {kind: hose}, pump: {kind: pmup}} — counted by hand: `pmup` is the 41st character, and the one in the quotes takes two units of 16 bits.
        Assert.Equal("utf16CodeUnits", document.RootElement.GetProperty("runs")[0].GetProperty("columnKind").GetString());
        Assert.Equal(42, result.GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("region").GetProperty("startColumn").GetInt32());
    }

    private static void AssertFits(string log)
    {
        using JsonDocument document = JsonDocument.Parse(log);
        EvaluationResults results = Published.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        string[] faults = [.. (results.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))];
        Assert.True(results.IsValid, string.Join('\n', faults));
    }

    private static bool IsValid(string log)
    {
        using JsonDocument document = JsonDocument.Parse(log);
        return Published.Evaluate(document.RootElement).IsValid;
    }
}
