using Contam.Plans;
using Contam.Reports.Markup;
using Contam.Reports.Text;

namespace Contam.Reports.Sheets;

/// <summary>The steps, each with a box to tick. Methods and cautions are named by number.</summary>
internal sealed class SheetSteps(MarkupWriter page, PlanDocument plan, Names names, SheetCircuits circuits)
{
    private readonly StepGroups groups = new(plan, names);
    private readonly LookWords words = new(plan, names);
    private readonly SheetLooks looks = new(page, plan, names);

    public void Write()
    {
        PlanHtml.Chapter(page, "steps", "Steps");
        page.Leaf("p", "Tick them in order. Steps marked * delay the end if they are delayed.").Line();
        List<List<PlanStep>>[] phases = [.. groups.All().GroupAdjacent(group => group[0].Phase)];
        for (int i = 0; i < phases.Length; i++)
        {
            List<List<PlanStep>> phase = phases[i];
            page.Open("div", ("class", "cs-phase")).Leaf("h3", PhaseWords.Of(phase[0][0].Phase)).Line().Open("ol", ("class", "cs-steps")).Line();
            foreach (List<PlanStep> group in phase)
                Group(group);
            page.Close().Line();
            // Phases take turns where work waits; one is signed for where it ends for good.
            if (phases[(i + 1)..].All(later => later[0][0].Phase != phase[0][0].Phase))
                page.Open("p", ("class", "cs-fields")).Leaf("span", $"{PhaseWords.Of(phase[0][0].Phase)} done, by").Leaf("span", "on").Close().Line();
            page.Close().Line();
        }

        page.Close().Line();
    }

    private void Group(List<PlanStep> group)
    {
        PlanStep first = group[0];
        string number = SheetCircuits.Number(first.Number);
        IEnumerable<string> parts = group.SelectMany(step => step.Part is { } part ? [part] : step.Parts);
        page.Open(
            "li",
            [
                ("class", "cs-step"),
                ("id", "step-" + number),
                ("data-circuits", circuits.Of(parts)),
                ("data-person", first.Technician is { } technician ? SheetCircuits.Number(technician) : ""),
                .. SheetLooks.Condition(first.OnlyIf, first.Unless),
            ]).Line();
        string text = " " + (words.MadeIn(first).FirstOrDefault() is { } look ? LookWords.Lettered(look, groups.TextOf(group)) : groups.TextOf(group));
        string told = StepGroups.NumbersOf(group) + (first.Critical ? "*" : "");
        if (group.Count == 1)
        {
            page.Open("div", ("class", "cs-line"));
            Box(first);
            page.Open("label", ("for", "tick-" + number)).Leaf("b", told);
            looks.Margin(first.OnlyIf, first.Unless);
            page.Text(text).Close().Close().Line();
        }
        else
        {
            page.Open("div", ("role", "group"), ("aria-labelledby", "does-" + number)).Open("p", ("id", "does-" + number)).Leaf("b", told);
            looks.Margin(first.OnlyIf, first.Unless);
            page.Text(text).Close().Line();
            page.Open("p", ("class", "cs-boxes"));
            foreach (PlanStep step in group)
            {
                page.Open("label");
                Box(step);
                page.Text(" " + SheetCircuits.Number(step.Number)).Close().Text(" ");
            }

            page.Close().Close().Line();
        }

        Facts(group);
        looks.Outcomes(first);
        page.Close().Line();
    }

    private void Box(PlanStep step) => page.Empty(
        "input",
        ("type", "checkbox"),
        ("class", "cs-tick cs-done"),
        ("id", "tick-" + SheetCircuits.Number(step.Number)),
        ("data-after", string.Join(' ', step.After.Select(SheetCircuits.Number))),
        ("data-minutes", words.Any && step.Technician is not null ? MarkupWriter.Number(step.Minutes) : null));

    private void Facts(List<PlanStep> group)
    {
        string[] times = [.. groups.TimesOf(group)];
        int[] cautions = [.. groups.CautionsOn(group[0])];
        string? method = group[0].Method;
        if (times.Length + cautions.Length == 0 && method is null)
            return;
        page.Open("p", ("class", "cs-facts"));
        if (method is not null)
            page.Leaf("a", method, ("href", "#" + method)).Text(times.Length > 0 ? ", " : "");
        page.Text(string.Join(", ", times));
        if (cautions.Length > 0)
            page.Text(times.Length > 0 || method is not null ? "; careful:" : "Careful:");
        foreach (int caution in cautions)
            page.Text(" ").Leaf("a", PlanSentences.CautionMark(caution), ("href", $"#caution-{SheetCircuits.Number(caution + 1)}"));
        page.Close().Line();
    }
}
