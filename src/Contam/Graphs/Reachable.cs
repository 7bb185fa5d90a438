namespace Contam.Graphs;

/// <summary>Plain breadth-first search. Cost: linear.</summary>
internal static class Reachable
{
    /// <summary>Marks the starts and everything with a path from one. A vertex for which <paramref name="stopsAt"/> holds is marked but not searched from; <paramref name="alsoTo"/> gives joints that the graph lacks.</summary>
    public static bool[] From(PackedGraph graph, IEnumerable<int> starts, Func<int, bool>? stopsAt = null, Func<int, IEnumerable<int>>? alsoTo = null)
    {
        var isMarked = new bool[graph.VertexCount];
        var queue = new Queue<int>();
        foreach (int start in starts)
            Enter(start);
        while (queue.TryDequeue(out int vertex))
        {
            if (stopsAt is not null && stopsAt(vertex))
                continue;
            for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
                Enter(graph.Target[place]);
            foreach (int beyond in alsoTo?.Invoke(vertex) ?? [])
                Enter(beyond);
        }

        return isMarked;

        void Enter(int vertex)
        {
            if (isMarked[vertex])
                return;
            isMarked[vertex] = true;
            queue.Enqueue(vertex);
        }
    }
}
