using QuikGraph;
using QuikGraph.Algorithms.ConnectedComponents;

namespace Contam.Procedure;

/// <summary>
/// Parts that a fluid can go round in: the strongly connected components, by the graph library (Tarjan, "Depth-first search and linear graph algorithms",
/// SIAM Journal on Computing 1, 1972). The only place of this folder that sees the library.
/// Its surprises: components are numbered in its own order, so callers get them renumbered by their first vertex; its edges compare by reference, so
/// parallel joints stay apart, which does no harm here.
/// </summary>
internal static class LoopFinder
{
    /// <summary>
    /// For every vertex the number of its component; components are numbered from 0 by their lowest vertex. Linear.
    /// </summary>
    public static int[] Components(int vertexCount, IEnumerable<(int From, int To)> edges)
    {
        var graph = new AdjacencyGraph<int, Edge<int>>(allowParallelEdges: true, vertexCount);
        graph.AddVertexRange(Enumerable.Range(0, vertexCount));
        foreach ((int from, int to) in edges)
            graph.AddEdge(new Edge<int>(from, to));
        var search = new StronglyConnectedComponentsAlgorithm<int, Edge<int>>(graph);
        search.Compute();

        var numberOf = new Dictionary<int, int>();
        var component = new int[vertexCount];
        for (int vertex = 0; vertex < vertexCount; vertex++)
        {
            int theirs = search.Components[vertex];
            if (!numberOf.TryGetValue(theirs, out int ours))
                numberOf[theirs] = ours = numberOf.Count;
            component[vertex] = ours;
        }

        return component;
    }
}
