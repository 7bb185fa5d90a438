using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Contam.Cli.Tests.Drills;

/// <summary>Sessions of <c>contam drill</c>.</summary>
public sealed partial class A_drill
{
    private const string Diesel = "systems/families/harbour-diesel-i4.yaml";
    private const string Pump = $"drill {Diesel} --failed injection-pump --debris metal";

    public static TheoryData<string> Formats => ["text", "json", "markdown", "html"];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Offers_no_second_choice_of_looks_that_takes_as_little(int seed)
    {
        // A look at the rail takes no time, so that looking there too is as good.
        const string Family = """
            format: 1
            family: f
            title: A pump and what it feeds
            parts:
              tank: {kind: tank}
              pump: {kind: pump, sheds: {metal: common}}
              feed: {kind: hose, inspect: {minutes: 5, shows: good}}
              rail: {kind: rail, inspect: {minutes: 0, shows: good}}
              pipe: {kind: pipe, inspect: {minutes: 5, shows: good}}
              spray: {kind: nozzle}
            circuits:
              fuel: {runs: [[tank, pump, feed, rail, pipe, spray]]}

            """;

        CommandSession session = CommandSession.About(Family, file => $"drill {file} --failed pump --debris metal --answers --seed {seed}");

        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Equal(2, session.Out.Split("4 parts are left alone; looking and treating take 115 min.").Length);
    }

