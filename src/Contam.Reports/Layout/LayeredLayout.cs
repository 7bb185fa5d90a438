using System.Collections.Immutable;

namespace Contam.Reports.Layout;

/// <summary>
/// A layered drawing from left to right: boxes in layers, lines at right angles between them. Knows sizes and numbers only. The same question
/// gives the same sheet on every machine. Boxes that nothing joins, directly or through others, are drawn apart and packed in rows.
/// </summary>
internal static class LayeredLayout
{
    /// <summary>The margin round the sheet.</summary>
    public const double Margin = 16;

    private const double Between = 28;

    /// <summary>Lays boxes and lines out.</summary>
    /// <param name="sizes">The boxes.</param>
    /// <param name="edges">The lines. Several between the same two boxes, and lines from a box to itself, are allowed.</param>
    /// <param name="starts">Boxes at which loops begin, for instance tanks; the first first.</param>
    /// <param name="width">How wide rows of separate drawings may become; a single one may be wider.</param>
    public static LayoutSheet Of(IReadOnlyList<LayoutSize> sizes, IReadOnlyList<LayoutEdge> edges, IReadOnlyList<int> starts, double width = 1400)
    {
        var boxes = new LayoutBox[sizes.Count];
        var routes = new ImmutableArray<LayoutPoint>[edges.Count];
        var placed = new List<(List<int> Boxes, List<int> Edges, LayoutSheet Sheet)>();
        foreach ((List<int> members, List<int> lines) in Islands(sizes.Count, edges))
        {
            Dictionary<int, int> local = members.Select((member, index) => (member, index)).ToDictionary(pair => pair.member, pair => pair.index);
            LayoutSheet sheet = IslandLayout.Of(
                [.. members.Select(member => sizes[member])],
                [.. lines.Select(line => new LayoutEdge(local[edges[line].From], local[edges[line].To], edges[line].Leads))],
                [.. starts.Where(local.ContainsKey).Select(start => local[start])]);
            placed.Add((members, lines, sheet));
        }

        double limit = Math.Max(width, placed.Count == 0 ? 0 : placed.Max(one => one.Sheet.Width) + (2 * Margin));
        (double x, double y, double rowHeight, double right) = (Margin, Margin, 0, Margin);
        // The large ones first, so that single parts end up together at the foot.
        foreach ((List<int> members, List<int> lines, LayoutSheet sheet) in placed.OrderByDescending(one => one.Boxes.Count > 1 ? 1 : 0))
        {
            if (x > Margin && x + sheet.Width > limit - Margin)
                (x, y, rowHeight) = (Margin, y + rowHeight + Between, 0);
            for (int i = 0; i < members.Count; i++)
                boxes[members[i]] = sheet.Boxes[i] with { X = sheet.Boxes[i].X + x, Y = sheet.Boxes[i].Y + y };
            for (int i = 0; i < lines.Count; i++)
                routes[lines[i]] = [.. sheet.Routes[i].Select(point => new LayoutPoint(point.X + x, point.Y + y))];
            right = Math.Max(right, x + sheet.Width);
            x += sheet.Width + Between;
            rowHeight = Math.Max(rowHeight, sheet.Height);
        }

        return new LayoutSheet([.. boxes], [.. routes], right + Margin, y + rowHeight + Margin) { Crossings = placed.Sum(one => one.Sheet.Crossings) };
    }

    private static IEnumerable<(List<int> Boxes, List<int> Edges)> Islands(int count, IReadOnlyList<LayoutEdge> edges)
    {
        var around = Enumerable.Range(0, count).Select(_ => new List<int>()).ToArray();
        foreach (LayoutEdge edge in edges)
        {
            around[edge.From].Add(edge.To);
            around[edge.To].Add(edge.From);
        }

        int[] islandOf = new int[count];
        Array.Fill(islandOf, -1);
        var islands = new List<(List<int> Boxes, List<int> Edges)>();
        var open = new Stack<int>();
        for (int first = 0; first < count; first++)
        {
            if (islandOf[first] >= 0)
                continue;
            islandOf[first] = islands.Count;
            islands.Add(([], []));
            open.Push(first);
            while (open.TryPop(out int here))
            {
                foreach (int next in around[here].Where(next => islandOf[next] < 0))
                {
                    islandOf[next] = islandOf[here];
                    open.Push(next);
                }
            }
        }

        for (int box = 0; box < count; box++)
            islands[islandOf[box]].Boxes.Add(box);
        for (int edge = 0; edge < edges.Count; edge++)
            islands[islandOf[edges[edge].From]].Edges.Add(edge);
        return islands;
    }
}
