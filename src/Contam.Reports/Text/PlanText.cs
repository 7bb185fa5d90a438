using System.Globalization;
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
        string failed = plan.FromFindings is not null ? "from what was found" : plan.Failed.IsEmpty ? "nothing named as failed" : string.Join(", ", plan.Failed.Select(names.Of)) + " failed";
        page.Subheading($"Clean-out: {failed}, {string.Join(" and ", plan.Debris)}");
        page.Paragraph(plan.Family.Title.Length > 0 ? $"{plan.Family.Title} ({plan.Family.Id})" : plan.Family.Id);
        int renewed = plan.Parts.Count(part => part.Treatment.Contains(TreatmentKind.Replace));
        page.Paragraph(string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.Parts.Length} parts reached, {plan.Clear} clear. {plan.Steps.Length} steps, {renewed} parts renewed, {plan.Hours.Bench:0.#} bench hours. Standard: {plan.Standard.Id}."));
        foreach (string sentence in plan.FromFindings is { } from ? FromFindingsWords.Sentences(from, names) : [])
            page.Paragraph(sentence);
        page.Paragraph("The engine may not be run before every step of the phases before PROVE is ticked.");
    }

    private static void Cautions(TextPage page, PlanDocument plan)
    {
        if (plan.Cautions.IsEmpty)
            return;
        page.Heading("Be careful");
        for (int i = 0; i < plan.Cautions.Length; i++)
        {
            PlanCaution caution = plan.Cautions[i];
            string where = caution.Steps.IsEmpty ? "all of it" : $"from step {caution.BeforeStep.ToString(CultureInfo.InvariantCulture)}";
            page.Paragraph($"{caution.Text} ({where}; {caution.Source})", indent: 5, lead: CautionMark(i));
        }
    }

    /// <summary>How a caution is referred to on its steps.</summary>
    internal static string CautionMark(int index) => string.Create(CultureInfo.InvariantCulture, $"!{index + 1}");

    private static void Order(TextPage page, PlanDocument plan)
    {
        if (plan.Order.IsEmpty)
            return;
        page.Heading("Order");
        foreach (PlanOrderLine line in plan.Order)
        {
            string quantity = line.Unit is null
                ? string.Create(CultureInfo.InvariantCulture, $"{line.Quantity:0.##} ×")
                : line.Quantity > 0 ? UnitText.Volume(line.Quantity, page.Look) : "";
            string lead = line.LeadDays is { } days ? string.Create(CultureInfo.InvariantCulture, $", {days:0.#} d to come") : "";
            page.Row(2, ("[ ]", 3), (quantity, 9), ($"{line.Item} ({line.Why}{lead})", 0));
        }
    }

    private static void Hours(TextPage page, PlanDocument plan)
    {
        page.Heading("Hours");
        string hands = plan.Hours.Technicians == 1 ? "one technician" : string.Create(CultureInfo.InvariantCulture, $"{plan.Hours.Technicians} technicians");
        page.Paragraph(string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.Hours.Bench:0.##} h at the bench; {plan.Hours.Elapsed:0.##} working hours from start to end with {hands}, waiting for parts and outside workshops counted. No order of these steps ends before {plan.Hours.LowerBoundElapsed:0.##} h."));
        page.Paragraph("Steps marked * delay the end if they are delayed.");
    }
}
