using System.Text.Json;

namespace Contam.Cli.Tests;

/// <summary>Sessions of <c>contam looks</c>.</summary>
public class Deciding_looks
{
    private const string Gear = "looks systems/families/harbour-reverse-gear.yaml --failed output-gear --debris metal";
    private const string Diesel = "looks systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal";

    [Fact]
    public void Lead_with_what_is_sure_and_say_for_each_outcome_what_to_do()
    {
        CommandSession session = CommandSession.Of(Diesel);

        Assert.Equal((0, ""), (session.Exit, session.Error));
        string[] lines = session.Out.Split('\n');
        Assert.StartsWith("SURE           8 parts, 7.9 h", lines[3], StringComparison.Ordinal);
        Assert.StartsWith("BY THE LOOKS   30 parts more, at most ", lines[4], StringComparison.Ordinal);
        Assert.Contains("LOOK A  Return hose to the tank (10 min): take it off at the tank and run half a\n        litre into a clear jar\n        Clean: strike A. Metal found, or in doubt: do the work marked A as well,", session.Out, StringComparison.Ordinal);
        Assert.Contains("  A         Fuel tank: inspect, clean\n", session.Out, StringComparison.Ordinal);
    }

    // An injector that dribbles holes a piston: it is cleaned whatever is seen.
    [Fact]
    public void Never_spare_an_injector() => Assert.Contains("  sure      Injector 1–4: clean, test\n", CommandSession.Of(Diesel).Out, StringComparison.Ordinal);

    [Fact]
    public void Are_none_in_the_flat_answer_and_all_of_it_is_sure()
    {
        JsonElement flat = Json($"{Gear} --looks 0");
        JsonElement full = Json(Gear);

        Assert.Empty(flat.GetProperty("looks").EnumerateArray());
        Assert.All(flat.GetProperty("parts").EnumerateArray(), part => Assert.Empty(part.GetProperty("onlyIf").EnumerateArray()));
        Assert.Equal(Ids(full), Ids(flat));
        Assert.Equal(full.GetProperty("minutes").GetProperty("withoutLooking").GetDouble(), flat.GetProperty("minutes").GetProperty("most").GetDouble());
        Assert.True(full.GetProperty("minutes").GetProperty("allClean").GetDouble() < flat.GetProperty("minutes").GetProperty("most").GetDouble());
    }

    [Fact]
    public void Are_those_that_were_named()
    {
        JsonElement answer = Json($"{Diesel} --look-at rail");

        JsonElement look = Assert.Single(answer.GetProperty("looks").EnumerateArray());
        Assert.Equal("rail", Assert.Single(look.GetProperty("places").EnumerateArray()).GetString());
        Assert.Equal("named", answer.GetProperty("chosen").GetString());
    }

    [Fact]
    public void Are_no_looks_any_more_where_somebody_has_looked()
    {
        JsonElement answer = Json($"{Diesel} --clean rail");

        Assert.DoesNotContain(answer.GetProperty("looks").EnumerateArray(), look => look.GetProperty("places").EnumerateArray().Any(place => place.GetString() == "rail"));
        // A find further on would speak against the clean rail, so what it spares hangs on the looks that are left.
        JsonElement turbine = answer.GetProperty("parts").EnumerateArray().Single(part => part.GetProperty("id").GetString() == "turbo-turbine");
        Assert.True(turbine.GetProperty("cleared").GetBoolean() || turbine.GetProperty("onlyIf").GetArrayLength() > 0);
    }

    [Theory]
    [InlineData("--looks 99", "contam: --looks: 0 to 16 was expected, got 99.\n")]
    [InlineData("--looks -1", "contam: --looks: 0 to 16 was expected, got -1.\n")]
    [InlineData("--look-at rial", "contam: --look-at: harbour-diesel-i4 has no part `rial`. `contam parts` lists them.\n")]
    [InlineData("--look-at injection-pump", "contam: --look-at: a look at injection-pump decides nothing: it is the failed part. Name other places, or leave the option out to have them chosen.\n")]
    public void Say_what_is_wrong_with_the_question(string words, string told)
    {
        CommandSession session = CommandSession.Of($"{Diesel} {words}");

        Assert.Equal((2, "", told), (session.Exit, session.Out, session.Error));
    }

    [Theory]
    [InlineData("--looks 99", "contam: --looks: 0 to 16 was expected, got 99.\n")]
    [InlineData("--look-at injection-pump", "contam: --look-at: a look at injection-pump decides nothing: it is the failed part. Name other places, or leave the option out to have them chosen.\n")]
    public void Of_a_plan_say_what_is_wrong_with_the_question(string words, string told)
    {
        CommandSession session = CommandSession.Of($"plan{Diesel["looks".Length..]} {words}");

        Assert.Equal((2, "", told), (session.Exit, session.Out, session.Error));
    }

    // A find counts for more than a clean look, and whoever told both is told so.
    [Fact]
    public void With_two_outcomes_at_one_place_count_as_a_find()
    {
        JsonElement both = Json($"{Diesel} --clean rail --found rail=metal");
        JsonElement find = Json($"{Diesel} --found rail=metal");

        Assert.Equal(Treated(find), Treated(both));

        static string[] Treated(JsonElement answer) => [.. answer.GetProperty("parts").EnumerateArray().Select(part => part.GetRawText())];
    }

    private static JsonElement Json(string words) => JsonDocument.Parse(CommandSession.Of($"{words} --format json").Out).RootElement;

    private static string?[] Ids(JsonElement answer) => [.. answer.GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("id").GetString())];
}
