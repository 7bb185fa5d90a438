using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What the work takes: people, tools, supplies and what to order, a line or two each.</summary>
internal static class BeforeText
{
    private const string Between = " · ";

    /// <summary>The lines, each with what it is about; those with nothing to say are left out.</summary>
    public static IEnumerable<(string Name, string Text)> Lines(PlanDocument plan, TextLook look)
    {
        PlanOrderLine[] late = [.. plan.Order.Where(line => line.LeadDays is not null)];
        return new (string Name, string Text)[]
        {
            ("Hands", string.Join("; ", plan.Before.Hands)),
            ("Tools", string.Join(", ", plan.Before.Tools)),
            ("Supplies", string.Join(", ", plan.Before.Supplies.Select(supply => PlanSentences.Supply(supply, look)))),
            ("Order now", string.Join(Between, late.Select(line => PlanSentences.Ordered(line, look)))),
            ("Order", string.Join(Between, plan.Order.Except(late).Select(line => PlanSentences.Ordered(line, look)))),
        }.Where(line => line.Text.Length > 0);
    }
}
