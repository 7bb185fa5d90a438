using Contam.Reports.Markup;
using Contam.Reports.Text;
using Contam.Reviews;

namespace Contam.Reports.Reviews;

/// <summary>A review as one HTML page that stands by itself, made to be printed, ticked with a pencil and signed: no script, nothing fetched.</summary>
public static class ReviewHtml
{
    private const string Style = """
        body{font:15px/1.45 system-ui,sans-serif;margin:2em auto;max-width:60em;padding:0 1em;color:#111;background:#fff;overflow-wrap:anywhere}
        h1{font-size:1.5em}h2{font-size:1.15em;border-bottom:1px solid #999;margin-top:2em}
        ul{list-style:none;padding:0}li{padding:.15em 0 .15em 2em;text-indent:-2em}li::before{content:"\2610";display:inline-block;width:2em;text-indent:0}
        ul.tree li{font-family:"DejaVu Sans Mono",monospace;font-size:.85em;white-space:pre-wrap;padding-top:0;padding-bottom:0}
        .sign p{margin:1.6em 0}
        @page{margin:14mm 13mm 18mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font:9pt sans-serif}}
        @media print{body{margin:0;max-width:none;font-size:11px}li{break-inside:avoid}h2{break-after:avoid}.sign{break-inside:avoid}}
        """;

    /// <summary>Writes it.</summary>
    public static void Write(FamilyReview review, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(writer);
        var sheet = new ReviewSheet(review, look);
        MarkupWriter page = HtmlPage.Begin(new MarkupWriter(writer), sheet.Title, Style);
        page.Leaf("h1", sheet.Title).Line().Leaf("p", sheet.Scope).Line().Leaf("p", ReviewSheet.Purpose).Line();
        foreach (ReviewSection section in sheet.Sections)
        {
            page.Leaf("h2", section.Title).Line().Leaf("p", section.Items.IsEmpty ? "None." : section.About).Line();
            if (section.Items.IsEmpty)
                continue;
            page.Open("ul", ("class", section.Trees ? "tree" : null)).Line();
            foreach (string item in section.Items)
                page.Leaf("li", item).Line();
            page.Close().Line();
        }

        page.Open("section", ("class", "sign")).Leaf("h2", "Signed").Line();
        foreach (string line in ReviewSheet.Signature)
            page.Leaf("p", line).Line();
        page.Leaf("p", sheet.HowToSign).Close().Line();
        HtmlPage.End(page);
    }
}