    [Fact]
    public void For_metal_from_an_exhaust_hose_asks_what_there_is_to_ask()
    {
        CommandSession session = CommandSession.Of($"drill {Diesel} --failed exhaust-hose --debris metal --answers");

        Assert.Equal((0, "contam: The family does not say that the exhaust hose sheds metal; it is taken to have shed it, of any size.\n"), (session.Exit, session.Error));
        Assert.StartsWith(
            """
            Drill: Exhaust hose failed, metal
            Four-cylinder harbour-launch diesel with common-rail injection
            (harbour-diesel-i4)
            Exhaust hose has failed and shed metal. Work it out on the circuits before you
            turn to the answers. Each question has one right answer.
            Seed 1: the same seed gives the same questions.

            THE CIRCUITS

            """,
            session.Out,
            StringComparison.Ordinal);
        Assert.EndsWith(
            """

            QUESTIONS
            1   Metal leaves exhaust hose. Which of these does it reach next, over one joint
                alone?
                a  Oil pump
                b  Exhaust elbow with water injection
                c  Silencer
                d  Heat exchanger tubes

            LEFT OUT
              What can be trusted to hold it back: nothing that metal comes to is said to
              hold any of it back.
              What must come off first: there are too few other parts to make wrong choices
              from.
              Where to look so that the rest can be left alone: no place that the debris
              comes by shows metal well.
              Which order dirties a cleaned part: no few steps of this plan were found that
              dirty a cleaned part in one order and not in two others.
              What can be left alone when a look is clean: no look decides how far to go
              here.

            ANSWERS
            1   c is right.
                a  No open way leads there from exhaust hose.
                b  It lies upstream: it leads into exhaust hose. No open way leads there
                   from exhaust hose.
              * c  exhaust hose > silencer.
                d  No open way leads there from exhaust hose.

            THE SPREAD, HOP BY HOP
              1   Silencer

            """,
            session.Out,
            StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Is_the_same_for_the_same_seed_and_another_for_another(string format)
    {
        string first = CommandSession.Of($"{Pump} --seed 7 --format {format}").Out;

        Assert.Equal(first, CommandSession.Of($"{Pump} --seed 7 --format {format}").Out);
        Assert.NotEqual(first.Replace("7", "", StringComparison.Ordinal), CommandSession.Of($"{Pump} --seed 8 --format {format}").Out.Replace("8", "", StringComparison.Ordinal));
        Assert.Equal(CommandSession.Of($"{Pump} --seed 1 --format {format}").Out, CommandSession.Of($"{Pump} --format {format}").Out);
    }

    [Theory]
    [InlineData("text", "ANSWERS")]
    [InlineData("markdown", "## Answers")]
    [InlineData("json", "\"right\": ")]
    public void Keeps_the_answers_back_until_they_are_asked_for(string format, string answers)
    {
        Assert.DoesNotContain(answers, CommandSession.Of($"{Pump} --format {format}").Out, StringComparison.Ordinal);
        Assert.Contains(answers, CommandSession.Of($"{Pump} --format {format} --answers").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void As_html_folds_the_answers_behind_the_questions_unless_they_are_asked_for()
    {
        string folded = CommandSession.Of($"{Pump} --format html").Out;
        string open = CommandSession.Of($"{Pump} --format html --answers").Out;

        Assert.True(folded.LastIndexOf("<h3>", StringComparison.Ordinal) < folded.IndexOf("<details>", StringComparison.Ordinal));
        Assert.Equal((7, 0), (Count(folded, "<details>"), Count(folded, "<details open")));
        Assert.Equal((0, 7), (Count(open, "<details>"), Count(open, "<details open")));
        // What the answers stand in is all that differs.
        Assert.Equal(folded, open.Replace(" open=\"open\"", "", StringComparison.Ordinal));
    }

    [Fact]
    public void As_html_gives_nothing_away_in_the_picture()
    {
        string html = CommandSession.Of($"{Pump} --format html").Out;
        string picture = html[html.IndexOf("<svg", StringComparison.Ordinal)..(html.IndexOf("</svg>", StringComparison.Ordinal) + 6)];
        XElement[] boxes = [.. XDocument.Parse(picture).Root!.Descendants().Where(element => element.Attribute("data-part") is not null)];

        Assert.Equal(["injection-pump"], boxes.Where(box => box.Attribute("data-grade") is not null).Select(box => (string)box.Attribute("data-part")!));
        Assert.DoesNotContain("<path class=\"cd-bar", picture, StringComparison.Ordinal);
    }

    [Fact]
    public void As_html_can_be_played_over_every_hop_of_the_spread()
    {
        string html = CommandSession.Of($"{Pump} --format html").Out;
        using JsonDocument json = JsonDocument.Parse(CommandSession.Of($"{Pump} --format json --answers").Out);
        string[] spread = [.. json.RootElement.GetProperty("spread").EnumerateArray().Select(hop => hop.GetProperty("part").GetString()!)];
        HashSet<string> drawn = [.. Drawn().Matches(html).SelectMany(match => match.Groups["ids"].Value.Split(' '))];

        Assert.Equal(spread, Reached().Matches(html).SelectMany(match => match.Groups["ids"].Value.Split(' ')));
        Assert.All(spread, part => Assert.Contains(part, drawn));
        Assert.Equal(37, spread.Length);
    }

    [Theory]
    [InlineData("</title><script>alert(1)</script>")]
    [InlineData("a\" onload='alert(1)' data-reached='x")]
    [InlineData("``` ```` <b>x</b>")]
    [InlineData("[x](javascript:alert(1)) **bold**")]
    public void Is_harmless_whatever_a_part_is_called(string name)
    {
        foreach (string format in Formats.Select(row => row.Data))
        {
            string page = About(name, format);
            if (format == "html")
            {
                // The script of the page is its own; nothing else begins one, and no attribute has come in.
                Assert.Equal(1, Count(page, "<script"));
                Assert.DoesNotMatch("<[^>]* onload=", page);
                Assert.DoesNotContain("<b>x", page, StringComparison.Ordinal);
            }
            else if (format == "markdown")
            {
                string rest = Fence().Replace(page, "", 1);
                Assert.DoesNotContain('`', rest.Replace("\\`", "", StringComparison.Ordinal));
                Assert.DoesNotMatch(@"(?<!\\)\]\(|<b|<script|\*\*bold", rest);
            }
            else if (format == "json")
            {
                Answers_in_json.AssertFits("drill", page);
            }
        }
    }

    [Theory]
    [InlineData("--failed injection-pmup", $"contam: there is no part injection-pmup in harbour-diesel-i4. Did you mean injection-pump? contam parts {Diesel} lists them.")]
    [InlineData("--failed injection-pump --debris metla", "contam: there is no debris metla. Did you mean metal? The standard knows metal, rubber, water.")]
    [InlineData("--debris metal", $"contam: nothing has failed. Name the failed part with --failed PART; contam parts {Diesel} lists them.")]
    [InlineData("--failed injection-pump --seed x", "contam: --seed: a whole number from 0 on was expected, for instance 7, got `x`.")]
    [InlineData("--failed injection-pump --seed=-1", "contam: --seed: a whole number from 0 on was expected, for instance 7, got `-1`.")]
    public void Says_what_is_wrong_with_a_call(string words, string expected)
    {
        CommandSession session = CommandSession.Of($"drill {Diesel} {words}");

        Assert.Equal((2, "", expected + "\n"), (session.Exit, session.Out, session.Error));
    }

    private static string About(string name, string format)
    {
        string quoted = "\"" + Regex.Replace(name, "[\"]", "\\\"") + "\"";
        string family = $$$"""
            format: 1
            family: engine
            title: {{{quoted}}}
            parts:
              tank: {kind: tank, name: {{{quoted}}}, inspect: {minutes: 2, shows: good}}
              pump: {name: {{{quoted}}}, kind: injection-pump, sheds: {metal: common}}
              screen: {name: {{{quoted}}}, kind: filter, holds: {metal: 30 um}}
              rail: {name: {{{quoted}}}, kind: rail, access: [pump]}
              end: {name: {{{quoted}}}, kind: rail, access: [rail]}
            circuits:
              fuel: {runs: [[tank, pump, screen, rail, end, tank]]}

            """;
        CommandSession session = CommandSession.About(family, file => $"drill {file} --failed pump --debris metal --answers --format {format}");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        return session.Out;
    }

    private static int Count(string text, string what) => text.Split(what).Length - 1;

    [GeneratedRegex("data-part=\"(?<ids>[^\"]+)\"")]
    private static partial Regex Drawn();

    [GeneratedRegex("data-reached=\"(?<ids>[^\"]+)\"")]
    private static partial Regex Reached();

    [GeneratedRegex(@"^(?<fence>`{3,})text\n.*?^ {0,3}\k<fence>`*\n", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}
