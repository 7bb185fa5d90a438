using QuikGraph;
using QuikGraph.Algorithms.Search;

namespace Contam.Graphs;

/// <summary>
/// What can be reached in a small graph whose vertices are names, not numbers: the graph library's breadth-first search.
/// <para>Definition: the start, and every vertex with a path from it. Literature: Moore, "The shortest path through a maze", 1959.</para>
/// <para>
/// Cost: linear. The library keeps its vertices in dictionaries, so that nothing has to be numbered first. Where a whole system is searched again and again,
/// use <see cref="Reachable"/> on packed arrays.
/// </para>
/// </summary>
internal static class ReachByName
{
    /// <summary>The start and all that these edges lead to from it.</summary>
    public static HashSet<T> From<T>(T start, IEnumerable<(T From, T To)> edges)
        where T : notnull
    {
        var graph = new AdjacencyGraph<T, Edge<T>>();
        graph.AddVertex(start);
        graph.AddVerticesAndEdgeRange(edges.Select(edge => new Edge<T>(edge.From, edge.To)));
        var reached = new HashSet<T>();
        var search = new BreadthFirstSearchAlgorithm<T, Edge<T>>(graph);
        search.DiscoverVertex += vertex => reached.Add(vertex);
        search.Compute(start);
        return reached;
    }
}
