namespace Contam.Graphs;

/// <summary>
/// The fewest vertices that would have to be closed to keep one vertex from being reached, and which.
/// <para>
/// Definition: a set of vertices, none of them a source or the target, that meets every path from a source to the target other than a joint straight from
/// a source; by Menger's theorem the smallest such set is as large as the greatest number of paths that share no vertex (Menger, Fundamenta
/// Mathematicae 10, 1927).
/// </para>
/// <para>
/// Method: every vertex is split into an arriving and a leaving half with room for one path between, and a cheapest cut of that network is taken
/// (<see cref="PushRelabelMaxFlow"/>). The network is seen against the flow, from the target to the sources, because of several smallest sets the one
/// nearest to the sources is wanted.
/// </para>
/// <para>Cost: that of the cheapest cut, on twice as many nodes as there are vertices.</para>
/// </summary>
/// <param name="Vertices">The vertices of the cut, rising.</param>
/// <param name="IsDirect">Whether a joint leads straight from a source to the target, which no vertex between can hold.</param>
internal sealed record VertexCut(int[] Vertices, bool IsDirect)
{
    private const int Sources = 0;

    /// <summary>The smallest cut between the sources and a target that is no source.</summary>
    public static VertexCut Smallest(PackedGraph graph, IReadOnlySet<int> sources, int target)
    {
        var network = new PushRelabelMaxFlow((2 * graph.VertexCount) + 1, Sources);
        // More than any set of vertices costs, so that the target itself is never in the cut.
        network.AddSupply(Arriving(target), graph.VertexCount);
        bool isDirect = false;
        for (int vertex = 0; vertex < graph.VertexCount; vertex++)
        {
            bool isSource = sources.Contains(vertex);
            if (vertex == target)
                continue;
            if (!isSource)
                network.AddArc(Leaving(vertex), Arriving(vertex), 1);
            for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
            {
                int to = graph.Target[place];
                if (isSource && to == target)
                    isDirect = true;
                else if (!sources.Contains(to))
                    network.AddArc(Arriving(to), isSource ? Sources : Leaving(vertex), PushRelabelMaxFlow.Unlimited);
            }
        }

        bool[] isBefore = network.Cut().IsBefore;
        int[] cut = [.. Enumerable.Range(0, graph.VertexCount).Where(vertex => isBefore[Arriving(vertex)] && !isBefore[Leaving(vertex)])];
        return new VertexCut(cut, isDirect);

        static int Arriving(int vertex) => (2 * vertex) + 1;
        static int Leaving(int vertex) => (2 * vertex) + 2;
    }
}
