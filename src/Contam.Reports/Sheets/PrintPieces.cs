using System.Globalization;
using Contam.Reports.Markup;

namespace Contam.Reports.Sheets;

/// <summary>A picture cut into pieces that can each be read on a sheet of paper laid crosswise. On a screen they are not shown.</summary>
internal static class PrintPieces
{
    /// <summary>The narrowest piece.</summary>
    public const double Narrowest = 1000;

    // A little wider than high, as paper is between its margins.
    private const double Shape = 1.5;
    private const double Overlap = 80;

    /// <summary>Writes them.</summary>
    /// <param name="page">Where they go.</param>
    /// <param name="id">The id of the picture.</param>
    /// <param name="width">Its width.</param>
    /// <param name="height">Its height.</param>
    public static void Write(MarkupWriter page, string id, double width, double height)
    {
        double most = Math.Max(Narrowest, height * Shape);
        int count = width <= most ? 1 : (int)Math.Ceiling((width - Overlap) / (most - Overlap));
        double piece = count == 1 ? width : ((width - Overlap) / count) + Overlap;
        page.Open("div", ("class", "cs-pieces"), ("aria-hidden", "true")).Line();
        for (int i = 0; i < count; i++)
        {
            page.Open("figure");
            if (count > 1)
                page.Leaf("figcaption", string.Create(CultureInfo.InvariantCulture, $"Piece {i + 1} of {count}, from left to right"));
            page.Open("svg", ("viewBox", $"{N(i * (piece - Overlap))} 0 {N(piece)} {N(height)}"));
            page.Empty("use", ("href", "#" + id), ("width", N(width)), ("height", N(height))).Close().Close().Line();
        }

        page.Close().Line();
    }

    private static string N(double number) => MarkupWriter.Number(number);
}
