using Contam.Audits;
using Contam.Problems;
using Contam.Reports.Markup;

namespace Contam.Reports.Audits;

/// <summary>An audit as one HTML page that stands by itself: no script, nothing fetched, and fit to be printed.</summary>
public static class AuditHtml
{
    private const string Sheet = """
        body{font:15px/1.45 system-ui,sans-serif;margin:2em auto;max-width:72em;padding:0 1em;color:#111;background:#fff;overflow-wrap:anywhere}
        h1{font-size:1.5em}h2{font-size:1.15em;border-bottom:1px solid #999;margin-top:2em}h3{font-size:1em;margin-bottom:.2em}
        table{border-collapse:collapse;width:100%;font-size:.9em}th,td{border:1px solid #bbb;padding:.25em .5em;text-align:left;vertical-align:top}
        th{background:#eee}td.n{text-align:right}td.gap{background:#f6c9c2;font-weight:bold}p.no{border-left:.4em solid #b3261e;padding-left:.6em}
        p.yes{border-left:.4em solid #2e7d32;padding-left:.6em}.mend{color:#444;font-style:italic}code{font-size:.95em}
        .frame{overflow-x:auto}.frame:focus-visible{outline:3px solid #0b3fa8;outline-offset:2px}.frame table{overflow-wrap:normal;min-width:max-content}
        @page{margin:14mm 13mm 18mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font:9pt sans-serif}}
        @media print{.frame{overflow:visible}.frame table{min-width:0;overflow-wrap:anywhere}body{margin:0;max-width:none;font-size:11px}tr,li{break-inside:avoid}h2,h3{break-after:avoid}thead{display:table-header-group}}
        """;

    /// <summary>Writes it; with a change, only what has changed.</summary>
    public static void Write(Audit audit, AuditChange? change, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(audit);
        var sheet = new AuditSheet(audit, change);
        MarkupWriter page = HtmlPage.Begin(new MarkupWriter(writer), sheet.Title, Sheet);
        bool isWell = (change?.Errors ?? audit.Errors) == 0;
        page.Leaf("h1", sheet.Title).Line().Leaf("p", sheet.Scope).Line().Leaf("p", sheet.Verdict, ("class", isWell ? "yes" : "no")).Line();
        Severity? last = null;
        foreach ((AuditCode code, AuditMessage[] messages) in sheet.Groups)
        {
            if (last != code.Severity)
                page.Leaf("h2", code.Severity == Severity.Error ? "Must be mended" : "To read").Line();
            last = code.Severity;
            page.Leaf("h3", $"{code.Title} ({AuditSheet.Number(messages.Length)})").Line().Leaf("p", Sentence(code.Meaning), ("class", "mend")).Line();
            Messages(page, messages);
        }

        if (change is null)
            Whole(page, sheet, audit);
        else
            Changed(page, change);
        HtmlPage.End(page);
    }

    private static void Messages(MarkupWriter page, AuditMessage[] messages)
    {
        page.Open("ul").Line();
        foreach (AuditMessage message in messages)
        {
            page.Open("li");
            if (message.Place is { } place)
                page.Leaf("code", place.ToString()).Text(" ");
            page.Text(Sentence(message.Text));
            if (message.Severity == Severity.Error && message.Mend.Length > 0)
                page.Text(" ").Leaf("span", Sentence(message.Mend), ("class", "mend"));
            page.Close().Line();
        }

        page.Close().Line();
    }

    private static void Whole(MarkupWriter page, AuditSheet sheet, Audit audit)
    {
        if (!audit.Failures.IsEmpty)
            page.Leaf("h2", "How much hangs on looks").Line().Leaf("p", sheet.OnLooks).Line();
        page.Leaf("h2", "Costliest failures").Line();
        Table(page, "costliest failures", ["family", "failed part", "debris", "parts reached", "steps", "hours at most", "sure", "to be expected", "looks"], audit.Costliest.Select(failure => new[]
        {
            failure.Family, failure.Part, failure.Debris, AuditSheet.Number(failure.Reached), AuditSheet.Number(failure.Steps), AuditSheet.Number(failure.BenchHours),
            AuditSheet.Number(failure.Hours.Sure), AuditSheet.Number(failure.Hours.Expected), AuditSheet.Number(failure.Hours.Looks),
        }));
        page.Leaf("h2", "Families").Line();
        Table(page, "families", ["family", "file", "title", "parts", "failures"], audit.Families.Select(family => new[]
        {
            family.Id, family.File, family.Title, AuditSheet.Number(family.Parts), AuditSheet.Number(family.Failures),
        }));
        page.Leaf("h2", "Coverage").Line().Leaf("p", "How many parts of a kind each debris reaches; marked ! where some are without a rule.").Line();
        Table(page, "coverage", ["kind", "debris", .. audit.Families.Select(family => family.Id)], audit.Matrix.GroupBy(cell => (cell.Kind, cell.Debris)).Select(row => (string[])
        [
            row.Key.Kind,
            row.Key.Debris,
            .. audit.Families.Select(family => row.FirstOrDefault(cell => cell.Family == family.Id) is { } cell ? AuditSheet.Number(cell.Parts) + (cell.Covered ? "" : " !") : ""),
        ]));
    }

    private static void Changed(MarkupWriter page, AuditChange change)
    {
        if (change.Gone.Length > 0)
        {
            page.Leaf("h2", "No more there").Line();
            Messages(page, [.. change.Gone]);
        }

        if (change.Failures.Length == 0)
            return;
        page.Leaf("h2", "Plans that have changed").Line().Open("ul").Line();
        foreach (ChangedFailure failure in change.Failures)
            page.Leaf("li", AuditSheet.Told(failure)).Line();
        page.Close().Line();
    }

    private static void Table(MarkupWriter page, string name, string[] heads, IEnumerable<string[]> rows)
    {
        page.Open("div", ("class", "frame"), ("tabindex", "0"), ("role", "region"), ("aria-label", name)).Open("table").Open("thead").Open("tr");
        foreach (string head in heads)
            page.Leaf("th", head, ("scope", "col"));
        page.Close().Close().Line().Open("tbody").Line();
        foreach (string[] row in rows)
        {
            page.Open("tr");
            foreach (string cell in row)
                page.Leaf("td", cell, ("class", cell.EndsWith('!') ? "gap" : cell.Length > 0 && char.IsAsciiDigit(cell[0]) ? "n" : null));
            page.Close().Line();
        }

        page.Close().Close().Close().Line();
    }

    private static string Sentence(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}.";
}
