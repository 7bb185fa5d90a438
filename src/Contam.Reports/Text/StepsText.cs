using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>The steps of a plan, to be ticked; neighbours at repeated parts in one.</summary>
internal sealed class StepsText(TextPage page, PlanDocument plan, Names names)
{
    private readonly ILookup<int, int> cautionsOn = plan.Cautions
        .SelectMany((caution, index) => caution.Steps.Select(step => (step, index)))
        .ToLookup(pair => pair.step, pair => pair.index);

    public void Write()
    {
        page.Heading("Steps");
        Phase? phase = null;
        foreach (List<PlanStep> group in Groups())
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

    private IEnumerable<List<PlanStep>> Groups() => plan.Steps.GroupAdjacent(step => step.Phase).SelectMany(phase => RepeatFolding.FoldTurns(
        phase,
        step => step.Part is null ? "" : names.RepeatOf(step.Part),
        step => step.Part is null ? 0 : names.NumberOf(step.Part),
        KeyOf,
        (step, other) => step.After.Contains(other.Number)));

    private string KeyOf(PlanStep step) => string.Create(
        CultureInfo.InvariantCulture,
        $"{step.Phase} {step.Action} {step.Minutes} {step.Technician} {step.Critical} {string.Join(',', cautionsOn[step.Number].Where(index => plan.Cautions[index].BeforeStep == step.Number))} {WithName(step, "#")}");

    private void WriteGroup(List<PlanStep> group)
    {
        PlanStep first = group[0];
        foreach (int caution in cautionsOn[first.Number].Where(index => plan.Cautions[index].BeforeStep == first.Number))
            page.Paragraph($"Careful: {plan.Cautions[caution].Text}", indent: 11, lead: "       " + PlanText.CautionMark(caution));
        string mark = first.Critical ? "*" : "";
        if (group.Count == 1)
        {
            page.Paragraph(first.Text + Facts(group), indent: 11, lead: $"[ ] {Number(first.Number)}{mark}");
            return;
        }

        bool areNeighbours = group[^1].Number - first.Number == group.Count - 1;
        string numbers = areNeighbours ? RepeatFolding.Range(first.Number, group[^1].Number) : $"{Number(first.Number)}…";
        page.Paragraph(WithName(first, RepeatFolding.Range(names.NumberOf(first.Part!), names.NumberOf(group[^1].Part!))) + Facts(group), indent: 11, lead: $"    {numbers}{mark}");
        page.Paragraph(string.Join("  ", group.Select(step => $"[ ] {Number(step.Number)}")), indent: 11);
    }

    private string Facts(List<PlanStep> group)
    {
        PlanStep first = group[0];
        var facts = new List<string>();
        string minutes = first.Minutes.ToString("0.#", CultureInfo.InvariantCulture);
        if (first.Technician is null && first.Minutes > 0)
            facts.Add(string.Create(CultureInfo.InvariantCulture, $"{first.Minutes / 60:0.#} working h, no hands"));
        else if (first.Minutes > 0)
            facts.Add(group.Count == 1 ? $"{minutes} min" : string.Create(CultureInfo.InvariantCulture, $"{group.Count} × {minutes} min"));
        if (plan.Hours.Technicians > 1 && first.Technician is { } technician)
            facts.Add(string.Create(CultureInfo.InvariantCulture, $"technician {technician}, from {Clock(first.Start)}"));
        IEnumerable<string> marks = cautionsOn[first.Number].Where(index => plan.Cautions[index].BeforeStep != first.Number).Select(PlanText.CautionMark);
        facts.AddRange(marks);
        return facts.Count == 0 ? "" : $" ({string.Join(", ", facts)})";
    }

    private static string Clock(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{(int)(minutes / 60)}:{(int)(minutes % 60):00}");

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The text with the number of its repeated part, wherever it stands behind the name of a repeated part, turned into something else.</summary>
    private string WithName(PlanStep step, string number) =>
        step.Part is null || names.NumberOf(step.Part) == 0 ? step.Text : names.Renumber(step.Text, names.NumberOf(step.Part), number);
}
