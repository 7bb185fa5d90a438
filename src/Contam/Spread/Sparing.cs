using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Spread;

/// <summary>
/// Which parts clean findings may spare, by what clears them (<see cref="Part.ClearedBy"/>). One look: as soon as a clean place lies on every way to the part.
/// Two looks: where every way to it passes two clean places at least, its own look counted as one; until then it is graded as if nobody had found anything
/// clean. Nothing: never.
/// </summary>
internal static class Sparing
{
    /// <summary>For every part whether the clean findings count for it, in the order of the family. Cost: linear.</summary>
    public static bool[] By(SpreadGraph graph, IReadOnlySet<int> acceptedClean)
    {
        ImmutableArray<Part> parts = graph.Family.Parts;
        int[]? fewest = parts.Any(part => part.ClearedBy == ClearedBy.TwoLooks) ? FewestCleanPlaces.On(graph.Open, graph.Sources, acceptedClean.Contains) : null;
        return
        [
            .. parts.Select((part, vertex) => part.ClearedBy switch
            {
                ClearedBy.OneLook => true,
                ClearedBy.TwoLooks => fewest![vertex] >= 2,
                _ => false,
            }),
        ];
    }
}
