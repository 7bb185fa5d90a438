using System.Globalization;
using Contam.Drills;
using Contam.Reports.Text;

namespace Contam.Reports.Drills;

/// <summary>An exercise as text: the circuits as trees, the questions, and the answer sheet where it is asked for.</summary>
public static class DrillText
{
    private const int Indent = 4;
    private const int ChoiceIndent = 7;

    /// <summary>Writes it.</summary>
    public static void Write(Drill drill, bool withAnswers, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(drill);
        var sheet = new DrillSheet(drill, look);
        var page = new TextPage(writer, look);
        page.Subheading(sheet.Title);
        page.Paragraph(sheet.FamilyLine);
        page.Paragraph(sheet.Task);
        page.Paragraph(sheet.SeedLine);
        page.Heading("The circuits");
        page.Gap();
        CircuitTree.Write(drill.Request.Family, writer, look);
        page.Heading("Questions");
        foreach (SheetQuestion question in sheet.Questions)
            Ask(page, question);
        if (!sheet.LeftOut.IsEmpty)
            page.Heading("Left out");
        foreach ((_, string text) in sheet.LeftOut)
            page.Paragraph(text, 2);
        if (withAnswers)
            Answer(page, sheet);
    }

    private static void Ask(TextPage page, SheetQuestion question)
    {
        if (question.Number > 1)
            page.Gap();
        page.Paragraph(question.Asks, Indent, Number(question.Number));
        foreach (string given in question.Given)
            page.Paragraph(given, Indent);
        foreach (SheetChoice choice in question.Choices)
        {
            if (choice.Steps.IsEmpty)
                page.Paragraph(choice.Text, ChoiceIndent, $"    {choice.Letter}");
            for (int i = 0; i < choice.Steps.Length; i++)
                page.Paragraph(choice.Steps[i], ChoiceIndent + 3, $"    {(i == 0 ? choice.Letter : " ")}  {Number(i + 1)}");
        }
    }

    private static void Answer(TextPage page, DrillSheet sheet)
    {
        page.Heading("Answers");
        foreach (SheetQuestion question in sheet.Questions)
        {
            if (question.Number > 1)
                page.Gap();
            page.Paragraph($"{question.Right.Letter} is right.", Indent, Number(question.Number));
            foreach (SheetChoice choice in question.Choices)
                page.Paragraph(choice.Because, ChoiceIndent, $"  {(choice.IsRight ? "*" : " ")} {choice.Letter}");
        }

        page.Gap();
        page.Subheading("THE SPREAD, HOP BY HOP");
        foreach ((int hop, string text, _) in sheet.Hops)
            page.Paragraph(text, Indent + 2, "  " + Number(hop));
        if (sheet.Hops.IsEmpty)
            page.Paragraph("It goes no further.", 2);
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
