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
        page.Subheading(PlanSentences.Title(plan, names));
        page.Paragraph(PlanSentences.Engine(plan));
        page.Paragraph(PlanSentences.Summary(plan));
        foreach (string sentence in plan.FromFindings is { } from ? FromFindingsWords.Sentences(from, names) : [])
            page.Paragraph(sentence);
        page.Paragraph(PlanSentences.MayNotRun);
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
        foreach ((string name, string text) in BeforeText.Lines(plan, page.Look))
            page.Paragraph(text, indent: 11, lead: name);
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
        page.Paragraph("Steps marked * delay the end if they are delayed.");
    }
}
