using System.Text.Json;

namespace Contam.Cli.Tests.Findings;

public class Asking_for_suspects
{
    internal const string Engine = """
        format: 1
        family: engine
        parts:
          pump: {kind: pump, sheds: {metal: {likely: common, up-to: 400 um, magnetic: true, form: grains}}}
          gear: {kind: gear, sheds: {metal: {likely: rare, magnetic: true, form: slivers}}}
          filter: {kind: filter, holds: {metal: 30 um}, rating: absolute, inspect: {minutes: 10, shows: good, how: cut it open}}
          rail: {kind: rail, inspect: {minutes: 20, shows: good}}
          tank: {kind: tank, inspect: {minutes: 5, shows: fair}}
          bowl: {kind: separator, inspect: {minutes: 5, shows: good}}
        circuits:
          oil:
            runs:
              - [pump, filter, rail, tank]
              - [gear, rail]
          fuel:
            runs:
              - [bowl]
        """;

    [Fact]
    public void Says_who_why_and_where_to_look()
    {
        // Worked by hand: gear 1 × 0.9 × 0.4, pump 9 × 0.01 × 1; at the filter 0.2 × 0.9 + 0.8 × 0.0099.
        CommandSession session = CommandSession.About(Engine, file => $"suspects {file} --found rail=metal:120um,slivers --clean tank");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Equal(
            """
            Where it comes from: metal
            engine

            WHAT WAS SEEN
              Rail                        metal found (120 µm, slivers)
              Tank                        clean of metal

            SUSPECTS
              80 %           Gear. It seldom sheds metal. Metal was found at rail, and its
                             metal gets there, pieces of 120 µm too. Tank was clean, where
                             its metal would have come; a look there shows it fairly well.
              20 %           Pump. It is a usual source of metal. Metal was found at rail,
                             but a barrier on every way there lets on 30 µm at most, and
                             these pieces were 120 µm. Tank was clean, but a barrier stands
                             before it, so that this says nothing.

            WHERE TO LOOK NEXT
              Filter                      10 min; tells 0.539 bits, 0.0539 a minute; found
                                          there with a chance of 18.8 %

            LOOKING PLAN
              No other plan takes less time: 10 min of looking are to be expected. It ends
              where one suspect has 90 % or more, or no look is left that tells anything
              much.
                look at filter, 10 min
                  found: it is pump (95.7 %)
                  clean: it is gear (97.6 %)

            """,
            session.Out);
    }

    [Fact]
    public void Gives_shares_that_add_to_one_as_json()
    {
        string json = CommandSession.About(Engine, file => $"suspects {file} --found rail=metal --format json").Out;
        Answers_in_json.AssertFits("suspects", json);
        using JsonDocument answer = JsonDocument.Parse(json);
        (string?, double)[] shares = [.. answer.RootElement.GetProperty("suspects").EnumerateArray().Select(one => (one.GetProperty("part").GetString(), one.GetProperty("share").GetDouble()))];
        Assert.Equal([("pump", 0.9), ("gear", 0.1)], shares);
    }

    [Fact]
    public void Says_so_where_several_parts_must_have_shed()
    {
        CommandSession session = CommandSession.About(
            Engine.Replace("[bowl]", "[gear, bowl]", StringComparison.Ordinal).Replace("              - [gear, rail]\n", "", StringComparison.Ordinal),
            file => $"suspects {file} --found filter=metal --found bowl=metal");
        Assert.Contains(
            """
            MORE THAN ONE SOURCE
              No single part accounts for all that was found. The fewest parts that do:
                pump and gear
              The shares above are for one source at a time.
            """,
            session.Out,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_findings_from_a_file_and_the_debris_with_them()
    {
        const string Words = "suspects systems/families/harbour-diesel-i4.yaml --format json --findings FILE";
        (CommandSession session, _) = CommandSession.Typing(Words, "- {part: rail, debris: water, found: true}\n- {part: fuel-filter, cannot-tell: true, debris: water}\n");
        (CommandSession before, _) = CommandSession.Typing(Words, "- {part: rail, debris: water, found: true}\n");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Contains("\"debris\": \"water\"", session.Out, StringComparison.Ordinal);
        Assert.Equal(Looks(before).Except(["fuel-filter"]), Looks(session));
        Assert.Contains("fuel-filter", Looks(before));

        static string?[] Looks(CommandSession session) => [.. JsonDocument.Parse(session.Out).RootElement.GetProperty("nextLooks").EnumerateArray().Select(look => look.GetProperty("part").GetString())];
    }

    [Theory]
    [InlineData("--found rial=metal", "there is no part rial in engine. Did you mean rail? contam parts engine.yaml lists them.")]
    [InlineData("--found rail=steel", "there is no debris steel. The standard knows metal, rubber, water.")]
    [InlineData("--found rail=metal:120", "--found rail=metal:120: `120` has no unit. A length is written in um, mm, m, thou or in.")]
    [InlineData("--found rail=water:120um", "--found rail=water:120um: water has no size. Leave it out.")]
    [InlineData("--found rail=metal,flake", "flake says nothing of how debris looks. Did you mean flakes? Write flakes, slivers, grains or fuzz, magnetic or not-magnetic.")]
    [InlineData("--clean rail", "nothing was found. Say where debris was found with --found PART=DEBRIS, or name the debris with --debris, for instance --debris metal.")]
    [InlineData("--found rail=metal --found tank=water", "where debris comes from is answered for one debris at a time. Add --debris metal, or --debris water.")]
    [InlineData("--found rail=metal --sure 120%", "--sure: more than 0 % and at most 100 % was expected, got `120%`.")]
    [InlineData("--found rail=metal --sure 0%", "--sure: more than 0 % and at most 100 % was expected, got `0%`.")]
    public void Refuses_what_makes_no_sense(string words, string expected)
    {
        CommandSession session = CommandSession.About(Engine, file => $"suspects {file} {words}");
        Assert.Equal((2, "", $"contam: {expected}\n"), (session.Exit, session.Out, session.Error));
    }

    [Fact]
    public void Refuses_a_finding_that_says_two_things()
    {
        (CommandSession session, _) = CommandSession.Typing("suspects systems/families/harbour-diesel-i4.yaml --debris metal --findings FILE", "- {part: rail, debris: metal, found: true, cannot-tell: true}\n");
        Assert.Equal(
            (2, "", "FILE:1:44: error: the finding at `rail` says what was seen and that it cannot be told [key-does-not-apply]\n  keep one of the two\n"),
            (session.Exit, session.Out, session.Error.Replace("found.yaml", "FILE", StringComparison.Ordinal)));
    }

    [Fact]
    public void Says_so_where_nothing_sheds_the_debris()
    {
        CommandSession session = CommandSession.About(Engine, file => $"suspects {file} --found rail=rubber");
        Assert.Equal(0, session.Exit);
        Assert.Contains("The family names no part that sheds rubber.", session.Out, StringComparison.Ordinal);
        Assert.Contains("No way leads to rail from any part that sheds rubber.", session.Out, StringComparison.Ordinal);
    }
}
