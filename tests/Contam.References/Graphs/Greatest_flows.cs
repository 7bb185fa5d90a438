using Contam.Graphs;
using QuikGraph;
using QuikGraph.Algorithms;
using QuikGraph.Algorithms.MaximumFlow;

namespace Contam.References.Graphs;

/// <summary>The stop line's greatest flow and cheapest cut: on published networks, and beside the general-purpose graph library (QuikGraph) on random ones.</summary>
public sealed class Greatest_flows
{
    /// <summary>The book: 23, across the cut {s, 1, 2, 4} | {3, t}.</summary>
    [Fact]
    public void The_textbooks_is_23() => Assert.Equal("23: 3 t", Text(Network.Clrs));

    /// <summary>The second edition's network has one more edge, 1 to 2 of 10, and the same answer.</summary>
    [Fact]
    public void An_edge_from_1_to_2_of_10_changes_nothing() => Assert.Equal("23: 3 t", Text(Network.Clrs.With("12 10")));

    /// <summary>Two methods that share no code, on one network.</summary>
    [Fact]
    public void The_challenges_sample_is_cut_as_cheaply_as_parts_side_by_side_are() =>
        Assert.Equal(Network.Dimacs.SmallestCut().Length, CutOf(Network.Dimacs).Cost);

    /// <summary>The value printed with the sample is 13: 3 + 1 + 4 + 5 over 1 to 7, 2 to 6, 3 to 5 and 4 to 8.</summary>
    [Fact]
    public void The_challenges_sample_is_13() => Assert.Equal(13, CutOf(Network.Dimacs).Cost);

    /// <summary>The value, and of all cheapest cuts the side nearest to the target, read off what that library's flow leaves room for.</summary>
    [Fact]
    public void Are_those_of_the_graph_library()
    {
        var random = new Random(26);
        int withSides = 0;
        for (int round = 0; round < 400; round++)
        {
            int count = random.Next(2, 30);
            var arcs = Enumerable.Range(0, random.Next(1, 4 * count)).Select(_ => (From: random.Next(count), To: random.Next(count), Room: random.Next(0, 12))).ToList();
            int[] supply = [.. Enumerable.Range(0, count).Select(node => node > 0 && random.Next(3) == 0 ? random.Next(0, 25) : 0)];
            var flow = new PushRelabelMaxFlow(count, target: 0);
            foreach ((int from, int to, int room) in arcs)
                flow.AddArc(from, to, room);
            for (int node = 0; node < count; node++)
                flow.AddSupply(node, supply[node]);

            MinimumCut ours = flow.Cut();
            (long cost, bool[] isBefore) = Theirs(count, arcs, supply);
            Assert.Equal(cost, ours.Cost);
            Assert.Equal(isBefore, ours.IsBefore);
            withSides += isBefore.Count(one => one) > 1 && !isBefore.All(one => one) && cost > 0 ? 1 : 0;
        }

        Assert.True(withSides > 100, $"only {withSides} cuts had nodes on both sides");
    }

    private static (long Cost, bool[] IsBefore) Theirs(int count, List<(int From, int To, int Room)> arcs, int[] supply)
    {
        var graph = new AdjacencyGraph<int, Edge<int>>();
        var room = new Dictionary<Edge<int>, double>();
        graph.AddVertexRange(Enumerable.Range(0, count + 1));
        void Add(int from, int to, double capacity)
        {
            var edge = new Edge<int>(from, to);
            graph.AddEdge(edge);
            room[edge] = capacity;
        }

        // An arc from a node to itself carries nothing anywhere; that library is not asked about it.
        foreach ((int from, int to, int capacity) in arcs.Where(arc => arc.From != arc.To))
            Add(from, to, capacity);
        for (int node = 0; node < count; node++)
            Add(count, node, supply[node]);
        var back = new ReversedEdgeAugmentorAlgorithm<int, Edge<int>>(graph, (from, to) => new Edge<int>(from, to));
        back.AddReversedEdges();
        var flow = new EdmondsKarpMaximumFlowAlgorithm<int, Edge<int>>(graph, edge => room.GetValueOrDefault(edge), (from, to) => new Edge<int>(from, to), back);
        flow.Compute(count, 0);

        var isBefore = new bool[count];
        isBefore[0] = true;
        for (bool hasGrown = true; hasGrown;)
        {
            hasGrown = false;
            foreach (Edge<int> edge in graph.Edges.Where(edge => edge.Source < count && isBefore.ElementAtOrDefault(edge.Target) && !isBefore[edge.Source] && flow.ResidualCapacities[edge] > 0))
                hasGrown = isBefore[edge.Source] = true;
        }

        return ((long)Math.Round(flow.MaxFlow), isBefore);
    }

    private static MinimumCut CutOf(Network network)
    {
        Net net = Net.Read(network.Text);
        var flow = new PushRelabelMaxFlow(net.Count, net.At(network.Target));
        for (int edge = 0; edge < network.Capacities.Length; edge++)
            flow.AddArc(net.Edges[edge].From, net.Edges[edge].To, network.Capacities[edge]);
        flow.AddSupply(net.At(network.Source), network.Capacities.Sum());
        return flow.Cut();
    }

    private static string Text(Network network)
    {
        MinimumCut cut = CutOf(network);
        Net net = Net.Read(network.Text);
        return $"{cut.Cost}: {string.Join(' ', net.Names.Where(name => cut.IsBefore[net.At(name)]).Order(StringComparer.Ordinal))}";
    }
}
