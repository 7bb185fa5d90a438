using System.Text.Json;

namespace Contam.Cli.Tests.Findings;

/// <summary>Metal at the drain plug of a reverse gear, to which every way runs through the sump that was called clean.</summary>
public class A_find_behind_a_clean_look
{
    private const string Asked = "systems/families/harbour-reverse-gear.yaml --failed output-gear --debris metal --clean gear-sump --found magnet-plug=metal";
    private const string Told = "clears nothing, because metal was found at drain plug with magnet and cannot have come there from a failed part if every look on its way was right";

    [Fact]
    public void Leaves_nothing_alone_that_the_look_would_have_cleared()
    {
        using var plan = JsonDocument.Parse(CommandSession.Of($"plan {Asked} --format json").Out);
        string[] treated = [.. plan.RootElement.GetProperty("parts").EnumerateArray().Where(part => part.GetProperty("treatment").GetArrayLength() > 0).Select(part => part.GetProperty("id").GetString()!)];

        Assert.Empty(new[] { "gear-sump", "gear-pump", "gear-oil-cooler", "gear-filter" }.Except(treated));
        JsonElement look = plan.RootElement.GetProperty("findings").EnumerateArray().Single(finding => finding.GetProperty("part").GetString() == "gear-sump");
        Assert.Equal((true, false, "magnet-plug"), (look.GetProperty("void").GetBoolean(), look.GetProperty("accepted").GetBoolean(), look.GetProperty("contradictedBy").GetString()));
    }

    [Theory]
    [InlineData("plan", "Housing and oil bath clean of metal; " + Told)]
    [InlineData("plan --format markdown", "Housing and oil bath: clean of metal; " + Told)]
    [InlineData("plan --format html", "clean of metal; " + Told)]
    [InlineData("stop-line", "The clean look at housing and oil bath " + Told)]
    [InlineData("why --part gear-filter", "The clean look at housing and oil bath " + Told)]
    public void Is_told_with_both_places_named(string command, string told)
    {
        string[] words = command.Split(' ', 2);
        string said = CommandSession.Of($"{words[0]} {Asked}{(words.Length > 1 ? " " + words[1] : "")}").Out;

        Assert.Contains(told, string.Join(' ', said.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }
}
