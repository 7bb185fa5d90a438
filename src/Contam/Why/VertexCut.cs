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
        var network = new Network((2 * graph.VertexCount) + 1, graph.VertexCount + graph.Target.Length);
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

    /// <summary>
    /// A flow network whose edges come in pairs: the room left one way, and the flow that can be taken back the other.
    /// The edges out of a vertex are a chain: <c>lastOut</c> its newest, <c>before</c> the one that was newest when an edge was added.
    /// </summary>
    private sealed class Network
    {
        private const int None = -1;

        private readonly List<int> to;
        private readonly List<int> room;
        private readonly List<int> before;
        private readonly int[] lastOut;
        private readonly int[] arrivedBy;
        private readonly int[] queue;

        public Network(int vertexCount, int edgeCount)
        {
            to = new List<int>(2 * edgeCount);
            room = new List<int>(2 * edgeCount);
            before = new List<int>(2 * edgeCount);
            lastOut = new int[vertexCount];
            arrivedBy = new int[vertexCount];
            queue = new int[vertexCount];
            Array.Fill(lastOut, None);
        }

        public void Add(int from, int target, int capacity)
        {
            AddOne(from, target, capacity);
            AddOne(target, from, 0);
        }

        /// <summary>Sends one more unit along a shortest path with room; <c>false</c> where there is none.</summary>
        public bool AddPath(int from, int target)
        {
            Search(from, target);
            if (arrivedBy[target] == None)
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
            Search(from, target: None);
            var isReached = new bool[arrivedBy.Length];
            for (int vertex = 0; vertex < isReached.Length; vertex++)
                isReached[vertex] = vertex == from || arrivedBy[vertex] != None;
            return isReached;
        }

        private void AddOne(int from, int target, int capacity)
        {
            before.Add(lastOut[from]);
            lastOut[from] = to.Count;
            to.Add(target);
            room.Add(capacity);
        }

        private void Search(int from, int target)
        {
            Array.Fill(arrivedBy, None);
            int entered = 0;
            queue[entered++] = from;
            for (int taken = 0; taken < entered && queue[taken] != target; taken++)
            {
                for (int edge = lastOut[queue[taken]]; edge != None; edge = before[edge])
                {
                    int next = to[edge];
                    if (room[edge] == 0 || next == from || arrivedBy[next] != None)
                        continue;
                    arrivedBy[next] = edge;
                    queue[entered++] = next;
                }
            }
        }
    }
}
