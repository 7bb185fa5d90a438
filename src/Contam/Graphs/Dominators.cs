namespace Contam.Graphs;

/// <summary>
/// The last single part that everything must pass.
/// <para>
/// Definition: <c>d</c> <em>dominates</em> <c>v</c> when every path from any source to <c>v</c> passes <c>d</c>; the <em>immediate</em> dominator of
/// <c>v</c> is the dominator other than <c>v</c> that every other one dominates. Where the paths have no vertex in common, which happens with
/// several sources only, there is none.
/// </para>
/// <para>
/// Method: Cooper, Harvey and Kennedy, "A simple, fast dominance algorithm", Rice University TR-06-33870, 2001, with all sources under one root.
/// Cost: near linear on graphs of this kind, at worst vertices × joints. Source of the definition: Lengauer and Tarjan, ACM TOPLAS 1, 1979.
/// </para>
/// </summary>
internal static class Dominators
{
    private const int None = -1;

    /// <summary>The immediate dominator of each vertex; -1 for a vertex that is not reached, for one whose paths share nothing, and for one that only itself begins.</summary>
    public static int[] Immediate(PackedGraph graph, IReadOnlyCollection<int> sources)
    {
        int count = graph.VertexCount;
        int root = count;
        int[] order = ReversePostorder(graph, sources);
        int[] placeInOrder = new int[count + 1];
        Array.Fill(placeInOrder, None);
        placeInOrder[root] = 0;
        for (int place = 0; place < order.Length; place++)
            placeInOrder[order[place]] = place + 1;

        var isSource = new bool[count];
        foreach (int source in sources)
            isSource[source] = true;
        PackedGraph before = graph.Reversed();
        var dominator = new int[count + 1];
        Array.Fill(dominator, None);
        dominator[root] = root;
        bool hasChanged = true;
        while (hasChanged)
        {
            hasChanged = false;
            foreach (int vertex in order)
            {
                int common = isSource[vertex] ? root : None;
                for (int place = before.First[vertex]; place < before.First[vertex + 1]; place++)
                {
                    int from = before.Target[place];
                    if (dominator[from] != None)
                        common = common == None ? from : Meet(from, common);
                }

                if (dominator[vertex] == common)
                    continue;
                dominator[vertex] = common;
                hasChanged = true;
            }
        }

        return [.. dominator.Take(count).Select(one => one == root ? None : one)];

        int Meet(int left, int right)
        {
            while (left != right)
            {
                while (placeInOrder[left] > placeInOrder[right])
                    left = dominator[left];
                while (placeInOrder[right] > placeInOrder[left])
                    right = dominator[right];
            }

            return left;
        }
    }

    private static int[] ReversePostorder(PackedGraph graph, IReadOnlyCollection<int> sources)
    {
        var isSeen = new bool[graph.VertexCount];
        var postorder = new List<int>();
        var path = new Stack<(int Vertex, int Next)>();
        foreach (int source in sources)
        {
            if (isSeen[source])
                continue;
            isSeen[source] = true;
            path.Push((source, graph.First[source]));
            while (path.TryPop(out (int Vertex, int Next) at))
            {
                if (at.Next == graph.First[at.Vertex + 1])
                {
                    postorder.Add(at.Vertex);
                    continue;
                }

                path.Push((at.Vertex, at.Next + 1));
                int to = graph.Target[at.Next];
                if (isSeen[to])
                    continue;
                isSeen[to] = true;
                path.Push((to, graph.First[to]));
            }
        }

        postorder.Reverse();
        return [.. postorder];
    }
}
