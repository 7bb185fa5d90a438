using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Contam.Reports.Tests.Drawing;

/// <summary>A drawing as a person sees it: rectangles, lines and texts, read from the picture itself and judged without the program's help.</summary>
internal sealed record Sheet(double Width, double Height, List<Box> Boxes, List<Wire> Wires)
{
    /// <summary>Reads an SVG picture.</summary>
    public static Sheet Of(string svg)
    {
        XElement root = XDocument.Parse(svg).Root!;
        XNamespace name = root.Name.Namespace;
        double[] view = Numbers((string)root.Attribute("viewBox")!);
        var boxes = root.Elements(name + "g").Where(group => group.Attribute("data-part") is not null).Select(group =>
        {
            XElement rectangle = group.Element(name + "rect")!;
            double At(string attribute) => double.Parse((string)rectangle.Attribute(attribute)!, CultureInfo.InvariantCulture);
            return new Box((string)group.Attribute("data-part")!, At("x"), At("y"), At("width"), At("height"));
        }).ToList();
        var wires = root.Elements(name + "path").Where(path => path.Attribute("data-from") is not null)
            .Select(path => new Wire((string)path.Attribute("data-from")!, (string)path.Attribute("data-to")!, Points(Numbers((string)path.Attribute("d")!)))).ToList();
        return new Sheet(view[2], view[3], boxes, wires);
    }

    /// <summary>The same boxes and lines as Graphviz draws them, or <c>null</c> where it is not installed.</summary>
    public Sheet? ByGraphviz()
    {
        var text = new StringBuilder("digraph{rankdir=LR;node[shape=box,fixedsize=true,label=\"\"];edge[arrowhead=none];");
        for (int i = 0; i < Boxes.Count; i++)
            text.Append(CultureInfo.InvariantCulture, $"b{i}[width={Boxes[i].Width / 72:0.###},height={Boxes[i].Height / 72:0.###}];");
        foreach (Wire wire in Wires)
            text.Append(CultureInfo.InvariantCulture, $"b{Boxes.FindIndex(box => box.Parts == wire.From)}->b{Boxes.FindIndex(box => box.Parts == wire.To)};");
        if (Graphviz(text.Append('}').ToString()) is not { } plain)
            return null;
        var wires = new List<Wire>();
        double height = 0;
        foreach (string[] words in plain.Split('\n').Select(line => line.Split(' ')))
        {
            if (words[0] == "graph")
                height = double.Parse(words[3], CultureInfo.InvariantCulture);
            if (words[0] != "edge")
                continue;
            int count = int.Parse(words[3], CultureInfo.InvariantCulture);
            double[] numbers = [.. words.Skip(4).Take(2 * count).Select(word => double.Parse(word, CultureInfo.InvariantCulture))];
            wires.Add(new Wire(Boxes[int.Parse(words[1][1..], CultureInfo.InvariantCulture)].Parts, Boxes[int.Parse(words[2][1..], CultureInfo.InvariantCulture)].Parts, Curve(Points(numbers))));
        }

        return new Sheet(0, height, [], wires);
    }

    /// <summary>How often two lines cross. Lines that run on or end on one another do not count.</summary>
    public int Crossings()
    {
        int crossings = 0;
        for (int one = 0; one < Wires.Count; one++)
        {
            for (int other = one + 1; other < Wires.Count; other++)
            {
                if (Wires[one].MayMeet(Wires[other]))
                    crossings += Wires[one].CrossingsWith(Wires[other]);
            }
        }

        return crossings;
    }

    /// <summary>What is wrong with it: lines through boxes, boxes over boxes, anything off the page.</summary>
    public IEnumerable<string> Faults()
    {
        for (int one = 0; one < Boxes.Count; one++)
        {
            for (int other = one + 1; other < Boxes.Count; other++)
            {
                if (Boxes[one].Overlaps(Boxes[other]))
                    yield return $"{Boxes[one].Parts} lies over {Boxes[other].Parts}";
            }

            if (Boxes[one].X < 0 || Boxes[one].Y < 0 || Boxes[one].X + Boxes[one].Width > Width || Boxes[one].Y + Boxes[one].Height > Height)
                yield return $"{Boxes[one].Parts} is off the page";
        }

        foreach (Wire wire in Wires)
        {
            foreach (Box box in Boxes)
            {
                if (wire.RunsThrough(box))
                    yield return $"the line from {wire.From} to {wire.To} runs through {box.Parts}";
            }

            if (wire.Points.Any(point => point.X < 0 || point.Y < 0 || point.X > Width || point.Y > Height))
                yield return $"the line from {wire.From} to {wire.To} is off the page";
            Box first = Boxes.Single(box => box.Parts == wire.From);
            Box last = Boxes.Single(box => box.Parts == wire.To);
            if (!first.Touches(wire.Points[0]) || !last.Touches(wire.Points[^1]))
                yield return $"the line from {wire.From} to {wire.To} does not join them";
        }
    }

