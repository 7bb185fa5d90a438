using System.Globalization;
using Contam.Plans;
using Contam.Reports.Markup;
using Contam.Reports.Text;

namespace Contam.Reports.Sheets;

/// <summary>The hours, and the schedule as bars: a row for each phase and whoever works in it, a bar for each step.</summary>
internal sealed class SheetSchedule(MarkupWriter page, PlanDocument plan)
{
    private const int MostMarks = 5;
    private readonly double end = Math.Max(1, plan.Steps.Select(step => step.Finish).DefaultIfEmpty(0).Max());

    public void Write()
    {
        PlanHtml.Chapter(page, "hours", "Hours");
        page.Leaf("p", PlanSentences.Hours(plan)).Line();
        PlanStep[] timed = [.. plan.Steps.Where(step => step.Finish > step.Start)];
        if (timed.Length > 0)
            Bars(timed);
        page.Close().Line();
    }

    private void Bars(PlanStep[] timed)
    {
        page.Leaf("p", "Each bar is a step, in working hours from the beginning. Black: a delay here delays the end. White: it has room. Broken outline: waiting, or work elsewhere, with no hands.", ("class", "cs-small")).Line();
        page.Open("table", ("class", "cs-bars")).Open("thead").Open("tr").Leaf("th", "Phase", ("scope", "col")).Leaf("th", "From, to", ("scope", "col")).Open("th", ("scope", "col"));
        page.Open("svg", ("class", "cs-row"), ("role", "img"), ("aria-label", $"scale from 0 to {PlanSentences.Clock(end)} hours"));
        double every = MarkEvery(end / 60);
        foreach (double hour in Marks(every))
            page.Leaf("text", hour.ToString("0.##", CultureInfo.InvariantCulture) + " h", ("x", Share(hour * 60)), ("y", "14"));
        page.Close().Close().Close().Close().Line().Open("tbody").Line();
        foreach (IGrouping<(Phase Phase, int Person), PlanStep> row in timed.GroupBy(step => (step.Phase, Person: step.Technician ?? int.MaxValue)).OrderBy(row => row.Key.Phase).ThenBy(row => row.Key.Person))
            Row(row.Key.Phase, row.First().Technician, [.. row], every);
        page.Close().Close().Line();
    }

    private void Row(Phase phase, int? person, PlanStep[] steps, double every)
    {
        string who = person is null ? ", no hands" : plan.Hours.Technicians > 1 ? $", technician {SheetCircuits.Number(person.Value)}" : "";
        string when = $"{PlanSentences.Clock(steps.Min(step => step.Start))}–{PlanSentences.Clock(steps.Max(step => step.Finish))}";
        page.Open("tr").Leaf("th", PhaseWords.Of(phase) + who, ("scope", "row")).Leaf("td", when).Open("td");
        page.Open("svg", ("class", "cs-row"), ("role", "img"), ("aria-label", $"{PhaseWords.Of(phase)}{who}: {when}"));
        foreach (double hour in Marks(every))
            page.Empty("line", ("class", "cs-mark"), ("x1", Share(hour * 60)), ("x2", Share(hour * 60)), ("y1", "0"), ("y2", "20"));
        foreach (PlanStep step in steps)
        {
            string look = step.Technician is null ? "cs-bar cs-waits" : step.Critical ? "cs-bar cs-critical" : "cs-bar";
            page.Open("rect", ("class", look), ("x", Share(step.Start)), ("y", "4"), ("width", Share(step.Finish - step.Start)), ("height", "12"));
            page.Leaf("title", $"Step {SheetCircuits.Number(step.Number)}, {PlanSentences.Clock(step.Start)}–{PlanSentences.Clock(step.Finish)}").Close();
        }

        page.Close().Close().Close().Line();
    }

    private IEnumerable<double> Marks(double every)
    {
        for (int i = 0; i * every * 60 < end; i++)
            yield return i * every;
    }

    // 1, 2 or 5 times a power of ten: the first with few enough marks.
    private static double MarkEvery(double hours)
    {
        for (double ten = 0.1; ; ten *= 10)
        {
            foreach (int times in (int[])[1, 2, 5])
            {
                if (hours / (ten * times) <= MostMarks)
                    return ten * times;
            }
        }
    }

    private string Share(double minutes) => MarkupWriter.Number(minutes / end * 100) + "%";
}
