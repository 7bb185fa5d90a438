using Contam.Reports.Markup;

namespace Contam.Reports.Drawing;

/// <summary>
/// How boxes and lines look. Grades differ by border, corner and word, circuits by their dashes, so that a grey print tells them apart; colour only
/// helps. The look is ours.
/// </summary>
internal static class PictureStyle
{
    /// <summary>The rules, every class with the prefix <c>cd-</c> so that they leave a page around the picture alone.</summary>
    public const string Sheet = """
        .cd-picture{font-family:"DejaVu Sans",Verdana,Arial,sans-serif;background:#fff}
        .cd-picture text{fill:#111}
        .cd-name{font-size:12px}.cd-tag{font-size:10px;font-weight:bold}.cd-key{font-size:11px}
        .cd-box rect{fill:#fff;stroke:#333;stroke-width:1}
        .cd-failed rect{fill:#222;stroke:#222;stroke-width:4}.cd-picture .cd-failed text{fill:#fff}.cd-picture .cd-failed .cd-symbol{stroke:#fff}.cd-picture .cd-failed .cd-full{fill:#fff}
        .cd-exposed rect{fill:#fbd9d3;stroke:#a3220c;stroke-width:3}
        .cd-guarded rect{fill:#fdf0cf;stroke:#7a5600;stroke-width:2;stroke-dasharray:7 3}
        .cd-cleared rect{fill:#dff0e2;stroke:#23632f;stroke-width:2;stroke-dasharray:2 3}
        .cd-clear rect{stroke:#aaa}.cd-picture .cd-clear text{fill:#555}
        .cd-symbol{fill:none;stroke:#333;stroke-width:1.2}.cd-mesh{stroke-dasharray:2 2}.cd-full{fill:#333;stroke:none}
        .cd-line{fill:none;stroke-width:1.6}.cd-waits{stroke-opacity:.6;stroke-width:1.2}.cd-head{stroke:none}
        .cd-ring{fill:#fff;stroke-width:1.2}
        .cd-bar{stroke:#111;stroke-width:3;fill:none}.cd-doubt{stroke-dasharray:4 3}
        .cd-look{fill:#fff;stroke:#111;stroke-width:1.5}
        .cd-lit rect{stroke:#0b3fa8;stroke-width:5}.cd-line.cd-lit{stroke-width:4;stroke-opacity:1}
        """;

    // From the palette that M. Okabe and K. Ito proposed for people who see colours differently; cited from memory.
    private static readonly string[] Colours = ["#000000", "#0072b2", "#d55e00", "#009e73", "#8a4b7d", "#6b6b00", "#56b4e9"];
    private static readonly string?[] Dashes = [null, "9 3", "3 3", "9 3 2 3", "14 4 4 4", "1.5 3", "6 6"];

    /// <summary>The colour of a circuit's lines.</summary>
    public static string ColourOf(int circuit) => Colours[circuit % Colours.Length];

    /// <summary>The dashes of a circuit's lines; <c>null</c> for an unbroken line.</summary>
    public static string? DashesOf(int circuit) => Dashes[circuit % Dashes.Length];

    /// <summary>How round the corners of a box are.</summary>
    public static string CornerOf(string? grade) => grade switch
    {
        "guarded" => "9",
        "cleared" => "17",
        "clear" or null => "3",
        _ => "0",
    };

    /// <summary>A bar across the right end of a box: it holds debris back; broken where it is not relied on.</summary>
    public static void Bar(MarkupWriter page, bool? barrier, double x, double top, double bottom)
    {
        if (barrier == false)
            return;
        page.Empty("path", ("class", barrier is null ? "cd-bar cd-doubt" : "cd-bar"), ("d", $"M{MarkupWriter.Number(x)} {MarkupWriter.Number(top)}V{MarkupWriter.Number(bottom)}"));
    }
}
