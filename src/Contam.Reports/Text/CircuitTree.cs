using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>
/// The circuits of a family as trees in flow order, so that a forgotten return line is seen. A part is shown once; every further joint to it is
/// shown as <c>back to</c> where the flow comes round to it, or as <c>joins</c> where it was met on another way. What leads on nowhere says so.
/// </summary>
public static class CircuitTree
{
    /// <summary>Branches within branches; what lies deeper goes on at the left, under its own name.</summary>
    private const int Deepest = 12;

    /// <summary>Writes the trees, one a circuit.</summary>
    public static void Write(Family family, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        page.Subheading(family.Title.Length > 0 ? $"{family.Title} ({family.Id})" : family.Id);
        foreach (Circuit circuit in family.Circuits)
        {
            page.Heading(circuit.Fluid is null ? circuit.Name : $"{circuit.Name}: {circuit.Fluid}");
            new Walk(family, circuit, page).Write();
        }

        Part[] loose = [.. family.Parts.Where(part => !family.Circuits.Any(circuit => circuit.Parts.Contains(part.Id)))];
        if (loose.Length == 0)
            return;
        page.Heading("On no circuit");
        foreach (Part part in loose)
            page.Row(2, (part.Id.Value, 0));
    }

    /// <summary>The tree of one circuit, a text a line.</summary>
    public static IReadOnlyList<string> Lines(Family family, Circuit circuit, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(circuit);
        using var writer = new StringWriter(System.Globalization.CultureInfo.InvariantCulture) { NewLine = "\n" };
        new Walk(family, circuit, new TextPage(writer, look)).Write();
        return writer.ToString().TrimEnd('\n').Split('\n');
    }

    /// <summary>The walk through one circuit: depth first in the order of the joints, on a stack of our own.</summary>
    private sealed class Walk
    {
        private readonly Family family;
        private readonly Circuit circuit;
        private readonly TextPage page;
        private readonly CircuitFold fold;
        private readonly ILookup<int, FoldedJoint> onwardOf;
        private readonly HashSet<int> shown = [];
        private readonly HashSet<int> onTheWay = [];
        private readonly Stack<Line> due = new();
        private readonly Queue<int> further = new();

        public Walk(Family family, Circuit circuit, TextPage page)
        {
            this.family = family;
            this.circuit = circuit;
            this.page = page;
            fold = CircuitFold.Of(family, circuit);
            onwardOf = fold.Joints.ToLookup(joint => joint.From);
        }

        public void Write()
        {
            var ledTo = fold.Joints.Select(joint => joint.To).ToHashSet();
            int count = fold.Vertices.Length;
            // Where the flow begins first; then what only a ring leads to.
            foreach (int root in Enumerable.Range(0, count).Where(vertex => vertex == 0 || !ledTo.Contains(vertex)).Concat(Enumerable.Range(0, count)))
            {
                Show(root, "");
                while (further.TryDequeue(out int next))
                    Show(next, "further from above: ");
            }
        }

        private void Show(int root, string lead)
        {
            if (shown.Contains(root))
                return;
            due.Push(new Line(root, null, "  ", "", lead));
            while (due.TryPop(out Line? line))
            {
                if (line.IsEnd)
                    onTheWay.Remove(line.Vertex);
                else
                    Take(line);
            }
        }

        private void Take(Line line)
        {
            string bars = line.Branch switch { "├─ " => line.Bars + "│  ", "└─ " => line.Bars + "   ", _ => line.Bars };
            string label = fold.Vertices[line.Vertex].Label;
            if (shown.Contains(line.Vertex))
            {
                Print(line, bars, $"{(onTheWay.Contains(line.Vertex) ? "back to" : "joins")} {label}{Notes(line.Via)}");
                return;
            }

            if (bars.Length / 3 > Deepest)
            {
                Print(line, bars, $"{label}{Notes(line.Via)}, goes on below");
                further.Enqueue(line.Vertex);
                return;
            }

            shown.Add(line.Vertex);
            onTheWay.Add(line.Vertex);
            FoldedJoint[] onward = [.. onwardOf[line.Vertex]];
            Print(line, bars, line.Lead + label + Notes(line.Via) + NameOf(line.Vertex) + (onward.Length == 0 ? End(line.Vertex) : ""));
            due.Push(new Line(line.Vertex, null, "", "", "") { IsEnd = true });
            foreach (Line next in LinesOf(onward, bars).Reverse())
                due.Push(next);
        }

        /// <summary>A single way on stays at the left, so that a long run is not a staircase; several are branches.</summary>
        private IEnumerable<Line> LinesOf(FoldedJoint[] onward, string bars)
        {
            FoldedJoint[] unseen = [.. onward.Where(joint => !shown.Contains(joint.To))];
            FoldedJoint? main = unseen.Length == 1 ? unseen[0] : null;
            FoldedJoint[] branches = [.. onward.Where(joint => joint != main)];
            for (int i = 0; i < branches.Length; i++)
                yield return new Line(branches[i].To, branches[i], bars, main is null && i == branches.Length - 1 ? "└─ " : "├─ ", "");
            if (main is not null)
                yield return new Line(main.To, main, bars, "", "");
        }

        private void Print(Line line, string bars, string text)
        {
            // Lines that a long name needs keep the bars.
            string first = line.Bars + line.Branch;
            int taken = Math.Max(first.Length, bars.Length + 2);
            bool isFirst = true;
            foreach (string folded in TextPage.Fold(TextPage.Harmless(text), Math.Max(page.Width - taken, 20)))
            {
                page.Verbatim((isFirst ? first : bars + "  ") + folded);
                isFirst = false;
            }
        }

        private string Notes(FoldedJoint? via)
        {
            if (via is null)
                return "";
            string[] notes = [.. JointWords.Waits(via.IfFailed?.ToString(), via.Joint.When, family.States), .. JointWords.LetsOn(via.Joint, page.Look)];
            return notes.Length == 0 ? "" : $" ({string.Join(", ", notes)})";
        }

        // A name that says no more than the id is left out.
        private string NameOf(int vertex)
        {
            Part part = fold.Vertices[vertex].Parts[0];
            string name = part.RepeatOf is null ? part.Name : part.Name[..part.Name.LastIndexOf(' ')];
            string id = (part.RepeatOf ?? part.Id.Value).Replace('-', ' ');
            return string.Equals(name, id, StringComparison.OrdinalIgnoreCase) || name == part.Id.Value ? "" : $" · {name}";
        }

        private string End(int vertex)
        {
            var parts = fold.Vertices[vertex].Parts.Select(part => part.Id).ToHashSet();
            string[] others = [.. family.Joints.Where(joint => parts.Contains(joint.From) && joint.Circuit != circuit.Name && joint.OnlyIfFailed is null).Select(joint => joint.Circuit).Distinct(StringComparer.Ordinal)];
            return others.Length == 0 ? " – ends here" : $" – goes on in {string.Join(", ", others)}";
        }
    }

    private sealed record Line(int Vertex, FoldedJoint? Via, string Bars, string Branch, string Lead)
    {
        public bool IsEnd { get; init; }
    }
}
