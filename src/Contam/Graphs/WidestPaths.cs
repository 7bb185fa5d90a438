using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Contam.Graphs;

/// <summary>
/// The widest path from any source to every vertex.
/// <para>
/// Definition: <c>reach(v)</c> is the greatest, over all sources <c>s</c> and all paths from <c>s</c> to <c>v</c>, of the least among
/// the size that <c>s</c> sheds, what the joints of the path let on, and what the vertices strictly between let on.
/// </para>
/// <para>
/// Method: vertices are settled from the widest level down, each level first in first out; a vertex is settled once, and each joint is looked at once,
/// when its upstream end is settled. This is Dijkstra's search for the bottleneck (Pollack, "The maximum capacity through a network", Operations
/// Research 8, 1960) with buckets in place of a heap, which the finite number of levels allows. The bucket of the level that is being settled is the
/// order of settling itself, so that a vertex is written once where nothing holds the debris; what waits for a narrower level is chained by level.
/// </para>
/// <para>Cost: time and memory linear in vertices, joints and levels.</para>
/// </summary>
internal sealed class WidestPaths
{
    private const int NotReached = int.MaxValue;

    private readonly Arrival[] arrivals;
    private readonly Levels levels;
    private readonly int[]? sourceOf;
    private readonly int onlySource;

    private WidestPaths(Arrival[] arrivals, ReadOnlySpan<int> settled, Capacities capacities)
    {
        this.arrivals = arrivals;
        levels = capacities.Levels;
        ImmutableArray<(int Vertex, int ShedLevel)> sources = capacities.Sources;
        onlySource = sources.IsEmpty ? -1 : sources[0].Vertex;
        if (sources.All(source => source.Vertex == onlySource))
            return;
        // A vertex is settled after the one that it is reached through.
        sourceOf = new int[arrivals.Length];
        foreach (int vertex in settled)
            sourceOf[vertex] = ViaAt(vertex) < 0 ? vertex : sourceOf[ViaAt(vertex)];
    }

    public bool Reaches(int vertex) => arrivals[vertex].Level != NotReached;

    /// <summary>The level of the largest particle that arrives; meaningless where nothing does.</summary>
    public int LevelAt(int vertex) => arrivals[vertex].Level;

    /// <summary>The vertex that the widest path comes through last; -1 for a source by its own shedding; meaningless where nothing arrives.</summary>
    public int ViaAt(int vertex) => arrivals[vertex].Via;

    /// <summary>The largest particle in µm that arrives; meaningless where nothing does.</summary>
    public double ReachAt(int vertex) => levels.SizeAt(LevelAt(vertex));

    /// <summary>The source that the hops lead back to; meaningless where nothing arrives.</summary>
    public int SourceAt(int vertex) => sourceOf is null ? onlySource : sourceOf[vertex];

    /// <summary>Settles every vertex. Ties go to the source given first, then to the vertex settled first, then to the joint given first.</summary>
    // It runs once for a question, and long: the runtime would compile it well only after thirty turns.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static WidestPaths Settle(PackedGraph graph, Capacities capacities)
    {
        var arrivals = new Arrival[graph.VertexCount];
        Array.Fill(arrivals, new Arrival(NotReached, -1));
        int[] settled = new int[arrivals.Length];
        int count = 0;
        var waiting = new LevelQueues(capacities.Levels.Count);
        foreach ((int vertex, int shedLevel) in capacities.Sources)
        {
            if (shedLevel >= arrivals[vertex].Level)
                continue;
            arrivals[vertex] = new Arrival(shedLevel, -1);
            waiting.Add(shedLevel, vertex);
        }

        int[] first = graph.First, target = graph.Target, vertexLevel = capacities.VertexLevel, placeLevel = capacities.PlaceLevel;
        bool[] mayHold = capacities.MayHold;
        for (int here = 0; here < capacities.Levels.Count; here++)
        {
            int next = count;
            // What has come in wider since it was put there was settled then.
            foreach (int vertex in waiting.At(here))
            {
                if (arrivals[vertex].Level == here)
                    settled[count++] = vertex;
            }

            for (; next < count; next++)
            {
                int vertex = settled[next];
                int start = first[vertex];
                ReadOnlySpan<int> beyonds = target.AsSpan(start, first[vertex + 1] - start);
                if (!mayHold[vertex])
                {
                    foreach (int beyond in beyonds)
                    {
                        ref Arrival arrival = ref arrivals[beyond];
                        if (arrival.Level <= here)
                            continue;
                        arrival = new Arrival(here, vertex);
                        settled[count++] = beyond;
                    }

                    continue;
                }

                int letsOn = Math.Max(here, vertexLevel[vertex]);
                ReadOnlySpan<int> lets = placeLevel.AsSpan(start, beyonds.Length);
                for (int i = 0; i < beyonds.Length; i++)
                {
                    int arrives = Math.Max(letsOn, lets[i]);
                    int beyond = beyonds[i];
                    ref Arrival arrival = ref arrivals[beyond];
                    if (arrives >= arrival.Level)
                        continue;
                    arrival = new Arrival(arrives, vertex);
                    if (arrives == here)
                        settled[count++] = beyond;
                    else
                        waiting.Add(arrives, beyond);
                }
            }
        }

        return new WidestPaths(arrivals, settled.AsSpan(0, count), capacities);
    }

    /// <summary>What has come to a vertex: the level of the largest particle so far, and the vertex that it came through, -1 for none.</summary>
    private readonly record struct Arrival(int Level, int Via);

    /// <summary>A queue of vertices for every level, first in first out, all chained through one array.</summary>
    private sealed class LevelQueues
    {
        private const int End = -1;
        private readonly int[] head;
        private readonly int[] tail;
        private readonly List<(int Vertex, int Next)> entries = [];

        public LevelQueues(int levels)
        {
            head = new int[levels];
            tail = new int[levels];
            Array.Fill(head, End);
        }

        public void Add(int level, int vertex)
        {
            if (head[level] == End)
                head[level] = entries.Count;
            else
                entries[tail[level]] = entries[tail[level]] with { Next = entries.Count };
            tail[level] = entries.Count;
            entries.Add((vertex, End));
        }

        public IEnumerable<int> At(int level)
        {
            for (int entry = head[level]; entry != End; entry = entries[entry].Next)
                yield return entries[entry].Vertex;
        }
    }
}
