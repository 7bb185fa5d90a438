using System.Collections.Immutable;
using System.Text;
using Contam.Families;
using Contam.Reports.Layout;
using Contam.Reports.Markup;
using Contam.Reports.Text;
using Contam.Spread;

namespace Contam.Reports.Drawing;

/// <summary>
/// The circuits of a family as a picture: what flows stands left of what it flows to, and what leads back runs round the outside. With spreads
/// each box is marked by how far the debris has gone. Stands alone as a file, or within an HTML page.
/// </summary>
public static class CircuitSvg
{
    private static readonly string[] Grades = ["failed", "exposed", "guarded", "cleared"];

    private const int MostTried = 300;
    private const int Forgiven = 8;
    private const double NameSize = 12;
    private const double TagSize = 10;
    private const double LineHeight = 15;
    private const double NameWidth = 118;
    private const double Padding = 9;
    private const double SymbolRoom = 26;

    /// <summary>Writes one <c>svg</c> element.</summary>
    /// <param name="family">The family.</param>
    /// <param name="spreads">How far each debris has gone; empty for the circuits alone.</param>
    /// <param name="failed">The failed parts.</param>
    /// <param name="options">What is folded and marked.</param>
    /// <param name="page">
    /// Where it goes. Each box is a <c>g</c> with <c>data-part</c>, the ids of its parts with spaces between, and <c>data-grade</c>; each line is a
    /// <c>path</c> with <c>data-from</c> and <c>data-to</c>.
    /// </param>
    /// <returns>How wide and how high the picture is.</returns>
    public static (double Width, double Height) Write(Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, PictureOptions options, MarkupWriter page)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(page);
        PictureGraph graph = PictureGraph.Of(family, spreads, failed, options);
        var labels = graph.Boxes.Select(box => LabelText.Fit(box.Label, NameWidth, NameSize, 3)).ToList();
        LayoutSheet sheet = LayOut(graph, [.. graph.Boxes.Select((box, index) => SizeOf(box, labels[index]))], family.States);
        PictureLegend legend = PictureLegend.Of(graph);
        double width = Math.Max(sheet.Width, legend.LeastWidth);
        double legendWidth = Math.Clamp(options.LegendWidth ?? width, legend.LeastWidth, width);
        double height = sheet.Height + legend.HeightOn(legendWidth) + LayeredLayout.Margin;

