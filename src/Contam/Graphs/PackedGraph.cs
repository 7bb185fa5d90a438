namespace Contam.Graphs;

/// <summary>
/// The flow graph on packed arrays: the joints out of vertex <c>v</c> are the places
/// <c>First[v]</c> (inclusive) to <c>First[v + 1]</c> (exclusive) of <c>Target</c> and <c>Joint</c>, in the order in which they were given.
/// Loops, parallel joints and vertices without joints are ordinary.
/// </summary>
internal sealed class PackedGraph
{
    private PackedGraph(int[] first, int[] target, int[] joint)
    {
        First = first;
        Target = target;
        Joint = joint;
    }

    public int VertexCount => First.Length - 1;

    public int[] First { get; }

    /// <summary>The vertex that the joint at this place leads to.</summary>
    public int[] Target { get; }

    /// <summary>The number, in the order given, of the joint at this place.</summary>
    public int[] Joint { get; }

    /// <summary>
    /// Packs joints that run from <paramref name="from"/>[j] to <paramref name="to"/>[j]. A joint whose <paramref name="from"/> is negative is left out.
    /// Cost: linear, by counting.
    /// </summary>
    public static PackedGraph Of(int vertexCount, ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        var first = new int[vertexCount + 1];
        foreach (int u in from)
        {
            if (u >= 0)
                first[u + 1]++;
        }

        for (int v = 0; v < vertexCount; v++)
            first[v + 1] += first[v];

        var target = new int[first[vertexCount]];
        var joint = new int[target.Length];
        int[] next = first.AsSpan(0, vertexCount).ToArray();
        for (int j = 0; j < from.Length; j++)
        {
            if (from[j] < 0)
                continue;
            int place = next[from[j]]++;
            target[place] = to[j];
            joint[place] = j;
        }

        return new PackedGraph(first, target, joint);
    }

    /// <summary>What is given by joint number, by place instead: the search then reads it along with <see cref="Target"/>. Cost: linear.</summary>
    public int[] ByPlace(int[] ofJoint)
    {
        var ofPlace = new int[Joint.Length];
        for (int place = 0; place < ofPlace.Length; place++)
            ofPlace[place] = ofJoint[Joint[place]];
        return ofPlace;
    }

    /// <summary>The same joints the other way round, with their numbers. Cost: linear.</summary>
    public PackedGraph Reversed()
    {
        var first = new int[First.Length];
        foreach (int v in Target)
            first[v + 1]++;
        for (int v = 0; v < VertexCount; v++)
            first[v + 1] += first[v];
        var target = new int[Target.Length];
        var joint = new int[Target.Length];
        int[] next = first.AsSpan(0, VertexCount).ToArray();
        for (int u = 0; u < VertexCount; u++)
        {
            for (int place = First[u]; place < First[u + 1]; place++)
            {
                int there = next[Target[place]]++;
                target[there] = u;
                joint[there] = Joint[place];
            }
        }

        return new PackedGraph(first, target, joint);
    }
}
