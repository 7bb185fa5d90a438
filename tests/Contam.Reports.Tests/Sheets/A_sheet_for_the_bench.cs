using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Reports.Sheets;
using Contam.Reports.Text;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Reports.Tests.Sheets;

/// <summary>The page itself, read as a browser would take it apart.</summary>
public sealed partial class A_sheet_for_the_bench
{
    private const string Hostile = "</script><script>alert(1)</script> \" onclick='x' <b>&amp; \u001b[31m\u0007";

    public static TheoryData<string> Families => [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file))];

    [Theory]
    [MemberData(nameof(Families))]
    public void Is_well_formed_with_every_box_named_and_every_heading_in_its_order(string family)
    {
        XElement page = Parse(Html(Request(family)));
        string[] ids = [.. page.Descendants().Attributes("id").Select(id => id.Value)];
        string[] named = [.. page.Descendants("label").Attributes("for").Select(label => label.Value)];
        int[] levels = [.. page.Descendants().Where(one => Heading().IsMatch(one.Name.LocalName)).Select(one => one.Name.LocalName[1] - '0')];

        Assert.Equal("en", (string?)page.Attribute("lang"));
        Assert.NotEqual("", page.Element("head")!.Element("title")!.Value);
        Assert.Equal(ids.Distinct(StringComparer.Ordinal), ids);
        Assert.All(page.Descendants().Attributes("aria-labelledby"), by => Assert.Contains(by.Value, ids));
        Assert.All(page.Descendants().Where(one => one.Name.LocalName is "input" or "select"), box => Assert.True(named.Contains((string)box.Attribute("id")!) || box.Ancestors("label").Any(), box.ToString()));
        Assert.All(page.Descendants("table"), table => Assert.True(table.Element("thead")!.Descendants("th").All(head => (string?)head.Attribute("scope") == "col")));
        Assert.Equal([1, .. levels.Skip(1)], levels);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.InRange(pair.Second, 2, pair.First + 1));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Shows_the_steps_in_their_order_and_signs_for_a_phase_where_it_ends(string family)
    {
        PlanRequest request = Request(family);
        PlanDocument plan = Planner.Plan(request);
        XElement steps = Parse(Html(request)).Descendants("section").Single(section => (string?)section.Attribute("id") == "steps");
        int[] firsts = [.. With(steps, "cs-step").Select(step => int.Parse(((string)step.Attribute("id")!)["step-".Length..], CultureInfo.InvariantCulture))];
        int[] boxes = [.. With(steps, "cs-done").Select(box => int.Parse(((string)box.Attribute("id")!)["tick-".Length..], CultureInfo.InvariantCulture))];
        string[] signed = [.. With(steps, "cs-fields").Select(line => line.Value)];

        Assert.Equal(firsts.Order(), firsts);
        Assert.Equal(plan.Steps.Select(step => step.Number), boxes.Order());
        Assert.Equal(plan.Steps.Reverse().Select(step => step.Phase).Distinct().Reverse().Select(phase => Word(phase) + " done, byon"), signed);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Draws_a_bar_for_each_step_that_takes_time_where_it_stands_in_the_schedule(int technicians)
    {
        PlanRequest request = Request("harbour-diesel-i4") with { Technicians = technicians };
        PlanDocument plan = Planner.Plan(request);
        XElement[] rows = [.. With(Parse(Html(request)), "cs-bars").Single().Element("tbody")!.Elements("tr")];
        double end = plan.Steps.Max(step => step.Finish);
        var bars = rows.SelectMany(row => row.Descendants("rect").Select(bar => (Row: row.Element("th")!.Value, Bar: bar))).ToDictionary(one => Step().Match(one.Bar.Value).Groups["number"].Value);

        Assert.Equal(plan.Steps.Count(step => step.Finish > step.Start), bars.Count);
        Assert.All(plan.Steps.Where(step => step.Finish > step.Start), step =>
        {
            (string row, XElement bar) = bars[step.Number.ToString(CultureInfo.InvariantCulture)];
            Assert.Equal(Word(step.Phase) + (step.Technician is not { } who ? ", no hands" : technicians > 1 ? $", technician {who}" : ""), row);
            Assert.Equal(step.Start / end * 100, Percent(bar, "x"), 0.006);
            Assert.Equal((step.Finish - step.Start) / end * 100, Percent(bar, "width"), 0.006);
            Assert.Equal(step.Technician is null, ((string)bar.Attribute("class")!).Contains("cs-waits", StringComparison.Ordinal));
        });
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Prints_all_of_the_picture_in_pieces_that_can_be_read(string family)
    {
        XElement page = Parse(Html(Request(family)));
        double[] whole = View(page.Descendants("svg").Single(svg => (string?)svg.Attribute("id") == "circuits"));
        XElement pieces = With(page, "cs-pieces").Single();
        double[][] views = [.. pieces.Descendants("svg").Select(View)];
        bool isAcross = ((string)pieces.Attribute("class")!).Contains("cs-across", StringComparison.Ordinal);

        // Neighbours show the same strip, so that a line is found again in the next piece.
        foreach ((int from, int size) in new[] { (0, 2), (1, 3) })
        {
            (double From, double To)[] spans = [.. views.Select(view => (view[from], view[from] + view[size])).Distinct().OrderBy(span => span.Item1)];
            Assert.Equal(0, spans[0].From);
            Assert.Equal(whole[size], spans[^1].To, 0.05);
            Assert.All(spans.Zip(spans.Skip(1)), pair => Assert.True(pair.First.To - pair.Second.From >= 79.9));
            Assert.Equal(0, views.Length % spans.Length);
        }

        // As much as A4 and Letter both have between the margins, in millimetres; a letter is 12 pixels high, a point 0.3528 mm.
        (double width, double height) = isAcross ? (250, 148) : (184, 210);
        Assert.All(views, view => Assert.True(12 * Math.Min(width / view[2], height / view[3]) / 0.3528 > 5, $"{view[2]} × {view[3]}"));
    }

    [Theory]
    [InlineData("stern-trim-unit", "trim-pump", "What the debris reached.")]
    [InlineData("harbour-diesel-i4", "injection-pump", "What the debris reached. The 87 clear parts are left out.")]
    public void Says_how_much_the_picture_leaves_out(string family, string failed, string said) =>
        Assert.Equal(said, Parse(Html(Request(family, failed))).Descendants("section").Single(section => (string?)section.Attribute("id") == "picture").Descendants("p").First().Value);

    [Fact]
    public void Draws_what_is_reached_and_no_more()
    {
        PlanRequest request = Request("harbour-diesel-i4");
        XElement picture = Parse(Html(request)).Descendants("svg").Single(svg => (string?)svg.Attribute("id") == "circuits");

        Assert.Equal(
            Planner.Plan(request).Parts.Select(part => part.Id).Order(StringComparer.Ordinal),
            picture.Descendants().Attributes("data-part").SelectMany(part => part.Value.Split(' ')).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Runs_its_own_script_and_no_other()
    {
        string html = Html(Request("harbour-diesel-i4"));
        string script = Regex.Match(html, "<script>(?<source>.*?)</script>", RegexOptions.Singleline).Groups["source"].Value;
        string policy = (string)Parse(html).Descendants("meta").Single(meta => meta.Attribute("http-equiv") is not null).Attribute("content")!;

        Assert.Contains($"script-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}';", policy, StringComparison.Ordinal);
        Assert.StartsWith("default-src 'none';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("script-src 'unsafe", policy, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_harmless_whatever_is_written_anywhere_in_its_plan()
    {
        PlanRequest request = Request("harbour-diesel-i4");
        PlanDocument plan = Planner.Plan(request);
        plan = plan with
        {
            Family = plan.Family with { Id = Hostile, Title = Hostile },
            Standard = plan.Standard with { Id = Hostile },
            Debris = [Hostile],
            Cautions = [.. plan.Cautions.Select(one => one with { Text = Hostile, Source = Hostile })],
            Steps = [.. plan.Steps.Select(one => one with { Text = Hostile })],
            Parts = [.. plan.Parts.Select(one => one with { Name = Hostile, Circuits = [Hostile], Rule = new PlanRule(Hostile, 1, Hostile), Exposure = [.. one.Exposure.Select(way => way with { Debris = Hostile })] })],
            Order = [new PlanOrderLine(Hostile, 1, Hostile, null, 1)],
            Findings = [new PlanFinding { Part = Hostile, Debris = Hostile, NotAcceptedBecause = Hostile, By = Hostile, When = Hostile }],
            Conditional = [new PlanConditional(Hostile, [Hostile], [])],
        };
        string html = Html(plan, request);
        XElement page = Parse(html);

        Assert.DoesNotContain(html, one => char.IsControl(one) && one != '\n');
        Assert.Single(page.Descendants("script"));
        Assert.DoesNotContain(page.Descendants().Attributes(), attribute => attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        Assert.Equal(plan.Parts.Length, With(page, "cs-part").Count(row => row.Element("th")!.Value == Hostile.Replace('\u001b', '?').Replace('\u0007', '?')));
    }

    [Fact]
    public void Is_the_same_every_time_and_in_every_culture_and_marked_by_its_plan()
    {
        PlanRequest request = Request("harbour-diesel-i4");
        string first = Html(request);
        string hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(PlanJson.Write(Planner.Plan(request)))));
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = new NumberFormatInfo { NumberDecimalSeparator = ",", NegativeSign = "~" } };
            Assert.Equal(first, Html(request));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Contains($"data-plan=\"{hash}\"", first, StringComparison.Ordinal);
        Assert.Contains($"content:\"Plan {hash[..8]}\"", first, StringComparison.Ordinal);
        Assert.NotEqual(first, Html(request with { Technicians = 2 }));
    }

    [Fact]
    public void Tells_each_debris_its_own_way()
    {
        PlanRequest request = Request("harbour-diesel-i4", "oil-pump", "metal", "rubber");
        PlanDocument plan = Planner.Plan(request);
        PlanPart both = plan.Parts.First(part => part.Exposure.Length == 2);
        XElement row = With(Parse(Html(request)), "cs-part").Single(one => (string?)one.Attribute("data-part") == both.Id);
        XElement[] ways = [.. With(row, "cs-way")];

        Assert.Equal(2, ways.Length);
        Assert.All(ways, way => Assert.EndsWith(both.Id, (string)way.Attribute("data-way")!, StringComparison.Ordinal));
        Assert.Equal(both.Exposure.Select(one => $"{one.Debris}: {one.Grade.ToString().ToLowerInvariant()}"), ways.Select(way => way.ElementsBeforeSelf("p").Last().Value));
        Assert.All(ways.Zip(both.Exposure), pair => Assert.StartsWith(pair.Second.From, (string)pair.First.Attribute("data-way")!, StringComparison.Ordinal));
    }

    private static PlanRequest Request(string name, string? failed = null, params string[] debris)
    {
        Catalogue catalogue = BuiltInStandards.HouseOverKinds.CatalogueOf();
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), catalogue).Value!;
        Part part = failed is null ? family.Parts.First(one => !one.Sheds.IsEmpty) : family[new PartId(failed)];
        ImmutableArray<Debris> shed = debris.Length == 0 ? [part.Sheds[0].Debris] : [.. debris.Select(one => catalogue.Debris.Single(known => known.Name == one))];
        return new PlanRequest(family, BuiltInStandards.HouseOverKinds, [part.Id], shed);
    }

    private static string Word(Phase phase) => phase switch { Phase.MakeSafe => "Make safe", Phase.CleanOut => "Clean out", _ => phase.ToString() };

    private static string Html(PlanRequest request) => Html(Planner.Plan(request), request);

    private static string Html(PlanDocument plan, PlanRequest request)
    {
        using var text = new StringWriter();
        PlanHtml.Write(plan, request, TextLook.Plain, text);
        return text.ToString();
    }

    // Style and script are no markup, and are left out.
    private static XElement Parse(string html) => XElement.Parse(Own().Replace(html["<!DOCTYPE html>".Length..], "<${name}></${name}>"));

    private static IEnumerable<XElement> With(XElement within, string look) => within.Descendants().Where(one => ((string?)one.Attribute("class") ?? "").Split(' ').Contains(look));

    private static double[] View(XElement svg) => [.. ((string)svg.Attribute("viewBox")!).Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];

    private static double Percent(XElement bar, string name) => double.Parse(((string)bar.Attribute(name)!).TrimEnd('%'), CultureInfo.InvariantCulture);

    [GeneratedRegex("<(?<name>script|style)>.*?</\\k<name>>", RegexOptions.Singleline)]
    private static partial Regex Own();

    [GeneratedRegex("^h[1-6]$")]
    private static partial Regex Heading();

    [GeneratedRegex("^Step (?<number>\\d+),")]
    private static partial Regex Step();
}
