namespace Contam.Reports.Markup;

/// <summary>An HTML page that stands by itself: one file, nothing fetched, its style within it.</summary>
internal static class HtmlPage
{
    /// <summary>Begins the page and its body; whoever writes it ends with <see cref="End"/>.</summary>
    public static MarkupWriter Begin(MarkupWriter page, string title, string sheet) => page
        .DocumentType().Open("html", ("lang", "en")).Line()
        .Open("head").Empty("meta", ("charset", "utf-8")).Empty("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"))
        .Leaf("title", title).Style(sheet).Close().Line()
        .Open("body").Open("main").Line();

    /// <summary>Ends the page.</summary>
    public static void End(MarkupWriter page) => page.Close().Close().Close().Line();
}
