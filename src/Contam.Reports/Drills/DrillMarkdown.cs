using System.Globalization;
using System.Text;
using Contam.Drills;
using Contam.Reports.Text;

namespace Contam.Reports.Drills;

/// <summary>An exercise in Markdown. Whatever a person wrote is escaped; the circuits stand in a fence that no name can end.</summary>
public static class DrillMarkdown
{
    /// <summary>Writes it.</summary>
    public static void Write(Drill drill, bool withAnswers, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(drill);
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(look);
        var sheet = new DrillSheet(drill, look);
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"# {Escape(sheet.Title)}\n\n{Escape(sheet.FamilyLine)}\n\n{Escape(sheet.Task)}\n\n{Escape(sheet.SeedLine)}\n");
        Circuits(page, drill);
        page.Append("\n## Questions\n");
        foreach (SheetQuestion question in sheet.Questions)
            Ask(page, question);
        if (!sheet.LeftOut.IsEmpty)
            page.Append("\n## Left out\n\n");
        foreach ((_, string text) in sheet.LeftOut)
            page.Append(CultureInfo.InvariantCulture, $"- {Escape(text)}\n");
        if (withAnswers)
            Answer(page, sheet);
        writer.Write(page);
    }

    private static void Circuits(StringBuilder page, Drill drill)
    {
        using var circuits = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        CircuitTree.Write(drill.Request.Family, circuits, TextLook.Plain);
        string text = circuits.ToString();
        string fence = new('`', Math.Max(3, LongestRun(text) + 1));
        page.Append(CultureInfo.InvariantCulture, $"\n## The circuits\n\n{fence}text\n{text}{fence}\n");
    }

    private static int LongestRun(string text)
    {
        int longest = 0, run = 0;
        foreach (char one in text)
        {
            run = one == '`' ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }

    private static void Ask(StringBuilder page, SheetQuestion question)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n### {question.Number}\n\n{Escape(question.Asks)}\n\n");
        foreach (string given in question.Given)
            page.Append(CultureInfo.InvariantCulture, $"{Escape(given)}\n\n");
        foreach (SheetChoice choice in question.Choices)
        {
            string text = choice.Steps.IsEmpty ? Escape(choice.Text) : string.Join("; ", choice.Steps.Select((step, index) => string.Create(CultureInfo.InvariantCulture, $"({index + 1}) {Escape(step)}")));
            page.Append(CultureInfo.InvariantCulture, $"- [ ] **{choice.Letter}** {text}\n");
        }
    }

    private static void Answer(StringBuilder page, DrillSheet sheet)
    {
        page.Append("\n## Answers\n");
        foreach (SheetQuestion question in sheet.Questions)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n### {question.Number}: {question.Right.Letter} is right\n\n");
            foreach (SheetChoice choice in question.Choices)
                page.Append(CultureInfo.InvariantCulture, $"- **{choice.Letter}**{(choice.IsRight ? " (right)" : "")} {Escape(choice.Because)}\n");
        }

        page.Append("\n### The spread, hop by hop\n\n");
        foreach ((int hop, string text, _) in sheet.Hops)
            page.Append(CultureInfo.InvariantCulture, $"{hop}. {Escape(text)}\n");
        if (sheet.Hops.IsEmpty)
            page.Append("It goes no further.\n");
    }

    private static string Escape(string text) => PlanMarkdown.Escape(text);
}
