using Contam.Reports.Markup;

namespace Contam.Reports.Drawing;

/// <summary>What the styles of a picture mean, in rows below it. Only what the picture has is explained.</summary>
internal sealed class PictureLegend
{
    private const double RowHeight = 26;
    private const double Sample = 40;
    private const double Size = 11;

    private readonly List<(Action<MarkupWriter, double, double> Draw, string Text)> entries = [];

    private PictureLegend()
    {
    }

    /// <summary>The legend of a picture.</summary>
    public static PictureLegend Of(PictureGraph graph)
    {
        var legend = new PictureLegend();
        for (int circuit = 0; circuit < graph.Circuits.Length; circuit++)
        {
            int here = circuit;
            legend.entries.Add(((page, x, y) => Line(page, here, x, y, waits: false), graph.Circuits[circuit]));
        }

        if (graph.Lines.Any(line => line.Waits.Length > 0))
            legend.entries.Add(((page, x, y) => Line(page, 0, x, y, waits: true), "open only at times; point at it to read when"));
        foreach ((string grade, string says) in new[] { ("failed", "has failed"), ("exposed", "exposed: debris at full size"), ("guarded", "guarded: only past a barrier"), ("cleared", "cleared by a clean finding"), ("clear", "clear: no way there") })
        {
            if (graph.Boxes.Any(box => box.Mark.Grade == grade))
                legend.entries.Add(((page, x, y) => Box(page, grade, x, y), says));
        }

        if (graph.Boxes.Any(box => box.Mark.Barrier == true))
            legend.entries.Add(((page, x, y) => PictureStyle.Bar(page, true, x + (Sample / 2), y - 8, y + 8), "barrier"));
        if (graph.Boxes.Any(box => box.Mark.Barrier is null))
            legend.entries.Add(((page, x, y) => PictureStyle.Bar(page, null, x + (Sample / 2), y - 8, y + 8), "holds some back, not relied on"));
        if (graph.Boxes.Any(box => box.Mark.IsLook))
            legend.entries.Add(((page, x, y) => Look(page, x + (Sample / 2), y), "stop line: look here"));
        return legend;
    }

    /// <summary>How high it is on a sheet of this width.</summary>
    public double HeightOn(double width) => Placed(width).Select(one => one.Y).DefaultIfEmpty(0).Max() + RowHeight;

    /// <summary>How wide a sheet must be so that no entry runs off it.</summary>
    public double LeastWidth => entries.Select(entry => WidthOf(entry.Text)).DefaultIfEmpty(0).Max() + 32;

    /// <summary>Writes it with its upper edge here.</summary>
    public void Write(MarkupWriter page, double top, double width)
    {
        page.Open("g", ("class", "cd-legend")).Line();
        foreach ((int entry, double x, double y) in Placed(width))
        {
            double middle = top + y + (RowHeight / 2);
            entries[entry].Draw(page, x, middle);
            page.Leaf("text", entries[entry].Text, ("class", "cd-key"), ("x", MarkupWriter.Number(x + Sample + 8)), ("y", MarkupWriter.Number(middle + 4))).Line();
        }

        page.Close().Line();
    }

    /// <summary>The mark of a place to look at.</summary>
    public static void Look(MarkupWriter page, double x, double y)
    {
        page.Empty("circle", ("class", "cd-look"), ("cx", MarkupWriter.Number(x)), ("cy", MarkupWriter.Number(y)), ("r", "7"));
        page.Empty("circle", ("class", "cd-full"), ("cx", MarkupWriter.Number(x)), ("cy", MarkupWriter.Number(y)), ("r", "3"));
    }

    private IEnumerable<(int Entry, double X, double Y)> Placed(double width)
    {
        (double x, double y) = (16, 0);
        for (int i = 0; i < entries.Count; i++)
        {
            double wide = WidthOf(entries[i].Text);
            if (x > 16 && x + wide > width - 16)
                (x, y) = (16, y + RowHeight);
            yield return (i, x, y);
            x += wide;
        }
    }

    private static double WidthOf(string text) => Sample + 8 + LabelText.WidthOf(text, Size) + 24;

    private static void Line(MarkupWriter page, int circuit, double x, double y, bool waits)
    {
        string colour = PictureStyle.ColourOf(circuit);
        page.Empty("path", ("class", waits ? "cd-line cd-waits" : "cd-line"), ("stroke", colour), ("stroke-dasharray", waits ? null : PictureStyle.DashesOf(circuit)), ("d", $"M{MarkupWriter.Number(x)} {MarkupWriter.Number(y)}H{MarkupWriter.Number(x + Sample)}"));
        if (waits)
            page.Empty("circle", ("class", "cd-ring"), ("stroke", colour), ("cx", MarkupWriter.Number(x + 4)), ("cy", MarkupWriter.Number(y)), ("r", "3"));
    }

    private static void Box(MarkupWriter page, string grade, double x, double y)
    {
        page.Open("g", ("class", "cd-box cd-" + grade));
        page.Empty("rect", ("x", MarkupWriter.Number(x + 3)), ("y", MarkupWriter.Number(y - 8)), ("width", MarkupWriter.Number(Sample - 6)), ("height", "16"), ("rx", PictureStyle.CornerOf(grade)));
        page.Close();
    }
}
