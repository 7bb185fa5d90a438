using System.Globalization;
using System.Text;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Reports;

/// <summary>A plan as a Markdown checklist with boxes to tick. Whatever a person wrote is escaped.</summary>
public static class PlanMarkdown
{
    private const string Special = "\\`*_{}[]()<>#+-.!|~&";

    /// <summary>Writes the checklist.</summary>
    public static void Write(PlanDocument plan, Family family, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(writer);
        var names = new Names(family);
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"# Clean-out: {Escape(plan.Failed.IsEmpty || plan.FromFindings is not null ? "from what was found" : string.Join(", ", plan.Failed.Select(names.Of)) + " failed")}, {Escape(string.Join(" and ", plan.Debris))}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"{Escape(plan.Family.Title)} ({Escape(plan.Family.Id)}). {plan.Parts.Length} parts reached, {plan.Clear} clear.\n\n");
        foreach (string sentence in plan.FromFindings is { } from ? FromFindingsWords.Sentences(from, names) : [])
            page.Append(CultureInfo.InvariantCulture, $"{Escape(sentence)}\n\n");
        page.Append("**The engine may not be run before every step of the phases before prove is ticked.**\n");
        Cautions(page, plan);
        Parts(page, plan);
        Findings(page, plan, names);
        Steps(page, plan);
        Order(page, plan);
        page.Append(CultureInfo.InvariantCulture, $"\n## Hours\n\n{plan.Hours.Bench:0.##} h at the bench, {plan.Hours.Elapsed:0.##} working hours from start to end, not under {plan.Hours.LowerBoundElapsed:0.##} h.\n");
        writer.Write(page);
    }

    private static void Cautions(StringBuilder page, PlanDocument plan)
    {
        if (plan.Cautions.IsEmpty)
            return;
        page.Append("\n## Be careful\n\n");
        foreach (PlanCaution caution in plan.Cautions)
            page.Append(CultureInfo.InvariantCulture, $"- {Escape(caution.Text)} *({(caution.Steps.IsEmpty ? "all of it" : string.Create(CultureInfo.InvariantCulture, $"from step {caution.BeforeStep}"))}; {Escape(caution.Source)})*\n");
    }

    private static void Parts(StringBuilder page, PlanDocument plan)
    {
        page.Append("\n## What the debris reached\n\n| part | grade | treatment | how it got here |\n| --- | --- | --- | --- |\n");
        foreach (PlanPart part in plan.Parts)
        {
            string grades = string.Join(", ", part.Exposure.Select(one => plan.Debris.Length > 1 ? $"{one.Debris} {Word(one.Grade)}" : Word(one.Grade)));
            string treatment = part.Treatment.IsEmpty ? "left alone" : string.Join(", ", part.Treatment.Select(one => one.ToString().ToLowerInvariant()));
            page.Append(CultureInfo.InvariantCulture, $"| {Escape(part.Name)} | {Escape(grades)} | {treatment} | {Escape(string.Join(" > ", part.Path))} |\n");
        }
    }

    private static void Findings(StringBuilder page, PlanDocument plan, Names names)
    {
        if (plan.Findings.IsEmpty)
            return;
        page.Append("\n## What was seen\n\n");
        foreach (PlanFinding finding in plan.Findings)
            page.Append(CultureInfo.InvariantCulture, $"- {Escape(names.Of(finding.Part))}: {Escape(ReachedWords.Seen(finding, names))}\n");
    }

    private static string Word(Grade grade) => grade.ToString().ToLowerInvariant();

    private static void Steps(StringBuilder page, PlanDocument plan)
    {
        page.Append("\n## Steps\n");
        Phase? phase = null;
        foreach (PlanStep step in plan.Steps)
        {
            if (step.Phase != phase)
            {
                phase = step.Phase;
                page.Append(CultureInfo.InvariantCulture, $"\n### {PhaseWords.Of(step.Phase)}\n\n");
            }

            foreach (PlanCaution caution in plan.Cautions.Where(caution => !caution.Steps.IsEmpty && caution.BeforeStep == step.Number))
                page.Append(CultureInfo.InvariantCulture, $"> **Careful:** {Escape(caution.Text)}\n\n");
            // The number is escaped, so that it is not taken for a list of its own.
            page.Append(CultureInfo.InvariantCulture, $"- [ ] **{step.Number}** {Escape(step.Text)}{(step.Minutes > 0 && step.Technician is not null ? string.Create(CultureInfo.InvariantCulture, $" ({step.Minutes:0.#} min)") : "")}\n");
        }
    }

    private static void Order(StringBuilder page, PlanDocument plan)
    {
        if (plan.Order.IsEmpty)
            return;
        page.Append("\n## Order\n\n");
        foreach (PlanOrderLine line in plan.Order)
        {
            string quantity = line.Quantity > 0 ? string.Create(CultureInfo.InvariantCulture, $"{line.Quantity:0.##} {line.Unit ?? "×"} ") : "";
            string lead = line.LeadDays is { } days ? string.Create(CultureInfo.InvariantCulture, $", {days:0.#} d to come") : "";
            page.Append(CultureInfo.InvariantCulture, $"- [ ] {quantity}{Escape(line.Item)} ({line.Why}{lead})\n");
        }
    }

    /// <summary>Text that Markdown shows as it is: no markup, no HTML, on one line.</summary>
    internal static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (char one in TextPage.Harmless(text))
        {
            if (one is '<' or '>' or '&')
                escaped.Append(one switch { '<' => "&lt;", '>' => "&gt;", _ => "&amp;" });
            else if (Special.Contains(one, StringComparison.Ordinal) && one is not ('.' or '-' or '(' or ')' or '+' or '!'))
                escaped.Append('\\').Append(one);
            else
                escaped.Append(one);
        }

        return escaped.ToString();
    }
}
