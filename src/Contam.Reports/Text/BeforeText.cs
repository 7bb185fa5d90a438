using System.Globalization;
using Contam.Measurement.Wording;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What the work takes: people, tools, supplies and what to order, a line or two each.</summary>
internal static class BeforeText
{
    private const string Between = " · ";

    /// <summary>The lines, each with what it is about; those with nothing to say are left out.</summary>
    public static IEnumerable<(string Name, string Text)> Lines(PlanDocument plan, TextLook look)
    {
        (string Name, string Text)[] takes =
        [
            ("Hands", string.Join("; ", plan.Before.Hands)),
            ("Tools", string.Join(", ", plan.Before.Tools)),
            ("Supplies", string.Join(", ", plan.Before.Supplies.Select(supply => PlanSentences.Supply(supply, look)))),
        ];
        return takes.Where(line => line.Text.Length > 0).Concat(Orders(plan, look));
    }

    /// <summary>What to order: what is needed whatever the looks show, what takes long first; then what hangs on looks, a line for each condition.</summary>
    private static IEnumerable<(string Name, string Text)> Orders(PlanDocument plan, TextLook look)
    {
        PlanOrderLine[] sure = [.. plan.Order.Where(line => line.OnlyIf.IsEmpty)];
        PlanOrderLine[] late = [.. sure.Where(line => line.LeadDays is not null)];
        if (late.Length > 0)
            yield return ("Order now", List(late));
        if (late.Length < sure.Length)
            yield return ("Order", List(sure.Except(late)));
        foreach (IGrouping<string, PlanOrderLine> hanging in plan.Order.Where(line => !line.OnlyIf.IsEmpty).GroupBy(line => string.Join(' ', line.OnlyIf), StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal))
            yield return ($"If {hanging.Key}", List(hanging) + Ahead(plan, [.. hanging.Where(line => line.LeadDays is not null)]));

        string List(IEnumerable<PlanOrderLine> lines) => string.Join(Between, NumberedNames.Folded(lines.Select(line => PlanSentences.Ordered(line, look))));
    }

    /// <summary>What it saves to order what takes long before the look that it hangs on; nothing where nothing takes long.</summary>
    private static string Ahead(PlanDocument plan, PlanOrderLine[] late) => late.Length == 0 ? "" : DaysSaved(plan, late) is > 0 and var days
        ? string.Create(CultureInfo.InvariantCulture, $". Order it after the look; ahead of it saves at most {days:0.#} d.")
        : ". Order it after the look; ahead of it saves no day.";

    /// <summary>Working days, rounded up to a tenth: until the last look that it hangs on is made, but for what the longest wait that is sure covers.</summary>
    private static double DaysSaved(PlanDocument plan, PlanOrderLine[] late)
    {
        double sure = plan.Order.Where(line => line.OnlyIf.IsEmpty).Max(line => line.LeadDays) ?? 0;
        var stepOf = plan.Steps.ToDictionary(step => step.Number);
        double saved = 0;
        foreach (PlanOrderLine line in late)
        {
            double looked = plan.Looks.Where(one => line.OnlyIf.Contains(one.Id)).Max(one => stepOf[one.Step].Finish) / (60 * plan.Hours.WorkingDay);
            saved = Math.Max(saved, looked + line.LeadDays!.Value - Math.Max(line.LeadDays.Value, sure));
        }

        return Math.Ceiling(Math.Round(saved * 10, 6)) / 10;
    }
}
