namespace Contam.Reports.Markup;

/// <summary>An HTML page that stands by itself: one file, nothing fetched, its style within it.</summary>
internal static class HtmlPage
{
    /// <summary>Begins the page and its body; whoever writes it ends with <see cref="End"/>.</summary>
    /// <param name="page">Where it goes.</param>
    /// <param name="title">Its title.</param>
    /// <param name="sheet">Its style.</param>
    /// <param name="policy">What the page may load and run, for the browser to hold it to; <c>null</c> for a page that says nothing of it.</param>
    public static MarkupWriter Begin(MarkupWriter page, string title, string sheet, string? policy = null)
    {
        page.DocumentType().Open("html", ("lang", "en")).Line().Open("head").Empty("meta", ("charset", "utf-8"));
        // Stands before everything that it speaks of.
        if (policy is not null)
            page.Empty("meta", ("http-equiv", "Content-Security-Policy"), ("content", policy));
        page.Empty("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"))
            .Leaf("title", title).Style(sheet).Close().Line();
        return page.Open("body").Open("main").Line();
    }

    /// <summary>Ends the page.</summary>
    public static void End(MarkupWriter page) => page.Close().Close().Close().Line();
}
