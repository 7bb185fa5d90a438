using Contam.Families;
using Contam.Graphs;

namespace Contam.Spread;

/// <summary>Reach, hops and grades with one choice of which clean findings count, on packed arrays.</summary>
internal sealed class SpreadWorld
{
    private readonly Family family;
    private readonly WidestPaths widest;
    private readonly int fullLevel;
    private readonly bool[]? isFull;
    private readonly IReadOnlySet<int> acceptedClean;
    private readonly bool[]? isOpenToDebris;

    private SpreadWorld(SpreadGraph graph, IReadOnlySet<int> acceptedClean)
    {
        family = graph.Family;
        this.acceptedClean = acceptedClean;
        Capacities capacities = graph.CapacitiesWith(acceptedClean);
        widest = WidestPaths.Settle(graph.Open, capacities);
        // Where all sources shed one size, full size is the widest that there is; else one source's reach does not tell whether another's full size came.
        if (capacities.OnlyShedLevel is { } level)
            fullLevel = level;
        else
            isFull = FullSizeArrival.Mark(graph.Open, capacities);
        isOpenToDebris = acceptedClean.Count == 0 ? null : Reachable.From(graph.Open, graph.Sources, acceptedClean.Contains);
    }

    public static SpreadWorld Of(SpreadGraph graph, IReadOnlySet<int> acceptedClean) => new(graph, acceptedClean);

    /// <summary>Whether the debris gets to this place at all.</summary>
    public bool Reaches(int vertex) => widest.Reaches(vertex);

    /// <summary>The grade of a place that the debris gets to.</summary>
    public Grade GradeAt(int vertex) =>
        isOpenToDebris is not null && (acceptedClean.Contains(vertex) || !isOpenToDebris[vertex]) ? Grade.Cleared
        : (isFull is null ? widest.LevelAt(vertex) == fullLevel : isFull[vertex]) ? Grade.Exposed
        : Grade.Guarded;

    /// <summary>How every part is reached, in the order of the family; <c>null</c> where none of the debris gets to.</summary>
    public ReachedPart?[] Parts()
    {
        var parts = new ReachedPart?[family.Parts.Length];
        for (int vertex = 0; vertex < parts.Length; vertex++)
            parts[vertex] = At(vertex);
        return parts;
    }

    private ReachedPart? At(int vertex) => !Reaches(vertex)
        ? null
        : new ReachedPart(
            IdOf(vertex),
            GradeAt(vertex),
            ParticleSize.FromMicrometres(widest.ReachAt(vertex)),
            IdOf(widest.SourceAt(vertex)),
            widest.ViaAt(vertex) < 0 ? null : IdOf(widest.ViaAt(vertex)));

    private PartId IdOf(int vertex) => family.Parts[vertex].Id;
}
