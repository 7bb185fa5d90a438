using Contam.Graphs;

namespace Contam.Spread;

/// <summary>
/// For every vertex the fewest clean places on any way to it from a source, its own look counted as one.
/// <para>
/// Method: breadth-first search in which a vertex costs 1 where it was found clean and 0 elsewhere; a vertex of cost 0 goes to the front of the queue, one of
/// cost 1 to the back (0-1 breadth-first search, a case of Dial, "Algorithm 360: Shortest-path forest with topological ordering", Communications of the
/// ACM 12, 1969). Cost: linear.
/// </para>
/// </summary>
internal static class FewestCleanPlaces
{
    /// <summary>The number for a vertex that no way leads to.</summary>
    public const int NoWay = int.MaxValue;

    /// <summary>The fewest for every vertex.</summary>
    /// <param name="graph">The open joints.</param>
    /// <param name="sources">Where the debris comes from; none of them was found clean.</param>
    /// <param name="isClean">Whether a clean finding at a vertex counts.</param>
    public static int[] On(PackedGraph graph, IEnumerable<int> sources, Func<int, bool> isClean)
    {
        var fewest = new int[graph.VertexCount];
        Array.Fill(fewest, NoWay);
        var queue = new LinkedList<int>();
        foreach (int source in sources)
            Enter(source, 0);
        while (queue.First is { } node)
        {
            int vertex = node.Value;
            queue.RemoveFirst();
            for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
                Enter(graph.Target[place], fewest[vertex]);
        }

        return fewest;

        void Enter(int vertex, int before)
        {
            bool counts = isClean(vertex);
            int now = before + (counts ? 1 : 0);
            if (now >= fewest[vertex])
                return;
            fewest[vertex] = now;
            if (counts)
                queue.AddLast(vertex);
            else
                queue.AddFirst(vertex);
        }
    }
}
