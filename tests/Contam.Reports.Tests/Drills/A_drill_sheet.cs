using Contam.Drills;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Reports.Drills;
using Contam.Reports.Json;
using Contam.Reports.Markup;
using Contam.Reports.Text;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Reports.Tests.Drills;

/// <summary>An exercise in every format, of a family that no reader has looked at.</summary>
public sealed class A_drill_sheet
{
    [Fact]
    public void Gives_a_terminal_no_orders()
    {
        Family read = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/harbour-diesel-i4.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        Family family = read.WithParts([.. read.Parts.Select(part => part with { Name = part.Name + "\u001b]0;x\u0007\n" })]);
        Drill drill = Drilling.Of(new DrillRequest(family, BuiltInStandards.HouseOverKinds, [new PartId("injection-pump")], [Debris.Metal]));

        Assert.Equal(6, drill.Questions.Length);
        foreach (string page in new[]
        {
            Written(writer => DrillText.Write(drill, withAnswers: true, writer, TextLook.Plain)),
            Written(writer => DrillMarkdown.Write(drill, withAnswers: true, writer, TextLook.Plain)),
            Written(writer => DrillHtml.Write(drill, answersAreOpen: true, new MarkupWriter(writer), TextLook.Plain)),
            DrillJson.Write(drill, withAnswers: true),
        })
        {
            Assert.DoesNotContain('\u001b', page);
            Assert.DoesNotContain('\u0007', page);
        }
    }

    private static string Written(Action<TextWriter> write)
    {
        using var writer = new StringWriter();
        write(writer);
        return writer.ToString();
    }
}
