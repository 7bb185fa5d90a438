using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>The steps of a plan, to be ticked; neighbours at repeated parts in one.</summary>
internal sealed class StepsText(TextPage page, PlanDocument plan, Names names)
{
    private readonly StepGroups groups = new(plan, names);

    public void Write()
    {
        Phase? phase = null;
        foreach (List<PlanStep> group in groups.All())
        {
            if (group[0].Phase != phase)
            {
                phase = group[0].Phase;
                page.Gap();
                page.Subheading(PhaseWords.Of(group[0].Phase).ToUpperInvariant());
            }

            WriteGroup(group);
        }
    }

    private void WriteGroup(List<PlanStep> group)
    {
        PlanStep first = group[0];
        string mark = first.Critical ? "*" : "";
        string text = groups.TextOf(group) + Facts(group);
        if (group.Count == 1)
        {
            page.Paragraph(text, indent: 11, lead: $"[ ] {Number(first.Number)}{mark}");
            return;
        }

        page.Paragraph(text, indent: 11, lead: $"    {StepGroups.NumbersOf(group)}{mark}");
        page.Paragraph(string.Join("  ", group.Select(step => $"[ ] {Number(step.Number)}")), indent: 11);
    }

    private string Facts(List<PlanStep> group)
    {
        string[] facts = [.. group[0].Method is { } method ? [method] : Array.Empty<string>(), .. groups.TimesOf(group), .. groups.CautionsNewOn(group[0]).Select(PlanSentences.CautionMark)];
        return facts.Length == 0 ? "" : $" ({string.Join(", ", facts)})";
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
