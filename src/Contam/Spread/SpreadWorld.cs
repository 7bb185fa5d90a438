using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Spread;

/// <summary>Reach, hops and grades with one choice of which clean findings count.</summary>
internal sealed class SpreadWorld
{
    private readonly ReachedPart?[] reached;

    private SpreadWorld(ReachedPart?[] reached) => this.reached = reached;

    /// <summary>Every part that is reached, in the order of the family.</summary>
    public ImmutableArray<ReachedPart> Parts => [.. reached.OfType<ReachedPart>()];

    public static SpreadWorld Of(SpreadGraph graph, IReadOnlySet<int> acceptedClean)
    {
        Capacities capacities = graph.CapacitiesWith(acceptedClean);
        WidestPaths widest = WidestPaths.Settle(graph.Open, capacities);
        bool[] isFull = FullSizeArrival.Mark(graph.Open, capacities);
        bool[]? isOpenToDebris = acceptedClean.Count == 0 ? null : Reachable.From(graph.Open, graph.Sources, acceptedClean.Contains);
        var reached = new ReachedPart?[graph.Open.VertexCount];
        for (int vertex = 0; vertex < reached.Length; vertex++)
        {
            if (!widest.Reaches(vertex))
                continue;
            bool isCleared = acceptedClean.Contains(vertex) || isOpenToDebris is not null && !isOpenToDebris[vertex];
            reached[vertex] = new ReachedPart(
                IdOf(vertex),
                isCleared ? Grade.Cleared : isFull[vertex] ? Grade.Exposed : Grade.Guarded,
                ParticleSize.FromMicrometres(widest.ReachAt(vertex)),
                IdOf(widest.Source[vertex]),
                widest.Via[vertex] < 0 ? null : IdOf(widest.Via[vertex]));
        }

        return new SpreadWorld(reached);

        PartId IdOf(int vertex) => graph.Family.Parts[vertex].Id;
    }

    /// <summary>How the part at this place is reached, or <c>null</c>.</summary>
    public ReachedPart? At(int vertex) => reached[vertex];
}
