using System.Globalization;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Reports;

/// <summary>
/// A plan as tables of comma-separated values (RFC 4180, lines closed by CR LF): the steps, what to order, or the looks that decide.
/// A cell that a spreadsheet would take for a formula gets an apostrophe before it.
/// </summary>
public static class PlanCsv
{
    /// <summary>Writes the steps.</summary>
    public static void WriteSteps(PlanDocument plan, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Line(writer, "number", "phase", "action", "part", "text", "method", "after", "minutes", "start", "finish", "technician", "critical", "seals", "for access", "only if", "unless");
        foreach (PlanStep step in plan.Steps)
        {
            Line(
                writer,
                Number(step.Number),
                PhaseWords.Of(step.Phase).ToLowerInvariant(),
                ActionWord(step.Action),
                step.Part ?? string.Join(' ', step.Parts),
                step.Text,
                step.Method ?? "",
                string.Join(' ', step.After.Select(number => Number(number))),
                Number(step.Minutes),
                Number(step.Start),
                Number(step.Finish),
                step.Technician is { } technician ? Number(technician) : "",
                step.Critical ? "yes" : "no",
                string.Join(' ', step.Seals),
                step.ForAccess ? "yes" : "no",
                string.Join(' ', step.OnlyIf),
                string.Join(' ', step.Unless));
        }
    }

    /// <summary>Writes what to order.</summary>
    public static void WriteOrder(PlanDocument plan, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Line(writer, "item", "quantity", "unit", "why", "lead days", "only if");
        foreach (PlanOrderLine line in plan.Order)
            Line(writer, line.Item, Number(line.Quantity), line.Unit ?? "", line.Why, line.LeadDays is { } days ? Number(days) : "", string.Join(' ', line.OnlyIf));
    }

    /// <summary>Writes the deciding looks; a plan without has the head of the table alone.</summary>
    public static void WriteLooks(PlanDocument plan, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Line(writer, "look", "places", "debris", "step", "minutes", "only if", "odds", "clears", "minutes hanging");
        foreach (PlanLook look in plan.Looks)
        {
            Line(
                writer,
                look.Id,
                string.Join(' ', look.Places),
                string.Join(' ', look.Debris),
                Number(look.Step),
                Number(look.Minutes),
                string.Join(' ', look.OnlyIf),
                look.Odds.ToString("0.####", CultureInfo.InvariantCulture),
                string.Join(' ', look.Clears),
                Number(look.MinutesHanging));
        }
    }

    private static string ActionWord(StepAction action) => action switch
    {
        StepAction.MakeSafe => "make-safe",
        StepAction.SendOut => "send-out",
        _ => action.ToString().ToLowerInvariant(),
    };

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static void Line(TextWriter writer, params ReadOnlySpan<string> cells)
    {
        for (int i = 0; i < cells.Length; i++)
        {
            if (i > 0)
                writer.Write(',');
            writer.Write(Cell(cells[i]));
        }

        writer.Write("\r\n");
    }

    /// <summary>A cell, made harmless and quoted where it must be.</summary>
    internal static string Cell(string text)
    {
        string harmless = TextPage.Harmless(text);
        if (harmless.Length > 0 && harmless[0] is '=' or '+' or '-' or '@')
            harmless = "'" + harmless;
        return harmless.AsSpan().IndexOfAny(",\"") >= 0 ? "\"" + harmless.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : harmless;
    }
}
