using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>The steps of a plan, to be ticked; neighbours at repeated parts in one.</summary>
internal sealed class StepsText(TextPage page, PlanDocument plan, Names names)
{
    // The column of boxes; with looks there is room for the longest range of numbers, so that a letter stands clear of it.
    private readonly int box = BoxesOf(plan);

    private readonly StepGroups groups = new(plan, names);
    private readonly LookWords looks = new(plan, names);

    // Letters stand in a column of their own, as wide as the most of them take.
    private readonly int indent = plan.Steps.Select(step => LookWords.Margin(step).Length).Append(0).Max() is > 0 and var letters
        ? BoxesOf(plan) + letters + 2 : BoxesOf(plan);

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
        PlanLook? look = looks.MadeIn(first).FirstOrDefault();
        string text = (look is null ? groups.TextOf(group) : LookWords.Lettered(look, groups.TextOf(group))) + Facts(group);
        string margin = LookWords.Margin(first);
        if (group.Count == 1)
        {
            page.Paragraph(text, indent, Lead($"[ ] {Number(first.Number)}{mark}", margin));
            if (look is not null)
                Outcomes(look);
            return;
        }

        page.Paragraph(text, indent, Lead($"    {StepGroups.NumbersOf(group)}{mark}", margin));
        page.Paragraph(string.Join("  ", group.Select(step => $"[ ] {Number(step.Number)}")), indent);
    }

    private void Outcomes(PlanLook look)
    {
        page.Paragraph($"clean: {looks.Clean(look)}.", indent + 4, new string(' ', indent) + "[ ]");
        page.Paragraph($"{LookWords.Find(look).ToLowerInvariant()}{looks.FoundAtStep(look)}", indent + 4, new string(' ', indent) + "[ ]");
        foreach (string sentence in looks.Against(look))
            page.Paragraph(sentence, indent + 4);
    }

    private string Lead(string ticks, string margin) => margin.Length > 0 ? DisplayWidth.Pad(ticks, box) + margin : ticks.Length < indent ? ticks : ticks + " ";

    private string Facts(List<PlanStep> group)
    {
        string[] facts = [.. group[0].Method is { } method ? [method] : Array.Empty<string>(), .. groups.WaitsOf(group), .. groups.CautionsNewOn(group[0]).Select(PlanSentences.CautionMark)];
        return facts.Length == 0 ? "" : $" ({string.Join(", ", facts)})";
    }

    // "    133–138*" and a space.
    private static int BoxesOf(PlanDocument plan) => plan.Looks.IsEmpty ? 11 : Math.Max(11, 7 + 2 * Number(plan.Steps.Length).Length);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
