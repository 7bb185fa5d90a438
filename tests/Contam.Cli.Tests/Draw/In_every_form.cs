using System.Text.Json;
using System.Xml.Linq;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Cli.Tests.Draw;

/// <summary><c>draw --format</c>: each word gives its own form, and the options reach the picture.</summary>
public sealed class In_every_form
{
    private const string Call = "draw systems/families/harbour-reverse-gear.yaml";

    [Theory]
    [InlineData("", "<svg xmlns=")]
    [InlineData(" --format svg", "<svg xmlns=")]
    [InlineData(" --format dot", "digraph \"harbour-reverse-gear\" {")]
    [InlineData(" --format html", "<!DOCTYPE html>")]
    [InlineData(" --format mermaid", "flowchart LR")]
    public void Begins_as_that_form_does(string format, string beginning)
    {
        CommandSession session = CommandSession.Of(Call + format);

        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.StartsWith(beginning, session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Draws_repeated_parts_by_themselves_when_asked()
    {
        Assert.Contains("data-part=\"input-bearing-1 input-bearing-2\"", CommandSession.Of(Call).Out, StringComparison.Ordinal);
        Assert.Contains("data-part=\"input-bearing-2\"", CommandSession.Of(Call + " --unfold").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_sound_xml_that_marks_the_failure()
    {
        string svg = CommandSession.Of(Call + " --failed forward-clutch --debris metal").Out;

        Assert.Equal("svg", XDocument.Parse(svg).Root!.Name.LocalName);
        Assert.Contains("data-part=\"forward-clutch\" data-grade=\"failed\"", svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dot", "(exposed ≤ 400 µm, look here)")]
    [InlineData("mermaid", "exposed metal up to 400 µm, look here")]
    [InlineData("svg", ">stop line: look here</text>")]
    [InlineData("html", ">stop line: look here</text>")]
    public void Marks_where_to_look_when_asked(string format, string mark)
    {
        const string Pump = "draw systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal --format ";
        CommandSession session = CommandSession.Of($"{Pump}{format} --stop-line");

        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Contains(mark, session.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("look here", CommandSession.Of(Pump + format).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dot")]
    [InlineData("mermaid")]
    [InlineData("svg")]
    public void Marks_the_very_looks_of_the_stop_line(string format)
    {
        const string Asked = " systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal";
        string picture = CommandSession.Of($"draw{Asked} --unfold --stop-line --format {format}").Out;
        using var line = JsonDocument.Parse(CommandSession.Of("stop-line" + Asked + " --format json").Out);
        Family family = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/harbour-diesel-i4.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        string NameOf(string id) => family.Find(new PartId(id))!.Name;

        string[] marked = format == "svg"
            ? [.. XDocument.Parse(picture).Descendants().Where(one => (string?)one.Attribute("class") == "cd-look" && one.Parent!.Attribute("data-part") is not null).Select(one => NameOf(one.Parent!.Attribute("data-part")!.Value))]
            : [.. picture.Split('\n').Where(text => text.Contains("look here", StringComparison.Ordinal)).Select(text => text.Split('"')[1].Split(format == "dot" ? " (" : ", ")[0])];
        Assert.NotEmpty(marked);
        Assert.Equal(line.RootElement.GetProperty("looks").EnumerateArray().Select(look => NameOf(look.GetProperty("part").GetString()!)).Order(StringComparer.Ordinal), marked.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Marks_no_look_that_the_shops_standard_would_not_count()
    {
        CommandSession session = CommandSession.About(
            "format: 1\nstandard: strict\ntitle: A shop that trusts no look\nclean-findings: never\n",
            standard => $"draw systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal --stop-line --format dot --standard {standard}");

        Assert.Equal((0, "contam: no stop line is marked, for looking saves nothing here. contam stop-line says why.\n"), (session.Exit, session.Error));
        Assert.DoesNotContain("look here", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Says_that_there_is_no_stop_line_to_mark()
    {
        CommandSession session = CommandSession.Of(Call + " --failed output-seal --debris rubber --clean gear-sump --stop-line --format dot");

        Assert.Equal((0, "contam: no stop line is marked, for looking saves nothing here. contam stop-line says why.\n"), (session.Exit, session.Error));
        Assert.StartsWith("digraph", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_stop_line_of_nothing()
    {
        CommandSession session = CommandSession.Of(Call + " --stop-line");

        Assert.Equal(2, session.Exit);
        Assert.Contains("Add --failed PART and --debris, or leave --stop-line out.", session.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_form_that_there_is_not() => Assert.Equal(2, CommandSession.Of(Call + " --format png").Exit);
}
