using Contam.Audits;
using Contam.Problems;

namespace Contam.Reports.Audits;

/// <summary>
/// An audit as tables of comma-separated values (RFC 4180, lines closed by CR LF). A cell that a spreadsheet would take for a formula gets an apostrophe before it.
/// </summary>
public static class AuditCsv
{
    /// <summary>Writes the messages; with a change, those that are new.</summary>
    public static void WriteMessages(Audit audit, AuditChange? change, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(audit);
        Line(writer, "severity", "code", "family", "about", "file", "line", "text", "mend");
        foreach (AuditMessage message in change?.New ?? audit.Messages)
        {
            Line(
                writer,
                message.Severity == Severity.Error ? "error" : "warning",
                message.Code,
                message.Family ?? "",
                message.About,
                message.Place?.File ?? "",
                message.Place is { } place ? AuditSheet.Number(place.Line) : "",
                message.Text,
                message.Mend);
        }
    }

    /// <summary>Writes every failure; with a change, those whose plan has changed, as it is now.</summary>
    public static void WriteFailures(Audit audit, AuditChange? change, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(audit);
        Line(writer, "family", "part", "debris", "reached", "steps", "bench hours", "all clean", "expected", "looks", "on looks");
        foreach (AuditedFailure failure in change is null ? audit.Failures : [.. change.Failures.Select(one => one.Now).OfType<AuditedFailure>()])
        {
            Line(
                writer,
                failure.Family,
                failure.Part,
                failure.Debris,
                AuditSheet.Number(failure.Reached),
                AuditSheet.Number(failure.Steps),
                AuditSheet.Number(failure.BenchHours),
                AuditSheet.Number(failure.Hours.Sure),
                AuditSheet.Number(failure.Hours.Expected),
                AuditSheet.Number(failure.Hours.Looks),
                AuditSheet.Number(failure.Hours.OnLooks));
        }
    }

    /// <summary>Writes the coverage matrix: a line for each kind and debris, a column for each family with how many parts are reached, <c>!</c> where some are without a rule.</summary>
    public static void WriteMatrix(Audit audit, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(audit);
        string[] families = [.. audit.Families.Select(family => family.Id)];
        Line(writer, ["kind", "debris", .. families]);
        foreach (var row in audit.Matrix.GroupBy(cell => (cell.Kind, cell.Debris)))
        {
            Dictionary<string, AuditCell> cells = row.ToDictionary(cell => cell.Family, StringComparer.Ordinal);
            Line(writer, [row.Key.Kind, row.Key.Debris, .. families.Select(family => cells.TryGetValue(family, out AuditCell? cell) ? AuditSheet.Number(cell.Parts) + (cell.Covered ? "" : "!") : "")]);
        }
    }

    private static void Line(TextWriter writer, params ReadOnlySpan<string> cells)
    {
        for (int i = 0; i < cells.Length; i++)
        {
            if (i > 0)
                writer.Write(',');
            writer.Write(PlanCsv.Cell(cells[i]));
        }

        writer.Write("\r\n");
    }
}
