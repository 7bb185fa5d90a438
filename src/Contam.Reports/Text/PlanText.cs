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
    public static void Write(PlanDocument plan, Family family, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        var names = new Names(family);
        Title(page, plan, names);
        Cautions(page, plan);
        new ReachedText(page, plan, names).Write();
        new StepsText(page, plan, names).Write();
        Order(page, plan);
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

    private static void Order(TextPage page, PlanDocument plan)
    {
        if (plan.Order.IsEmpty)
            return;
        page.Heading("Order");
        foreach (PlanOrderLine line in plan.Order)
        {
            string lead = PlanSentences.Lead(line) is { Length: > 0 } days ? ", " + days : "";
            page.Row(2, ("[ ]", 3), (PlanSentences.Quantity(line, page.Look), 9), ($"{line.Item} ({line.Why}{lead})", 0));
        }
    }

    private static void Hours(TextPage page, PlanDocument plan)
    {
        page.Heading("Hours");
        page.Paragraph(PlanSentences.Hours(plan));
        page.Paragraph("Steps marked * delay the end if they are delayed.");
    }
}
