using Contam.Audits;
using Contam.Problems;
using Contam.Reports.Text;

namespace Contam.Reports.Audits;

/// <summary>An audit as text for people.</summary>
public static class AuditText
{
    /// <summary>Writes it; with a change, only what has changed.</summary>
    public static void Write(Audit audit, AuditChange? change, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(audit);
        var page = new TextPage(writer, look);
        var sheet = new AuditSheet(audit, change);
        page.Subheading(sheet.Title);
        page.Paragraph(sheet.Scope);
        page.Paragraph(sheet.Verdict);
        Severity? last = null;
        foreach ((AuditCode code, AuditMessage[] messages) in sheet.Groups)
        {
            if (last != code.Severity)
                page.Heading(code.Severity == Severity.Error ? "Must be mended" : "To read");
            last = code.Severity;
            page.Subheading($"{code.Title} [{code.Code}] ({AuditSheet.Number(messages.Length)})");
            if (AuditSheet.IsListed(code))
                List(messages, page);
            else
                Array.ForEach(messages, message => Tell(message, page));
        }

        if (change is null)
            Whole(audit, sheet, page);
        else
            Changed(change, page);
    }

    private static void Tell(AuditMessage message, TextPage page)
    {
        page.Paragraph($"{(message.Place is { } place ? place + ": " : "")}{message.Text}.", 4, "  - ");
        if (message.Severity == Severity.Error && message.Mend.Length > 0)
            page.Paragraph($"{char.ToUpperInvariant(message.Mend[0])}{message.Mend[1..]}.", 4);
    }

    private static void List(AuditMessage[] messages, TextPage page)
    {
        foreach (IGrouping<string?, AuditMessage> family in messages.GroupBy(message => message.Family))
            page.Paragraph($"{family.Key}: {string.Join(", ", family.Select(message => message.About))}", 4, "  - ");
    }

    private static void Whole(Audit audit, AuditSheet sheet, TextPage page)
    {
        if (!audit.Failures.IsEmpty)
        {
            page.Heading("How much hangs on looks");
            page.Paragraph(sheet.OnLooks);
        }

        page.Heading("Costliest failures");
        foreach (AuditedFailure failure in audit.Costliest)
            page.Row(2, ($"{AuditSheet.Number(failure.BenchHours)} h", 8), ($"{failure.Debris} from {failure.Part} in {failure.Family}: {AuditSheet.Count(failure.Reached, "part")}, {AuditSheet.Count(failure.Steps, "step")}; {AuditSheet.Hours(failure.Hours)}", 0));
        page.Heading("Coverage: kinds that each debris reaches, and in how many families");
        foreach (IGrouping<string, AuditCell> kind in audit.Matrix.GroupBy(cell => cell.Kind))
        {
            page.Row(2, (kind.Key, 18), (string.Join("; ", kind.GroupBy(cell => cell.Debris).Select(debris =>
            {
                string[] gaps = [.. debris.Where(cell => !cell.Covered).Select(cell => cell.Family)];
                return $"{debris.Key} {AuditSheet.Number(debris.Count())}{(gaps.Length > 0 ? $", without a rule in {string.Join(", ", gaps)}" : "")}";
            })), 0));
        }
    }

    private static void Changed(AuditChange change, TextPage page)
    {
        if (change.Gone.Length > 0)
        {
            page.Heading("No more there");
            foreach (AuditMessage message in change.Gone)
                page.Paragraph($"{(message.Family is { } family ? family + ": " : "")}{message.Text} [{message.Code}]", 4, "  - ");
        }

        if (change.Failures.Length == 0)
            return;
        page.Heading("Plans that have changed");
        foreach (ChangedFailure failure in change.Failures)
            page.Paragraph(AuditSheet.Told(failure), 4, "  - ");
    }
}
