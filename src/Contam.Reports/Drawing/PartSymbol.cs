using Contam.Families;
using Contam.Reports.Markup;

namespace Contam.Reports.Drawing;

/// <summary>
/// The small symbol in the box of a pump, a filter, a cooler or a tank, in the manner of ISO 1219-1 (fluid power, graphical symbols); drawn from
/// memory of that standard and not measured against it. Other parts have none.
/// </summary>
internal static class PartSymbol
{
    /// <summary>The width and height of a symbol.</summary>
    public const double Size = 20;

    private static readonly string[] Pumps = ["pump", "injection-pump"];
    private static readonly string[] Coolers = ["cooler", "heat-exchanger", "charge-cooler", "radiator"];

    /// <summary>Whether parts of this kind have a symbol.</summary>
    public static bool Has(Kind kind) => kind.IsFilter || kind.IsReservoir || Pumps.Contains(kind.Name, StringComparer.Ordinal) || Coolers.Contains(kind.Name, StringComparer.Ordinal);

    /// <summary>Draws the symbol, its middle here.</summary>
    public static void Draw(MarkupWriter page, Kind kind, double x, double y)
    {
        if (kind.IsReservoir)
            Open(page, $"M{N(x - 9)} {N(y - 6)}V{N(y + 6)}H{N(x + 9)}V{N(y - 6)}");
        else if (Pumps.Contains(kind.Name, StringComparer.Ordinal))
        {
            page.Empty("circle", ("class", "cd-symbol"), ("cx", N(x)), ("cy", N(y)), ("r", "9"));
            Full(page, $"M{N(x + 9)} {N(y)}L{N(x + 3)} {N(y - 4)}V{N(y + 4)}Z");
        }
        else if (kind.IsFilter)
        {
            Diamond(page, x, y);
            page.Empty("path", ("class", "cd-symbol cd-mesh"), ("d", $"M{N(x)} {N(y - 10)}V{N(y + 10)}"));
        }
        else if (Coolers.Contains(kind.Name, StringComparer.Ordinal))
        {
            Diamond(page, x, y);
            // The heat leaves: both arrows point outwards.
            Open(page, $"M{N(x)} {N(y - 9)}V{N(y + 9)}");
            Full(page, $"M{N(x)} {N(y - 9)}L{N(x - 2.5)} {N(y - 4)}H{N(x + 2.5)}Z");
            Full(page, $"M{N(x)} {N(y + 9)}L{N(x - 2.5)} {N(y + 4)}H{N(x + 2.5)}Z");
        }
    }

    private static void Diamond(MarkupWriter page, double x, double y) => Open(page, $"M{N(x - 10)} {N(y)}L{N(x)} {N(y - 10)}L{N(x + 10)} {N(y)}L{N(x)} {N(y + 10)}Z");

    private static void Open(MarkupWriter page, string path) => page.Empty("path", ("class", "cd-symbol"), ("d", path));

    private static void Full(MarkupWriter page, string path) => page.Empty("path", ("class", "cd-symbol cd-full"), ("d", path));

    private static string N(double number) => MarkupWriter.Number(number);
}
