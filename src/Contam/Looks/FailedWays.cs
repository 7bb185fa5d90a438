using Contam.Graphs;
using Contam.Spread;

namespace Contam.Looks;

/// <summary>
/// The ways of one debris from the failed parts alone, by which a find is explained: a place where debris was found passes what its rating says.
/// </summary>
internal sealed class FailedWays
{
    private readonly PackedGraph joints;
    private readonly Capacities capacities;
    private readonly WidestPaths widest;

    private FailedWays(SpreadGraph graph)
    {
        joints = graph.Open;
        capacities = graph.CapacitiesWith(new HashSet<int>());
        widest = WidestPaths.Settle(joints, capacities);
    }

    /// <summary>Whether any part failed that sheds this debris.</summary>
    public bool AreNone => capacities.Sources.IsEmpty;

    /// <summary>Whether all failed parts shed the same size.</summary>
    public bool ShedOneSize => capacities.OnlyShedLevel is not null;

    public static FailedWays Of(SpreadQuestion question) => new(SpreadGraph.Of(question with { Findings = [] }));

    /// <summary>Whether a way leads to this place from a failed part.</summary>
    public bool LeadTo(int vertex) => widest.Reaches(vertex);

    /// <summary>The level of the widest way to a place to which one leads.</summary>
    public int WidestTo(int vertex) => widest.LevelAt(vertex);

    /// <summary>Where particles of this level's size come from a failed part, past no place that stops them; such a place is marked itself. Cost: linear.</summary>
    public bool[] Reach(int level, Func<int, bool> stops)
    {
        var isMarked = new bool[joints.VertexCount];
        var queue = new Queue<int>();
        foreach ((int vertex, int shedLevel) in capacities.Sources)
        {
            if (shedLevel <= level)
                Enter(vertex);
        }

        while (queue.TryDequeue(out int vertex))
        {
            if (stops(vertex) || capacities.VertexLevel[vertex] > level)
                continue;
            for (int place = joints.First[vertex]; place < joints.First[vertex + 1]; place++)
            {
                if (capacities.PlaceLevel[place] <= level)
                    Enter(joints.Target[place]);
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
