using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;

namespace Contam.Drills;

/// <summary>
/// The fewest open joints from the failed parts that shed debris to every part, by breadth-first search; of ways as short the one over the joint that stands first.
/// The same for every debris, since a joint is open or shut for all of it. Linear.
/// </summary>
internal sealed class ShortestWays
{
    private readonly Family family;
    private readonly int[] hops;
    private readonly Joint?[] last;

    private ShortestWays(Family family, int[] hops, Joint?[] last)
    {
        this.family = family;
        this.hops = hops;
        this.last = last;
    }

    /// <summary>The ways from the failed parts.</summary>
    /// <param name="request">The failures.</param>
    /// <param name="debris">The debris whose sources the ways begin at; <c>null</c> for all that are asked about.</param>
    /// <param name="isShut">Whether nothing gets into a part.</param>
    public static ShortestWays From(DrillRequest request, Debris? debris = null, Func<PartId, bool>? isShut = null)
    {
        Family family = request.Family;
        var failed = request.Failed.ToHashSet();
        HashSet<PartId> sources = [.. request.SourcesOf(debris)];
        PackedGraph open = SpreadGraph.Pack(family, joint => SpreadGraph.IsOpen(family, joint, failed));
        int[] hops = [.. family.Parts.Select(part => sources.Contains(part.Id) ? 0 : -1)];
        var last = new Joint?[hops.Length];
        var queue = new Queue<int>(Enumerable.Range(0, hops.Length).Where(vertex => hops[vertex] == 0));
        while (queue.TryDequeue(out int vertex))
        {
            for (int place = open.First[vertex]; place < open.First[vertex + 1]; place++)
            {
                int next = open.Target[place];
                if (hops[next] >= 0 || isShut?.Invoke(family.Parts[next].Id) == true)
                    continue;
                hops[next] = hops[vertex] + 1;
                last[next] = family.Joints[open.Joint[place]];
                queue.Enqueue(next);
            }
        }

        return new ShortestWays(family, hops, last);
    }

    /// <summary>Over how many joints; <c>null</c> where no open way leads there.</summary>
    public int? HopsTo(PartId part) => hops[family.IndexOf(part)] is >= 0 and var count ? count : null;

    /// <summary>From a failed part that shed to this one, both named; empty where no open way leads there.</summary>
    public ImmutableArray<PartId> PathTo(PartId part)
    {
        if (HopsTo(part) is null)
            return [];
        var path = new List<PartId> { part };
        while (last[family.IndexOf(path[^1])] is { } joint)
            path.Add(joint.From);
        path.Reverse();
        return [.. path];
    }

    /// <summary>Every part but the sources that is reached, hop by hop, within a hop in the order of the family.</summary>
    public ImmutableArray<DrillHop> HopByHop() =>
    [
        .. family.Parts.Where((_, vertex) => hops[vertex] > 0)
            .Select(part => (part.Id, Hop: hops[family.IndexOf(part.Id)], Joint: last[family.IndexOf(part.Id)]!))
            .OrderBy(one => one.Hop)
            .Select(one => new DrillHop(one.Hop, one.Id, one.Joint.From, one.Joint.Circuit)),
    ];
}
