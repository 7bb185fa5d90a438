namespace Contam.Spread;

/// <summary>
/// The widest path from any source to every vertex.
/// <para>
/// Definition: <c>reach(v)</c> is the greatest, over all sources <c>s</c> and all paths from <c>s</c> to <c>v</c>, of the least among
/// the size that <c>s</c> sheds, what the joints of the path let on, and what the vertices strictly between let on.
/// </para>
/// <para>
/// Method: vertices are settled from the widest level down, each level first in first out; a vertex is settled once, and each joint is looked at once,
/// when its upstream end is settled. This is Dijkstra's search for the bottleneck (Pollack, "The maximum capacity through a network", Operations
/// Research 8, 1960) with buckets in place of a heap, which the finite number of levels allows.
/// </para>
/// <para>Cost: time and memory linear in vertices, joints and levels.</para>
/// </summary>
internal sealed class WidestPaths
{
    private const int NotReached = int.MaxValue;

    private readonly int[] level;
    private readonly Levels levels;

    private WidestPaths(int[] level, int[] via, int[] source, Levels levels)
    {
        this.level = level;
        Via = via;
        Source = source;
        this.levels = levels;
    }

    /// <summary>The vertex that the widest path comes through last; -1 for a source by its own shedding, and where nothing arrives.</summary>
    public int[] Via { get; }

    /// <summary>The source that the hops lead back to; -1 where nothing arrives.</summary>
    public int[] Source { get; }

    public bool Reaches(int vertex) => level[vertex] != NotReached;

    /// <summary>The largest particle in µm that arrives; meaningless where nothing does.</summary>
    public double ReachAt(int vertex) => levels.SizeAt(level[vertex]);

    /// <summary>Settles every vertex. Ties go to the source given first, then to the vertex settled first, then to the joint given first.</summary>
    public static WidestPaths Settle(PackedGraph graph, Capacities capacities)
    {
        Levels levels = capacities.Levels;
        int[] vertexLevel = capacities.VertexLevel;
        int[] jointLevel = capacities.JointLevel;
        int count = graph.VertexCount;
        int[] level = Filled(count, NotReached);
        int[] via = Filled(count, -1);
        int[] source = Filled(count, -1);
        var isSettled = new bool[count];
        var waiting = new List<int>?[levels.Count];

        foreach ((int vertex, int shedLevel) in capacities.Sources)
        {
            if (shedLevel >= level[vertex])
                continue;
            level[vertex] = shedLevel;
            source[vertex] = vertex;
            (waiting[shedLevel] ??= []).Add(vertex);
        }

        for (int here = 0; here < waiting.Length; here++)
        {
            List<int>? queue = waiting[here];
            for (int i = 0; queue is not null && i < queue.Count; i++)
            {
                int vertex = queue[i];
                if (isSettled[vertex])
                    continue;
                isSettled[vertex] = true;
                int letsOn = Math.Max(here, vertexLevel[vertex]);
                for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
                {
                    int next = graph.Target[place];
                    int arrives = Math.Max(letsOn, jointLevel[graph.Joint[place]]);
                    if (arrives >= level[next])
                        continue;
                    level[next] = arrives;
                    via[next] = vertex;
                    source[next] = source[vertex];
                    (waiting[arrives] ??= []).Add(next);
                    if (arrives == here)
                        queue = waiting[here];
                }
            }
        }

        return new WidestPaths(level, via, source, levels);
    }

    private static int[] Filled(int count, int value)
    {
        var array = new int[count];
        Array.Fill(array, value);
        return array;
    }
}
