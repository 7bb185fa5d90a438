using System.Security.Cryptography;
using System.Text;

namespace Contam.Reports.Markup;

/// <summary>An HTML page that stands by itself: one file, nothing fetched, its style within it.</summary>
internal static class HtmlPage
{
    /// <summary>Begins the page and its body; whoever writes it ends with <see cref="End"/>.</summary>
    /// <param name="page">Where it goes.</param>
    /// <param name="title">Its title.</param>
    /// <param name="sheet">Its style.</param>
    /// <param name="script">The one script that the page runs; <c>null</c> for none. The browser is told to fetch nothing, to send nothing and to run no other.</param>
    public static MarkupWriter Begin(MarkupWriter page, string title, string sheet, string? script = null)
    {
        page.DocumentType().Open("html", ("lang", "en")).Line().Open("head").Empty("meta", ("charset", "utf-8"));
        // Stands before everything that it speaks of.
        page.Empty("meta", ("http-equiv", "Content-Security-Policy"), ("content", $"default-src 'none'; style-src 'unsafe-inline'; script-src {Allowed(script)}; base-uri 'none'; form-action 'none'"));
        page.Empty("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"))
            .Leaf("title", title).Style(sheet).Close().Line();
        return page.Open("body").Open("main").Line();
    }

    /// <summary>Ends the page.</summary>
    public static void End(MarkupWriter page) => page.Close().Close().Close().Line();

    private static string Allowed(string? script) => script is null ? "'none'" : $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}'";
}
