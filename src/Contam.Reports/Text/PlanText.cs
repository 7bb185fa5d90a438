using Contam.Families;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>A plan for a person at the bench: what to be careful of, what was reached and why, steps to tick, what to order, hours.</summary>
public static class PlanText
{
    /// <summary>Writes the plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="family">The family it was made for, for names.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="look">How wide, and whether in colour.</param>
    /// <param name="reasons">Whether it says how the debris came to every part and why it is treated so.</param>
    public static void Write(PlanDocument plan, Family family, TextWriter writer, TextLook look, bool reasons = false)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        var names = new Names(family);
        Title(page, plan, names);
        Cautions(page, plan);
        Before(page, plan);
        Methods(page, plan);
        new StepsText(page, plan, names).Write();
        new ReachedText(page, plan, names, reasons).Write();
        Hours(page, plan);
    }

    private static void Title(TextPage page, PlanDocument plan, Names names)
    {
        page.Subheading(PlanSentences.Title(plan, names, page.Look));
        page.Paragraph(PlanSentences.Engine(plan));
        Looks(page, plan, new LookWords(plan, names));
        page.Paragraph(PlanSentences.Summary(plan));
        if (ReviewWords.Of(plan) is { } reviewed)
            page.Paragraph(reviewed);
        foreach (string sentence in plan.FromFindings is { } from ? FromFindingsWords.Sentences(from, names) : [])
            page.Paragraph(sentence);
        foreach (string note in plan.Notes)
            page.Paragraph(note);
        page.Paragraph(PlanSentences.MayNotRun(plan));
    }

    private static void Looks(TextPage page, PlanDocument plan, LookWords words)
    {
        if (!words.Any)
            return;
        page.Gap();
        page.Paragraph(words.Sure, indent: 14, lead: "SURE");
        page.Paragraph(words.ByTheLooks, indent: 14, lead: "BY THE LOOKS");
        foreach (PlanLook look in plan.Looks)
            page.Paragraph($"{words.Place(look)}. {LookWords.Due(look)}{LookWords.Find(look)}: {words.Found(look)}. Clean: {words.Clean(look)}.", indent: 8, lead: $"LOOK {look.Id}");
        foreach (string sentence in words.AgainstOnRecord())
            page.Paragraph(sentence);
        page.Paragraph(words.HowToStrike);
        page.Gap();
    }

    private static void Cautions(TextPage page, PlanDocument plan)
    {
        if (plan.Cautions.IsEmpty)
            return;
        page.Heading("Be careful");
        for (int i = 0; i < plan.Cautions.Length; i++)
            page.Paragraph(PlanSentences.Caution(plan.Cautions[i]), indent: 5, lead: PlanSentences.CautionMark(i));
    }

    private static void Before(TextPage page, PlanDocument plan)
    {
        page.Heading("Before the work");
        (string Name, string Text)[] lines = [.. BeforeText.Lines(plan, page.Look)];
        int indent = lines.Select(line => line.Name.Length + 2).Append(11).Max();
        foreach ((string name, string text) in lines)
            page.Paragraph(text, indent, name);
    }

    private static void Methods(TextPage page, PlanDocument plan)
    {
        if (plan.Methods.IsEmpty)
            return;
        page.Heading("Methods");
        foreach (PlanMethod method in plan.Methods)
            page.Paragraph($"{method.Title}: {method.Text}", indent: 5, lead: method.Id);
    }

    private static void Hours(TextPage page, PlanDocument plan)
    {
        page.Heading("Hours");
        page.Paragraph(PlanSentences.Hours(plan));
        page.Paragraph(PlanSentences.HoursByPhase(plan));
        page.Paragraph("Steps marked * set the end.");
    }
}
