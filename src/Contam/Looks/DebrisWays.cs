using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.Looks;

/// <summary>
/// The ways of one debris, before any deciding look: the open joints and what they pass, the sources, and the places that are on record as clean.
/// All of it is the spread's own, so that barriers, passages and ratings mean what they mean there.
/// </summary>
internal sealed class DebrisWays
{
    private readonly Capacities capacities;
    private readonly bool[] isSource;

    private DebrisWays(Debris debris, SpreadGraph graph, ImmutableArray<int> failed, ImmutableArray<int> found, ImmutableArray<int> onRecord)
    {
        Debris = debris;
        Joints = graph.Open;
        Reversed = graph.Open.Reversed();
        capacities = graph.CapacitiesWith(new HashSet<int>());
        Failed = failed;
        Found = found;
        OnRecord = onRecord;
        isSource = new bool[Joints.VertexCount];
        foreach ((int vertex, _) in Sources)
            isSource[vertex] = true;
        IsReached = Reachable.From(Joints, graph.Sources);
    }

    public Debris Debris { get; }

    public PackedGraph Joints { get; }

    /// <summary>The same joints against the flow.</summary>
    public PackedGraph Reversed { get; }

    /// <summary>The failed parts that shed this debris.</summary>
    public ImmutableArray<int> Failed { get; }

    /// <summary>Where this debris was found beforehand.</summary>
    public ImmutableArray<int> Found { get; }

    /// <summary>Where a clean finding is on record and counts.</summary>
    public ImmutableArray<int> OnRecord { get; }

    /// <summary>Every source with the level of the size that it sheds; what was found beforehand is of any size.</summary>
    public ImmutableArray<(int Vertex, int Level)> Sources => capacities.Sources;

    /// <summary>Where the debris gets to at all, were nothing clean.</summary>
    public bool[] IsReached { get; }

    /// <summary>At this level everything passes, for there is no way so narrow that it is none.</summary>
    public int AnySize => capacities.Levels.Count - 1;

    public static DebrisWays Of(LookQuestion question, Debris debris)
    {
        SpreadQuestion asked = question.SpreadOf(debris);
        var failed = asked.Failed.Select(asked.Family.IndexOf).Distinct().Order();
        var onRecord = CleanFindingJudge.Judge(asked).Where(judged => judged.IsAccepted).Select(judged => asked.Family.IndexOf(judged.Finding.Part)).Distinct().Order();
        var found = asked.Findings.Where(finding => finding.Found && finding.Debris == debris).Select(finding => asked.Family.IndexOf(finding.Part)).Distinct().Order();
        return new DebrisWays(debris, SpreadGraph.Of(asked), [.. failed], [.. found], [.. onRecord]);
    }

    public bool IsSource(int vertex) => isSource[vertex];

    /// <summary>Whether a part passes particles of this level's size.</summary>
    public bool Passes(int vertex, int level) => capacities.VertexLevel[vertex] <= level;

    /// <summary>Whether the joint at this place of <see cref="Joints"/> passes particles of this level's size.</summary>
    public bool PassesJoint(int place, int level) => capacities.PlaceLevel[place] <= level;

    /// <summary>The level at which just those things pass a particle that pass one of this size.</summary>
    public int LevelOf(ParticleSize size)
    {
        int level = 0;
        while (level < AnySize && capacities.Levels.SizeAt(level + 1) >= size.Micrometres)
            level++;
        return level;
    }

    /// <summary>The level of the widest way from a failed part to every place, where what was found holds nothing; -1 where there is none. Cost: linear for each level.</summary>
    public int[] WidestFromFailed(IReadOnlySet<int> found)
    {
        var widest = new int[Joints.VertexCount];
        Array.Fill(widest, -1);
        for (int level = 0; level <= AnySize; level++)
        {
            bool[] here = FromFailed(level, found, static _ => false);
            for (int vertex = 0; vertex < widest.Length; vertex++)
            {
                if (here[vertex] && widest[vertex] < 0)
                    widest[vertex] = level;
            }
        }

        return widest;
    }

    /// <summary>Where particles of this level's size come from a failed part that sheds them, past no place that stops them; such a place is marked itself.</summary>
    public bool[] FromFailed(int level, IReadOnlySet<int> found, Func<int, bool> stops)
    {
        var isFailed = Failed.ToHashSet();
        return Mark(level, Sources.Where(source => source.Level <= level && isFailed.Contains(source.Vertex)).Select(source => source.Vertex), found.Contains, stops);
    }

    /// <summary>Where particles of this level's size come to from these, over what passes them or holds nothing.</summary>
    public bool[] Mark(int level, IEnumerable<int> starts, Func<int, bool> holdsNothing, Func<int, bool> stops)
    {
        var isMarked = new bool[Joints.VertexCount];
        var queue = new Queue<int>();
        foreach (int start in starts)
            Enter(start);
        while (queue.TryDequeue(out int vertex))
        {
            if (stops(vertex) || (!Passes(vertex, level) && !holdsNothing(vertex)))
                continue;
            for (int place = Joints.First[vertex]; place < Joints.First[vertex + 1]; place++)
            {
                if (PassesJoint(place, level))
                    Enter(Joints.Target[place]);
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
