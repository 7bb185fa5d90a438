using System.Collections.Immutable;

namespace Contam.Reports.Layout;

/// <summary>Lays out boxes that all hang together: layers, order, heights, then ports and tracks for the lines.</summary>
internal sealed class IslandLayout
{
    private const double PortApart = 9;
    private const double LineGap = 12;
    private const double BoxGap = 20;
    private const double TrackApart = 8;
    private const double Before = 12;
    private const double ArrowRoom = 18;
    private const double LoopRoom = 12;

    private readonly LayerGraph graph;
    private readonly IReadOnlyList<LayoutEdge> edges;
    private readonly LayoutSize[] sizes;
    private readonly double[] middles;
    private readonly Dictionary<(int Edge, int Piece), double> leaves = [];
    private readonly Dictionary<(int Edge, int Piece), double> arrives = [];

    private IslandLayout(IReadOnlyList<LayoutSize> wanted, IReadOnlyList<LayoutEdge> edges, IReadOnlyList<int> starts)
    {
        this.edges = edges;
        graph = new LayerGraph(wanted.Count, edges, LayerAssignment.Of(wanted.Count, edges, starts));
        LayerOrdering.Improve(graph);
        sizes = [.. wanted.Select((size, box) => size with { Height = Math.Max(size.Height, PortApart * (Math.Max(graph.Back[box].Count, graph.Onward[box].Count) + 1)) })];
        bool[] hasLoop = new bool[wanted.Count];
        foreach (LayoutEdge edge in edges.Where(edge => edge.From == edge.To))
            hasLoop[edge.From] = true;
        double HalfOf(int vertex) => graph.IsBend(vertex) ? 0 : (sizes[vertex].Height / 2) + (hasLoop[vertex] ? LoopRoom : 0);
        middles = RowPlacement.Of(graph, (upper, lower) => HalfOf(upper) + HalfOf(lower) + (graph.IsBend(upper) || graph.IsBend(lower) ? LineGap : BoxGap));
        double top = middles.Select((middle, vertex) => middle - HalfOf(vertex)).Min();
        for (int vertex = 0; vertex < middles.Length; vertex++)
            middles[vertex] -= top;
    }

    /// <summary>The sheet, without margin.</summary>
    public static LayoutSheet Of(IReadOnlyList<LayoutSize> sizes, IReadOnlyList<LayoutEdge> edges, IReadOnlyList<int> starts)
    {
        var layout = new IslandLayout(sizes, edges, starts);
        layout.SetPorts();
        return layout.Draw();
    }

    private void SetPorts()
    {
        var right = Enumerable.Range(0, graph.LayerOf.Length).Select(_ => new List<(int Edge, int Piece)>()).ToArray();
        var left = Enumerable.Range(0, graph.LayerOf.Length).Select(_ => new List<(int Edge, int Piece)>()).ToArray();
        for (int edge = 0; edge < edges.Count; edge++)
        {
            for (int piece = 0; piece + 1 < graph.Chains[edge].Length; piece++)
            {
                right[graph.Chains[edge][piece]].Add((edge, piece));
                left[graph.Chains[edge][piece + 1]].Add((edge, piece));
            }
        }

        for (int vertex = 0; vertex < right.Length; vertex++)
        {
            Spread(vertex, [.. right[vertex].OrderBy(port => graph.Place[graph.Chains[port.Edge][port.Piece + 1]]).ThenBy(port => port.Edge)], leaves);
            Spread(vertex, [.. left[vertex].OrderBy(port => graph.Place[graph.Chains[port.Edge][port.Piece]]).ThenBy(port => port.Edge)], arrives);
        }

        // The only line on its side of a box moves along that side, so that it runs straight where it can.
        foreach ((int edge, int piece) port in left.SelectMany(ports => ports))
        {
            (int from, int to) = (graph.Chains[port.edge][port.piece], graph.Chains[port.edge][port.piece + 1]);
            if (!graph.IsBend(to) && left[to].Count == 1 && IsAlong(to, leaves[port]))
                arrives[port] = leaves[port];
            else if (!graph.IsBend(from) && right[from].Count == 1 && IsAlong(from, arrives[port]))
                leaves[port] = arrives[port];
        }
    }

    private bool IsAlong(int box, double height) => Math.Abs(height - middles[box]) <= (sizes[box].Height / 2) - 7;

    private void Spread(int vertex, (int, int)[] ports, Dictionary<(int, int), double> heights)
    {
        double apart = ports.Length < 2 || graph.IsBend(vertex) ? 0 : Math.Min(14, (sizes[vertex].Height - PortApart) / (ports.Length - 1));
        for (int i = 0; i < ports.Length; i++)
            heights[ports[i]] = middles[vertex] + ((i - ((ports.Length - 1) / 2.0)) * apart);
    }

