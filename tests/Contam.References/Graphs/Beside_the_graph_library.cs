using Contam.Graphs;
using Contam.Procedure;
using QuikGraph;
using QuikGraph.Algorithms;
using QuikGraph.Algorithms.MaximumFlow;
using QuikGraph.Algorithms.Search;

namespace Contam.References.Graphs;

/// <summary>
/// This library's answers beside those of the general-purpose graph library (QuikGraph), on the published graphs and on the flight routes. Where that library has no such
/// answer, or ours is made by it, the answer is judged by its definition with that library's own search.
/// </summary>
public sealed class Beside_the_graph_library
{
    public static TheoryData<string> Graphs => [.. Published.Small.Keys.Order(StringComparer.Ordinal), nameof(Published.FlightRoutes)];

    [Fact]
    public void The_flight_routes_are_those_of_the_data_set()
    {
        Net net = Published.FlightRoutes;
        Assert.Equal((305, 5366), (net.Count, net.Edges.Count));
        // Counted apart from this library, by networkx: four components, of which the largest has 302 airports.
        Assert.Equal([1, 1, 1, 302], StronglyConnectedComponents.Of(net.Count, net.Edges).Component.GroupBy(one => one).Select(one => one.Count()).Order());
    }

    [Theory]
    [MemberData(nameof(Graphs))]
    public void Reach_is_that_of_its_search(string name)
    {
        Net net = NetOf(name);
        for (int vertex = 0; vertex < net.Count; vertex++)
            Assert.Equal(net.Text(Search(net, vertex, without: -1)), net.Text(Reachable.From(net.Packed, [vertex])));
    }

    /// <summary>Ours are made by that library's components; so they are judged by the definition: two vertices are of one component when each has a way to the other.</summary>
    [Theory]
    [MemberData(nameof(Graphs))]
    public void Loops_are_where_its_search_leads_there_and_back(string name)
    {
        Net net = NetOf(name);
        bool[][] reach = [.. Enumerable.Range(0, net.Count).Select(vertex => Search(net, vertex, without: -1))];
        int[] component = StronglyConnectedComponents.Of(net.Count, net.Edges).Component;
        for (int one = 0; one < net.Count; one++)
        {
            for (int other = 0; other < net.Count; other++)
                Assert.Equal(reach[one][other] && reach[other][one], component[one] == component[other]);
        }
    }

    [Theory]
    [MemberData(nameof(Graphs))]
    public void An_order_is_found_when_it_finds_one_and_holds(string name)
    {
        Net net = NetOf(name);
        Exception? theirs = Record.Exception(() => LibraryGraph(net).TopologicalSort().ToArray());
        // To us a joint from a vertex to itself orders nothing, to that library it is a cycle. The one graph here that has such a joint goes round elsewhere too.
        Exception? ours = Record.Exception(() =>
        {
            int[] order = Loops_and_order_published.GraphOf(net).InOrder();
            Assert.Equal(Enumerable.Range(0, net.Count), order.Order());
            int[] placeOf = new int[net.Count];
            for (int place = 0; place < order.Length; place++)
                placeOf[order[place]] = place;
            Assert.All(net.Edges, edge => Assert.True(placeOf[edge.From] < placeOf[edge.To]));
        });

        Assert.Equal(theirs?.GetType(), ours is OrderCycleException ? typeof(NonAcyclicGraphException) : ours?.GetType());
    }

    /// <summary>That library has no dominators. By the definition: without a dominator its search does not get there; and of the dominators of a vertex the immediate one has all others as its own.</summary>
    [Theory]
    [MemberData(nameof(Graphs))]
    public void Immediate_dominators_are_those_of_the_definition(string name)
    {
        Net net = NetOf(name);
        bool[][] reachWithout = [.. Enumerable.Range(0, net.Count).Select(vertex => Search(net, 0, without: vertex))];
        bool[] reach = Search(net, 0, without: -1);
        int[] immediate = Dominators.Immediate(net.Packed, [0]);
        for (int vertex = 0; vertex < net.Count; vertex++)
        {
            int[] strict = reach[vertex] ? [.. Enumerable.Range(0, net.Count).Where(one => one != vertex && reach[one] && !reachWithout[one][vertex])] : [];
            int expected = strict.SingleOrDefault(one => strict.All(other => other == one || !reachWithout[other][one]), -1);
            Assert.Equal(expected, immediate[vertex]);
        }
    }

    [Theory]
    [MemberData(nameof(Graphs))]
    public void Smallest_cuts_are_as_large_as_its_greatest_flow(string name)
    {
        Net net = NetOf(name);
        // All pairs of a small graph; of the flight routes a fixed choice.
        int step = net.Count > 50 ? 61 : 1;
        for (int from = 0; from < net.Count; from += step)
        {
            for (int to = step == 1 ? 0 : 7; to < net.Count; to += step)
            {
                if (from == to)
                    continue;
                VertexCut cut = VertexCut.Smallest(net.Packed, new HashSet<int> { from }, to);
                Assert.Equal(net.Edges.Contains((from, to)), cut.IsDirect);
                Assert.Equal(GreatestFlow(net, from, to), cut.Vertices.Length);
            }
        }
    }

    private static Net NetOf(string name) => name == nameof(Published.FlightRoutes) ? Published.FlightRoutes : Published.Small[name];

    private static AdjacencyGraph<int, Edge<int>> LibraryGraph(Net net, int without = -1)
    {
        var graph = new AdjacencyGraph<int, Edge<int>>();
        graph.AddVertexRange(Enumerable.Range(0, net.Count).Where(vertex => vertex != without));
        graph.AddEdgeRange(net.Edges.Where(edge => edge.From != without && edge.To != without).Select(edge => new Edge<int>(edge.From, edge.To)));
        return graph;
    }

    private static bool[] Search(Net net, int from, int without)
    {
        var isReached = new bool[net.Count];
        if (from == without)
            return isReached;
        var search = new BreadthFirstSearchAlgorithm<int, Edge<int>>(LibraryGraph(net, without));
        search.DiscoverVertex += vertex => isReached[vertex] = true;
        search.Compute(from);
        return isReached;
    }

    /// <summary>The greatest number of paths that share no vertex, joints straight to the target left out: every vertex in two halves with room for one between.</summary>
    private static int GreatestFlow(Net net, int source, int target)
    {
        const double Plenty = 1_000_000;
        var graph = new AdjacencyGraph<int, Edge<int>>();
        var capacity = new Dictionary<Edge<int>, double>();
        graph.AddVertexRange(Enumerable.Range(0, 2 * net.Count));
        void Add(int from, int to, double room)
        {
            var edge = new Edge<int>(from, to);
            graph.AddEdge(edge);
            capacity[edge] = room;
        }

        for (int vertex = 0; vertex < net.Count; vertex++)
            Add(2 * vertex, (2 * vertex) + 1, vertex == source || vertex == target ? Plenty : 1);
        foreach ((int from, int to) in net.Edges.Distinct().Where(edge => edge != (source, target) && edge.From != edge.To))
            Add((2 * from) + 1, 2 * to, Plenty);

        var back = new ReversedEdgeAugmentorAlgorithm<int, Edge<int>>(graph, (from, to) => new Edge<int>(from, to));
        back.AddReversedEdges();
        var flow = new EdmondsKarpMaximumFlowAlgorithm<int, Edge<int>>(graph, edge => capacity.GetValueOrDefault(edge), (from, to) => new Edge<int>(from, to), back);
        flow.Compute((2 * source) + 1, 2 * target);
        return (int)flow.MaxFlow;
    }
}
