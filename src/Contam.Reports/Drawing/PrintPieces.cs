using System.Globalization;
using Contam.Reports.Markup;

namespace Contam.Reports.Drawing;

/// <summary>
/// A picture cut into pieces whose letters can still be read on paper: on upright sheets, low ones below one another, or on sheets laid crosswise,
/// whichever takes fewer sheets. On a screen they are not shown.
/// </summary>
internal static class PrintPieces
{
    /// <summary>The rules for them, and for the margins and page numbers of the paper. The chapter that holds them is turned with them.</summary>
    public const string Style = """

        .cs-pieces{display:none}
        @page{margin:14mm 13mm 18mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font:9pt sans-serif}}
        @page picture{size:landscape}
        @media print{
        section:has(.cs-across){page:picture}
        .cs-pieces{display:block}
        figure{margin:0 0 8pt;break-inside:avoid}.cs-across figure+figure{break-before:page}
        figcaption{font-size:9pt;margin-bottom:3pt}
        figure svg{display:block;width:100%;max-height:210mm}.cs-across svg{max-height:148mm}
        }

        """;

    // What A4 and Letter both hold between their margins, in pixels of which twelve are a letter of more than five points.
    private static readonly Paper Upright = new(1180, 1340);
    private static readonly Paper Across = new(1600, 940);

    private const double Overlap = 80;
    private const double Caption = 40;

    /// <summary>How wide a legend may be to stand in one piece.</summary>
    public static double Widest => Upright.Width - Overlap;

    /// <summary>Writes them.</summary>
    /// <param name="page">Where they go.</param>
    /// <param name="id">The id of the picture.</param>
    /// <param name="width">Its width.</param>
    /// <param name="height">Its height.</param>
    public static void Write(MarkupWriter page, string id, double width, double height)
    {
        bool isAcross = Across.SheetsFor(width, height) < Upright.SheetsFor(width, height);
        (int columns, int rows) = (isAcross ? Across : Upright).Grid(width, height);
        (double wide, double high) = (PieceOf(width, columns), PieceOf(height, rows));
        page.Open("div", ("class", isAcross ? "cs-pieces cs-across" : "cs-pieces"), ("aria-hidden", "true")).Line();
        for (int i = 0; i < columns * rows; i++)
        {
            page.Open("figure");
            if (columns * rows > 1)
                page.Leaf("figcaption", string.Create(CultureInfo.InvariantCulture, $"Piece {i + 1} of {columns * rows}, from left to right{(rows > 1 ? ", then down" : "")}"));
            page.Open("svg", ("viewBox", $"{N(i % columns * (wide - Overlap))} {N(i / columns * (high - Overlap))} {N(wide)} {N(high)}"));
            page.Empty("use", ("href", "#" + id), ("width", N(width)), ("height", N(height))).Close().Close().Line();
        }

        page.Close().Line();
    }

    private static int CountOf(double whole, double most) => whole <= most ? 1 : (int)Math.Ceiling((whole - Overlap) / (most - Overlap));

    private static double PieceOf(double whole, int count) => ((whole - Overlap) / count) + Overlap;

    private static string N(double number) => MarkupWriter.Number(number);

    private readonly record struct Paper(double Width, double Height)
    {
        public (int Columns, int Rows) Grid(double width, double height) => (CountOf(width, Width), CountOf(height, Height));

        // Pieces that take the whole width stand below one another.
        public int SheetsFor(double width, double height)
        {
            (int columns, int rows) = Grid(width, height);
            double printed = (PieceOf(height, rows) * Width / PieceOf(width, columns)) + Caption;
            int onOne = Math.Max(1, (int)(Height / printed));
            return ((columns * rows) + onOne - 1) / onOne;
        }
    }
}