    private LayoutSheet Draw()
    {
        int layers = graph.Layers.Length;
        var pieces = Enumerable.Range(0, layers).Select(_ => new List<(int Edge, int Piece)>()).ToArray();
        for (int edge = 0; edge < edges.Count; edge++)
        {
            for (int piece = 0; piece + 1 < graph.Chains[edge].Length; piece++)
                pieces[graph.LayerOf[graph.Chains[edge][piece]]].Add((edge, piece));
        }

        double[] columnLeft = new double[layers];
        double[] columnRight = new double[layers];
        var upright = new Dictionary<(int, int), double>();
        double x = 0;
        for (int layer = 0; layer < layers; layer++)
        {
            columnLeft[layer] = x;
            int[] boxes = [.. graph.Layers[layer].Where(vertex => !graph.IsBend(vertex))];
            columnRight[layer] = x += boxes.Length == 0 ? 0 : boxes.Max(box => sizes[box].Width);
            var tracks = new ChannelTracks([.. pieces[layer].Select(port => leaves[port])], [.. pieces[layer].Select(port => arrives[port])]);
            for (int i = 0; i < pieces[layer].Count; i++)
            {
                leaves[pieces[layer][i]] = tracks.Start[i];
                arrives[pieces[layer][i]] = tracks.End[i];
                if (tracks.Track[i] >= 0)
                    upright[pieces[layer][i]] = x + Before + (tracks.Track[i] * TrackApart);
            }

            x += layer + 1 < layers ? Before + (tracks.Count * TrackApart) + ArrowRoom : 0;
        }

        var drawn = Enumerable.Range(0, graph.Boxes).Select(box =>
        {
            int layer = graph.LayerOf[box];
            double room = columnRight[layer] - columnLeft[layer];
            return new LayoutBox(columnLeft[layer] + ((room - sizes[box].Width) / 2), middles[box] - (sizes[box].Height / 2), sizes[box].Width, sizes[box].Height);
        }).ToImmutableArray();
        var routes = Enumerable.Range(0, edges.Count).Select(edge => Route(edge, drawn, columnLeft, upright)).ToImmutableArray();
        IEnumerable<LayoutPoint> points = routes.SelectMany(route => route);
        return new LayoutSheet(
            drawn,
            routes,
            Math.Max(x, points.Select(point => point.X).DefaultIfEmpty().Max()),
            Math.Max(drawn.Max(box => box.Y + box.Height), points.Select(point => point.Y).DefaultIfEmpty().Max()))
        {
            Crossings = LayerOrdering.Crossings(graph),
        };
    }

    private ImmutableArray<LayoutPoint> Route(int edge, ImmutableArray<LayoutBox> boxes, double[] columnLeft, Dictionary<(int, int), double> upright)
    {
        int[] chain = graph.Chains[edge];
        if (chain.Length == 1)
            return Loop(boxes[chain[0]]);
        var points = new List<LayoutPoint> { new(boxes[chain[0]].X + boxes[chain[0]].Width, leaves[(edge, 0)]) };
        for (int piece = 0; piece + 1 < chain.Length; piece++)
        {
            // Where the height at a bend was moved, the line steps at the left of that layer.
            if (piece > 0 && arrives[(edge, piece - 1)] != leaves[(edge, piece)])
            {
                points.Add(new LayoutPoint(columnLeft[graph.LayerOf[chain[piece]]], arrives[(edge, piece - 1)]));
                points.Add(new LayoutPoint(columnLeft[graph.LayerOf[chain[piece]]], leaves[(edge, piece)]));
            }

            if (!upright.TryGetValue((edge, piece), out double x))
                continue;
            points.Add(new LayoutPoint(x, leaves[(edge, piece)]));
            points.Add(new LayoutPoint(x, arrives[(edge, piece)]));
        }

        points.Add(new LayoutPoint(boxes[chain[^1]].X, arrives[(edge, chain.Length - 2)]));
        if (edges[edge].From != chain[0])
            points.Reverse();
        return [.. points];
    }

    // Back to the box that it left: out at the upper right corner, over it, in from above.
    private static ImmutableArray<LayoutPoint> Loop(LayoutBox box)
    {
        (double right, double above) = (box.X + box.Width, box.Y - LoopRoom + 2);
        return [new(right, box.Y + 4), new(right + 6, box.Y + 4), new(right + 6, above), new(right - 16, above), new(right - 16, box.Y)];
    }
}