    private static string? Graphviz(string graph)
    {
        try
        {
            using Process dot = Process.Start(new ProcessStartInfo("dot", "-Tplain") { RedirectStandardInput = true, RedirectStandardOutput = true })!;
            Task<string> answer = dot.StandardOutput.ReadToEndAsync();
            dot.StandardInput.Write(graph);
            dot.StandardInput.Close();
            string plain = answer.GetAwaiter().GetResult().Replace("\\\n", "", StringComparison.Ordinal);
            dot.WaitForExit();
            return plain;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static double[] Numbers(string text) =>
        [.. text.Split([' ', 'M', 'L', ','], StringSplitOptions.RemoveEmptyEntries).Select(word => double.Parse(word, CultureInfo.InvariantCulture))];

    private static List<Point> Points(double[] numbers) => [.. Enumerable.Range(0, numbers.Length / 2).Select(i => new Point(numbers[2 * i], numbers[(2 * i) + 1]))];

    // Graphviz gives a start and then three points a piece of a Bézier curve.
    private static List<Point> Curve(List<Point> control)
    {
        var points = new List<Point> { control[0] };
        for (int at = 0; at + 3 < control.Count; at += 3)
        {
            for (int step = 1; step <= 12; step++)
            {
                double t = step / 12.0, s = 1 - t;
                double Mix(Func<Point, double> of) => (s * s * s * of(control[at])) + (3 * s * s * t * of(control[at + 1])) + (3 * s * t * t * of(control[at + 2])) + (t * t * t * of(control[at + 3]));
                points.Add(new Point(Mix(point => point.X), Mix(point => point.Y)));
            }
        }

        return points;
    }
}

/// <summary>A point of a drawing.</summary>
internal readonly record struct Point(double X, double Y);

/// <summary>A box of a drawing and the ids in it.</summary>
internal sealed record Box(string Parts, double X, double Y, double Width, double Height)
{
    public bool Overlaps(Box other) => X < other.X + other.Width && other.X < X + Width && Y < other.Y + other.Height && other.Y < Y + Height;

    public bool Touches(Point point) => point.X >= X - 1 && point.X <= X + Width + 1 && point.Y >= Y - 1 && point.Y <= Y + Height + 1;
}

/// <summary>A line of a drawing.</summary>
internal sealed record Wire(string From, string To, List<Point> Points)
{
    private readonly (double Left, double Top, double Right, double Bottom) frame = (Points.Min(point => point.X), Points.Min(point => point.Y), Points.Max(point => point.X), Points.Max(point => point.Y));

    public bool MayMeet(Wire other) => frame.Left <= other.frame.Right && other.frame.Left <= frame.Right && frame.Top <= other.frame.Bottom && other.frame.Top <= frame.Bottom;

    public int CrossingsWith(Wire other)
    {
        int crossings = 0;
        for (int i = 1; i < Points.Count; i++)
        {
            for (int j = 1; j < other.Points.Count; j++)
                crossings += Cross(Points[i - 1], Points[i], other.Points[j - 1], other.Points[j]) ? 1 : 0;
        }

        return crossings;
    }

    // Within a box by more than a hair, the box's own edge not counted.
    public bool RunsThrough(Box box)
    {
        for (int i = 1; i < Points.Count; i++)
        {
            (double left, double right) = (Math.Min(Points[i - 1].X, Points[i].X), Math.Max(Points[i - 1].X, Points[i].X));
            (double top, double bottom) = (Math.Min(Points[i - 1].Y, Points[i].Y), Math.Max(Points[i - 1].Y, Points[i].Y));
            if (right > box.X + 1 && left < box.X + box.Width - 1 && bottom > box.Y + 1 && top < box.Y + box.Height - 1)
                return true;
        }

        return false;
    }

    private static bool Cross(Point a, Point b, Point c, Point d)
    {
        static double Side(Point from, Point to, Point of) => ((to.X - from.X) * (of.Y - from.Y)) - ((to.Y - from.Y) * (of.X - from.X));
        return Side(a, b, c) * Side(a, b, d) < -1e-9 && Side(c, d, a) * Side(c, d, b) < -1e-9;
    }
}
