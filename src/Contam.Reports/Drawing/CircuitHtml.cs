using System.Collections.Immutable;
using Contam.Families;
using Contam.Reports.Markup;
using Contam.Spread;

namespace Contam.Reports.Drawing;

/// <summary>The picture of <see cref="CircuitSvg"/> on a page of its own: one file, no network, no script.</summary>
public static class CircuitHtml
{
    private const string Sheet = """
        body{margin:1rem;overflow-wrap:break-word;font-family:"DejaVu Sans",Verdana,Arial,sans-serif;color:#111;background:#fff}
        h1{font-size:1.2rem}
        .sheet{overflow:auto;max-height:85vh;border:1px solid #888}.sheet:focus-visible{outline:3px solid #0b3fa8;outline-offset:2px}
        @media print{body{margin:0}h1,p{margin:0 0 6pt}.sheet{display:none}}
        """;

    /// <summary>Writes the page.</summary>
    /// <inheritdoc cref="CircuitSvg.Write"/>
    public static void Write(Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, PictureOptions options, MarkupWriter page)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(page);
        string title = family.Title.Length > 0 ? family.Title : family.Id;
        HtmlPage.Begin(page, title, PrintPieces.Style + Sheet).Open("section").Leaf("h1", title).Line();
        if (!failed.IsEmpty)
            page.Leaf("p", $"Failed: {string.Join(", ", failed.Select(id => family[id].Name))}. Debris: {string.Join(", ", spreads.Select(spread => spread.Debris.Name))}.").Line();
        page.Open("div", ("class", "sheet"), ("tabindex", "0"), ("role", "region"), ("aria-label", "picture of the circuits")).Line();
        (double width, double height) = CircuitSvg.Write(family, spreads, failed, options with { PageId = "circuits", LegendWidth = PrintPieces.Widest }, page);
        page.Close().Line();
        PrintPieces.Write(page, "circuits", width, height);
        page.Close().Line();
        HtmlPage.End(page);
    }
}
