using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
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

    private DebrisWays(SpreadQuestion question, SpreadGraph graph)
    {
        Debris = question.Debris;
        Joints = graph.Open;
        Reversed = graph.Open.Reversed();
        capacities = graph.CapacitiesWith(new HashSet<int>());
        FromFailed = FailedWays.Of(question);
        Found = Places(question.Findings.Where(finding => finding.Found));
        SaidClean = Places(question.Findings.Where(finding => !finding.Found && !question.Failed.Contains(finding.Part) && question.Family[finding.Part].Inspect?.Shows == Shows.Good));
        OnRecord = Places(CleanFindingJudge.Judge(question, Contradictions.Of(question, graph)).Where(judged => judged.IsAccepted).Select(judged => judged.Finding));
        isSource = new bool[Joints.VertexCount];
        foreach ((int vertex, _) in Sources)
            isSource[vertex] = true;
        IsReached = Reachable.From(Joints, graph.Sources);

        ImmutableArray<int> Places(IEnumerable<Finding> findings) =>
            [.. findings.Where(finding => finding.Debris == question.Debris).Select(finding => question.Family.IndexOf(finding.Part)).Distinct().Order()];
    }

    public Debris Debris { get; }

    public PackedGraph Joints { get; }

    /// <summary>The same joints against the flow.</summary>
    public PackedGraph Reversed { get; }

    /// <summary>Where this debris was found beforehand.</summary>
    public ImmutableArray<int> Found { get; }

    /// <summary>Where a clean finding is on record that could count, were no find to speak against it.</summary>
    public ImmutableArray<int> SaidClean { get; }

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
        return new DebrisWays(asked, SpreadGraph.Of(asked));
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

    /// <summary>What every place gets from the failed parts.</summary>
    public FailedWays FromFailed { get; }

    /// <summary>Where particles of this level's size come to from these, over what passes them or holds nothing.</summary>
    public bool[] Mark(int level, IEnumerable<int> starts, Func<int, bool> holdsNothing)
    {
        var isMarked = new bool[Joints.VertexCount];
        var queue = new Queue<int>();
        foreach (int start in starts)
            Enter(start);
        while (queue.TryDequeue(out int vertex))
        {
            if (!Passes(vertex, level) && !holdsNothing(vertex))
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
