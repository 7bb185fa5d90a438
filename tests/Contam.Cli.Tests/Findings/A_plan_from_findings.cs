using System.Text.Json;

namespace Contam.Cli.Tests.Findings;

public class A_plan_from_findings
{
    private const string Diesel = "systems/families/harbour-diesel-i4.yaml";

    [Fact]
    public void Takes_the_suspects_for_failed_and_says_so()
    {
        CommandSession session = CommandSession.Of($"plan {Diesel} --found rail=metal:200um,grains,magnetic");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.StartsWith(
            """
            Clean-out: from what was found, metal
            Four-cylinder harbour-launch diesel with common-rail injection
            (harbour-diesel-i4)
            """ + "\n",
            session.Out,
            StringComparison.Ordinal);
        Assert.Contains(
            """
            No failed part was named. These suspects of shedding metal count as failed
            (--share 5 %): high-pressure injection pump (
            """,
            session.Out,
            StringComparison.Ordinal);
        Assert.Contains("A lower --share counts more of them.", session.Out.Replace('\n', ' '), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--found rail=metal:200um,grains,magnetic")]
    [InlineData("--found rail=water --found oil-filter=metal,flakes --clean sump=metal")]
    [InlineData("--found oil-filter=metal --found rail=metal --technicians 2")]
    [InlineData("--found charge-hose=metal --share 50%")]
    public void Fits_its_schema_and_is_proved(string words)
    {
        string json = CommandSession.Of($"plan {Diesel} {words} --format json").Out;
        Answers_in_json.AssertFits("plan", json);
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllText(file, json);
            Assert.Equal((0, ""), (CommandSession.Of($"verify {file} {Diesel}").Exit, CommandSession.Of($"verify {file} {Diesel}").Error));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Counts_every_suspect_with_the_share()
    {
        JsonElement from = Plan("--found oil-filter=metal,flakes,not-magnetic --share 6%").GetProperty("fromFindings");
        Assert.Equal(0.06, from.GetProperty("share").GetDouble());
        Assert.Equal(["main-bearing-1", "main-bearing-2", "main-bearing-3", "main-bearing-4", "main-bearing-5", "rod-bearing-1", "rod-bearing-2", "rod-bearing-3", "rod-bearing-4"], from.GetProperty("suspects").EnumerateArray().Select(one => one.GetProperty("part").GetString()));
        double counted = from.GetProperty("suspects").EnumerateArray().Sum(one => one.GetProperty("share").GetDouble());
        Assert.Equal(1, counted + from.GetProperty("notCounted")[0].GetProperty("share").GetDouble(), 6);
    }

    [Fact]
    public void Counts_all_that_account_for_the_finds_where_nobody_has_the_share()
    {
        JsonElement plan = Plan("--found oil-filter=metal,flakes,not-magnetic --share 90%");
        Assert.True(plan.GetProperty("failed").GetArrayLength() > 9);
    }

    [Fact]
    public void Leaves_the_key_out_where_the_failed_part_was_named() =>
        Assert.False(Plan("--failed injection-pump --found rail=metal").TryGetProperty("fromFindings", out _));

    [Fact]
    public void Goes_on_beyond_a_barrier_that_a_find_proves_breached()
    {
        // The filter would have held 120 µm; what was found beyond it is a source itself, so that the tank is exposed.
        CommandSession session = CommandSession.About(Asking_for_suspects.Engine, file => $"plan {file} --found rail=metal:120um --format json");
        using JsonDocument plan = JsonDocument.Parse(session.Out);
        Assert.Equal("exposed", plan.RootElement.GetProperty("parts").EnumerateArray().Single(part => part.GetProperty("id").GetString() == "tank").GetProperty("exposure")[0].GetProperty("grade").GetString());
    }

    [Fact]
    public void Says_so_in_markdown() => Assert.Contains(
        "No failed part was named. These suspects of shedding metal count as failed (--share 5 %): pump (90 %), gear (10 %).",
        CommandSession.About(Asking_for_suspects.Engine, file => $"plan {file} --found rail=metal --format markdown").Out,
        StringComparison.Ordinal);

    [Fact]
    public void Is_refused_where_no_suspect_has_a_way_to_what_was_found()
    {
        CommandSession session = CommandSession.About(Asking_for_suspects.Engine, file => $"plan {file} --found bowl=metal");
        Assert.Equal(
            (2, "", "contam: no part of engine that sheds metal has a way to bowl. Name the failed part with --failed PART, or say in the family file what sheds it and how it gets there.\n"),
            (session.Exit, session.Out, session.Error));
    }

    private static JsonElement Plan(string words) => JsonDocument.Parse(CommandSession.Of($"plan {Diesel} {words} --format json").Out).RootElement;
}
