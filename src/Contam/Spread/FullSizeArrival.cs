using Contam.Graphs;

namespace Contam.Spread;

/// <summary>
/// Where some source's full size arrives.
/// <para>Definition: <c>v</c> is marked when there is a source <c>s</c> and a path from <c>s</c> to <c>v</c> on which every joint, and every
/// vertex strictly between, lets on the size that <c>s</c> sheds. A source is marked.</para>
/// <para>Method: sources by rising size. What the size of a smaller source passes, a larger one passes at most, so a vertex marked once need not be
/// searched from again. Cost: linear, after sorting the sources.</para>
/// </summary>
internal static class FullSizeArrival
{
    public static bool[] Mark(PackedGraph graph, Capacities capacities)
    {
        var isMarked = new bool[graph.VertexCount];
        var queue = new Queue<int>();
        foreach (IGrouping<int, (int Vertex, int ShedLevel)> group in capacities.Sources.GroupBy(source => source.ShedLevel).OrderByDescending(group => group.Key))
        {
            int size = group.Key;
            foreach ((int vertex, _) in group)
                Enter(vertex);

            while (queue.TryDequeue(out int vertex))
            {
                if (capacities.VertexLevel[vertex] > size)
                    continue;
                for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
                {
                    if (capacities.PlaceLevel[place] <= size)
                        Enter(graph.Target[place]);
                }
            }
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
