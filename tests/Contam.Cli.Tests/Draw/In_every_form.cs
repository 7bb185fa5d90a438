using System.Xml.Linq;

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

    [Fact]
    public void Refuses_a_form_that_there_is_not() => Assert.Equal(2, CommandSession.Of(Call + " --format png").Exit);
}
