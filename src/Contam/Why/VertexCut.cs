using Contam.Spread;

namespace Contam.Why;

/// <summary>
/// The fewest parts that would have to hold to keep one part clean, and which.
/// <para>
/// Definition: a set of vertices, none of them a source or the target, that meets every path from a source to the target other than a joint straight from
/// a source; by Menger's theorem the smallest such set is as large as the greatest number of paths that share no vertex (Menger, Fundamenta
/// Mathematicae 10, 1927).
/// </para>
/// <para>
/// Method: every vertex is split into an arriving and a leaving half with room for one path between; paths are added one by one, shortest first
/// (Edmonds and Karp, Journal of the ACM 19, 1972), and the cut is read off what can still be reached. Of several smallest sets it is the one nearest to the sources.
/// Cost: linear for each path, of which there are at most as many as joints into the target.
/// </para>
/// </summary>
/// <param name="Vertices">The vertices of the cut, rising.</param>
/// <param name="IsDirect">Whether a joint leads straight from a source to the target, which no part between can hold.</param>
internal sealed record VertexCut(int[] Vertices, bool IsDirect)
{
    private const int Plenty = int.MaxValue / 2;

    /// <summary>The smallest cut between the sources and a target that is no source.</summary>
    public static VertexCut Smallest(PackedGraph graph, IReadOnlySet<int> sources, int target)
    {
        var network = new Network(2 * graph.VertexCount + 1);
        int root = 2 * graph.VertexCount;
        bool isDirect = false;
        for (int vertex = 0; vertex < graph.VertexCount; vertex++)
        {
            bool isSource = sources.Contains(vertex);
            if (isSource)
                network.Add(root, Leaving(vertex), Plenty);
            else if (vertex != target)
                network.Add(Arriving(vertex), Leaving(vertex), 1);
            for (int place = graph.First[vertex]; place < graph.First[vertex + 1] && vertex != target; place++)
            {
                int to = graph.Target[place];
                if (isSource && to == target)
                    isDirect = true;
                else if (!sources.Contains(to))
                    network.Add(Leaving(vertex), Arriving(to), Plenty);
            }
        }

        while (network.AddPath(root, Arriving(target)))
        {
            // Each path takes the room of the vertices it passes.
        }

        bool[] isReached = network.ReachableFrom(root);
        int[] cut = [.. Enumerable.Range(0, graph.VertexCount).Where(vertex => !sources.Contains(vertex) && vertex != target && isReached[Arriving(vertex)] && !isReached[Leaving(vertex)])];
        return new VertexCut(cut, isDirect);

        static int Arriving(int vertex) => 2 * vertex;
        static int Leaving(int vertex) => (2 * vertex) + 1;
    }

    /// <summary>A flow network whose edges come in pairs: the room left one way, and the flow that can be taken back the other.</summary>
    private sealed class Network(int vertexCount)
    {
        private readonly List<int> to = [];
        private readonly List<int> room = [];
        private readonly List<int>[] edges = Lists(vertexCount);

        public void Add(int from, int target, int capacity)
        {
            edges[from].Add(to.Count);
            to.Add(target);
            room.Add(capacity);
            edges[target].Add(to.Count);
            to.Add(from);
            room.Add(0);
        }

        /// <summary>Sends one more unit along a shortest path with room; <c>false</c> where there is none.</summary>
        public bool AddPath(int from, int target)
        {
            int[] arrivedBy = Search(from, target);
            if (arrivedBy[target] < 0)
                return false;
            for (int vertex = target; vertex != from; vertex = to[arrivedBy[vertex] ^ 1])
            {
                room[arrivedBy[vertex]]--;
                room[arrivedBy[vertex] ^ 1]++;
            }

            return true;
        }

        public bool[] ReachableFrom(int from)
        {
            int[] arrivedBy = Search(from, target: -1);
            var isReached = new bool[vertexCount];
            for (int vertex = 0; vertex < vertexCount; vertex++)
                isReached[vertex] = vertex == from || arrivedBy[vertex] >= 0;
            return isReached;
        }

        private int[] Search(int from, int target)
        {
            var arrivedBy = new int[vertexCount];
            Array.Fill(arrivedBy, -1);
            var queue = new Queue<int>();
            queue.Enqueue(from);
            while (queue.TryDequeue(out int vertex) && vertex != target)
            {
                foreach (int edge in edges[vertex])
                {
                    int next = to[edge];
                    if (room[edge] == 0 || next == from || arrivedBy[next] >= 0)
                        continue;
                    arrivedBy[next] = edge;
                    queue.Enqueue(next);
                }
            }

            return arrivedBy;
        }

        private static List<int>[] Lists(int count)
        {
            var lists = new List<int>[count];
            for (int i = 0; i < count; i++)
                lists[i] = [];
            return lists;
        }
    }
}