        page.Open(
            "svg",
            // A picture within a page is of the page's own language.
            ("xmlns", options.PageId is null ? "http://www.w3.org/2000/svg" : null),
            ("id", options.PageId),
            ("class", "cd-picture"),
            ("role", "img"),
            ("viewBox", $"0 0 {N(width)} {N(height)}"),
            ("width", N(width)),
            ("height", N(height))).Line();
        page.Leaf("title", family.Title.Length > 0 ? family.Title : family.Id).Line();
        page.Leaf("desc", Told(family, graph)).Line();
        page.Style(PictureStyle.Sheet).Line();
        for (int i = 0; i < graph.Lines.Length; i++)
            Line(page, graph, graph.Lines[i], sheet.Routes[i]);
        for (int i = 0; i < graph.Boxes.Length; i++)
            Box(page, graph.Boxes[i], labels[i], sheet.Boxes[i]);
        legend.Write(page, sheet.Height, legendWidth);
        page.Close().Line();
        return (width, height);
    }

    // Which lines decide what stands further right: those that are always open, also those that wait for a failure, or all; and whether loops
    // begin at what the fluid is kept in. The ways stand in the order in which they are good to follow; the first that does not cross much more
    // than the best is drawn. A large picture is laid out once.
    private static LayoutSheet LayOut(PictureGraph graph, LayoutSize[] sizes, EngineStates all)
    {
        Func<PictureLine, bool>[] ways = [line => line.Waits.Length == 0, line => line.Joint.When == all, _ => true];
        bool isSmall = sizes.Length <= MostTried;
        (Func<PictureLine, bool> Leads, ImmutableArray<int> Starts)[] tried =
            [.. new[] { graph.Starts, [] }.Take(isSmall ? 2 : 1).SelectMany(starts => ways.Take(isSmall ? ways.Length : 1).Select(leads => (leads, starts)))];
        var sheets = new LayoutSheet[tried.Length];
        // Each way is laid out by itself, so that it does not matter which is done first.
        Parallel.For(0, tried.Length, i => sheets[i] =
            LayeredLayout.Of(sizes, [.. graph.Lines.Select(line => new LayoutEdge(line.From, line.To, tried[i].Leads(line)))], tried[i].Starts));
        long least = sheets.Min(sheet => sheet.Crossings);
        long most = least + Math.Min(Forgiven, 1 + (least / 5));
        return sheets.First(sheet => sheet.Crossings <= most);
    }

    private static LayoutSize SizeOf(PictureBox box, List<string> label)
    {
        double text = Math.Max(label.Max(line => LabelText.WidthOf(line, NameSize)), LabelText.WidthOf(box.Mark.Tag, TagSize));
        double symbol = PartSymbol.Has(box.Parts[0].Kind) ? SymbolRoom : 0;
        double bar = box.Mark.Barrier == false ? 0 : 8;
        double lines = label.Count + (box.Mark.Tag.Length > 0 ? 1 : 0);
        return new LayoutSize(text + symbol + bar + (2 * Padding), Math.Max((lines * LineHeight) + (2 * 6), symbol > 0 ? PartSymbol.Size + 12 : 0));
    }

    private static void Line(MarkupWriter page, PictureGraph graph, PictureLine line, ImmutableArray<LayoutPoint> route)
    {
        string colour = PictureStyle.ColourOf(line.Circuit);
        bool waits = line.Waits.Length > 0;
        var path = new StringBuilder();
        foreach (LayoutPoint point in route)
            path.Append(path.Length == 0 ? 'M' : 'L').Append(N(point.X)).Append(' ').Append(N(point.Y));
        page.Open(
            "path",
            ("class", waits ? "cd-line cd-waits" : "cd-line"),
            ("data-from", graph.Boxes[line.From].Ids),
            ("data-to", graph.Boxes[line.To].Ids),
            ("stroke", colour),
            ("stroke-dasharray", PictureStyle.DashesOf(line.Circuit)),
            ("d", path.ToString()));
        page.Leaf("title", $"{graph.Boxes[line.From].Label} to {graph.Boxes[line.To].Label}: {graph.Circuits[line.Circuit]}{string.Concat(JointWords.LetsOn(line.Joint, TextLook.Plain).Prepend(line.Waits).Where(one => one.Length > 0).Select(one => ", " + one))}").Close().Line();
        if (route.Length < 2)
            return;
        Head(page, colour, route[^2], route[^1]);
        if (waits)
        {
            (double dx, double dy) = Direction(route[0], route[1]);
            page.Empty("circle", ("class", "cd-ring"), ("stroke", colour), ("cx", N(route[0].X + (5 * dx))), ("cy", N(route[0].Y + (5 * dy))), ("r", "3")).Line();
        }
    }

    private static void Head(MarkupWriter page, string colour, LayoutPoint before, LayoutPoint tip)
    {
        (double dx, double dy) = Direction(before, tip);
        (double x, double y) = (tip.X - (8 * dx), tip.Y - (8 * dy));
        page.Empty("path", ("class", "cd-head"), ("fill", colour), ("d", $"M{N(tip.X)} {N(tip.Y)}L{N(x - (3.5 * dy))} {N(y + (3.5 * dx))}L{N(x + (3.5 * dy))} {N(y - (3.5 * dx))}Z")).Line();
    }

    private static (double X, double Y) Direction(LayoutPoint from, LayoutPoint to)
    {
        double length = Math.Max(Math.Abs(to.X - from.X) + Math.Abs(to.Y - from.Y), 1e-9);
        return ((to.X - from.X) / length, (to.Y - from.Y) / length);
    }

    private static void Box(MarkupWriter page, PictureBox box, List<string> label, LayoutBox at)
    {
        PictureMark mark = box.Mark;
        page.Open("g", ("class", mark.Grade is null ? "cd-box" : "cd-box cd-" + mark.Grade), ("data-part", box.Ids), ("data-grade", mark.Grade));
        page.Leaf("title", mark.Told.Length == 0 ? $"{box.Label} ({box.Ids})" : $"{box.Label} ({box.Ids}): {mark.Told}");
        page.Empty("rect", ("x", N(at.X)), ("y", N(at.Y)), ("width", N(at.Width)), ("height", N(at.Height)), ("rx", PictureStyle.CornerOf(mark.Grade)));
        bool hasSymbol = PartSymbol.Has(box.Parts[0].Kind);
        if (hasSymbol)
            PartSymbol.Draw(page, box.Parts[0].Kind, at.X + Padding + (PartSymbol.Size / 2), at.Y + (at.Height / 2));
        double left = at.X + Padding + (hasSymbol ? SymbolRoom : 0);
        int lines = label.Count + (mark.Tag.Length > 0 ? 1 : 0);
        double y = at.Y + (at.Height / 2) - (lines * LineHeight / 2) + 11.5;
        foreach (string line in label)
        {
            page.Leaf("text", line, ("class", "cd-name"), ("x", N(left)), ("y", N(y)));
            y += LineHeight;
        }

        if (mark.Tag.Length > 0)
            page.Leaf("text", mark.Tag, ("class", "cd-tag"), ("x", N(left)), ("y", N(y)));
        PictureStyle.Bar(page, mark.Barrier, at.X + at.Width - 7, at.Y + 4, at.Y + at.Height - 4);
        if (mark.IsLook)
            PictureLegend.Look(page, at.X + at.Width - 2, at.Y + 2);
        page.Close().Line();
    }

    // What somebody who cannot see the picture is told.
    private static string Told(Family family, PictureGraph graph)
    {
        string what = $"{family.Parts.Length} parts in {graph.Boxes.Length} boxes, joined by {graph.Lines.Length} lines. Circuits: {string.Join(", ", graph.Circuits)}.";
        string[] grades = [.. Grades.Select(grade => (grade, Boxes: graph.Boxes.Where(box => box.Mark.Grade == grade).Select(box => box.Label).ToList())).Where(one => one.Boxes.Count > 0).Select(one => $" {char.ToUpperInvariant(one.grade[0])}{one.grade[1..]}: {string.Join(", ", one.Boxes)}.")];
        return what + string.Concat(grades);
    }

    private static string N(double number) => MarkupWriter.Number(number);
}
