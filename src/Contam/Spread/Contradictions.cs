using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;

namespace Contam.Spread;

/// <summary>What a find says of where its debris comes from.</summary>
public enum FindOrigin
{
    /// <summary>Nothing beyond the failure: a failed part can have sent it, or no part is named as failed.</summary>
    Failure,

    /// <summary>It is larger than anything that a failed part can send there: a further source is to be looked for.</summary>
    FurtherSource,

    /// <summary>No walk leads there from a failed part: it has a source of its own.</summary>
    OwnSource,
}

/// <summary>A find that says more than that the failed part shed.</summary>
/// <param name="Find">The find.</param>
/// <param name="Origin">What it says of a source.</param>
/// <param name="Voids">
/// The clean places that it disproves, in the order of the family. A place that several finds disprove stands with the one that is the fewest joints away,
/// then with the one given first.
/// </param>
public sealed record Contradiction(Finding Find, FindOrigin Origin, ImmutableArray<PartId> Voids);

/// <summary>
/// Which clean looks the finds of a debris disprove.
/// <para>
/// Definition. A <em>clean place</em> is a part with a clean finding of the debris that has not failed and at which a look shows the debris well. A find is
/// <em>explained</em> when some walk from a failed part past no clean place carries its size, or as much as the widest walk from a failed part carries if
/// clean places let everything on; where the size is not said, only the second counts. Other finds explain nothing: a walk starts at a failed part, and a
/// part where debris was found holds what its rating says. Where a find is not explained and a walk from a failed part leads to it, every clean place on
/// any such walk is <em>void</em>. So one find more never takes a void place back.
/// </para>
/// <para>
/// Whether the shop's standard accepts clean findings does not matter here: a void place is a fact about the engine.
/// Method: widest paths from the failed parts twice, with and without the joints out of clean places, and one search against the flow. Cost: linear.
/// </para>
/// </summary>
internal sealed class Contradictions
{
    private const int Nobody = -1;

    private readonly SpreadQuestion question;
    private readonly SpreadGraph graph;
    private readonly Finding[] finds;
    private readonly HashSet<int> cleanPlaces;
    private readonly WidestPaths free;
    private readonly WidestPaths pastNoClean;
    private readonly int[] disprovedBy;

    private Contradictions(SpreadQuestion question, SpreadGraph graph, Finding[] finds)
    {
        this.question = question;
        this.graph = graph;
        this.finds = finds;
        cleanPlaces = CleanPlacesOf(question);
        Capacities capacities = graph.CapacitiesOfFailures;
        free = WidestPaths.Settle(graph.Open, capacities);
        pastNoClean = cleanPlaces.Count == 0 ? free : Stopped(capacities);
        disprovedBy = NearestUnexplained();
        All = [.. AllOf()];
    }

    /// <summary>Every find that disproves a clean place or speaks for a source besides the failed parts, in the order given.</summary>
    public ImmutableArray<Contradiction> All { get; }

    /// <summary>The contradictions of a question; <c>null</c> where no part is named as failed or none of this debris was found, so that nothing is void.</summary>
    public static Contradictions? Of(SpreadQuestion question, SpreadGraph graph)
    {
        Finding[] finds = [.. question.Findings.Where(finding => finding.Found && finding.Debris == question.Debris)];
        return finds.Length == 0 || question.Failures.IsDefaultOrEmpty ? null : new Contradictions(question, graph, finds);
    }

    /// <summary>The find that disproves a clean place; <c>null</c> for a place that is not void.</summary>
    public Finding? DisproofOf(int vertex) =>
        disprovedBy[vertex] != Nobody && cleanPlaces.Contains(vertex) && free.Reaches(vertex) ? finds[disprovedBy[vertex]] : null;

    /// <summary>
    /// Where one more clean look, or several at once, could be void or could make other looks void: every part on a walk from a failed part to a find that is
    /// not explained, and every part on the one widest walk by which each other find is taken to be explained. A clean look anywhere else leaves that walk
    /// open. Some of the places may do no harm, where another walk is as wide. Cost: linear.
    /// </summary>
    public bool[] DoubtfulPlaces()
    {
        var isDoubtful = new bool[disprovedBy.Length];
        for (int vertex = 0; vertex < isDoubtful.Length; vertex++)
            isDoubtful[vertex] = disprovedBy[vertex] != Nobody && free.Reaches(vertex);
        var isOnWitness = new bool[disprovedBy.Length];
        foreach (Finding find in finds.Where(IsExplained))
        {
            for (int vertex = VertexOf(find); vertex >= 0 && !isOnWitness[vertex]; vertex = pastNoClean.ViaAt(vertex))
                isOnWitness[vertex] = isDoubtful[vertex] = true;
        }

        return isDoubtful;
    }

    private static HashSet<int> CleanPlacesOf(SpreadQuestion question)
    {
        var failed = question.Failed.ToHashSet();
        return
        [
            .. question.Findings
                .Where(finding => !finding.Found && finding.Debris == question.Debris && !failed.Contains(finding.Part))
                .Select(finding => finding.Part)
                .Where(part => question.Family[part].Inspect?.Shows == Shows.Good)
                .Select(question.Family.IndexOf),
        ];
    }

    private WidestPaths Stopped(Capacities capacities)
    {
        var failed = question.Failed.ToHashSet();
        PackedGraph open = SpreadGraph.Pack(question.Family, joint => SpreadGraph.IsOpen(question.Family, joint, failed) && !cleanPlaces.Contains(question.Family.JointFrom[joint.Id]));
        return WidestPaths.Settle(open, graph.CapacitiesOfFailuresOn(open));
    }

    private bool IsExplained(Finding find)
    {
        int vertex = VertexOf(find);
        return pastNoClean.Reaches(vertex)
            && (pastNoClean.LevelAt(vertex) == free.LevelAt(vertex) || SizeOf(find) is { } size && size <= ParticleSize.FromMicrometres(pastNoClean.ReachAt(vertex)));
    }

    private FindOrigin OriginOf(Finding find) =>
        !free.Reaches(VertexOf(find)) ? FindOrigin.OwnSource
        : SizeOf(find) is { } size && size > ParticleSize.FromMicrometres(free.ReachAt(VertexOf(find))) ? FindOrigin.FurtherSource
        : FindOrigin.Failure;

    // Of a debris without sizes, and of an unlimited size, the size says nothing.
    private ParticleSize? SizeOf(Finding find) => question.Debris.HasSize && find.Size is { IsUnlimited: false } size ? size : null;

    private int VertexOf(Finding find) => question.Family.IndexOf(find.Part);

    /// <summary>For each vertex the find that is not explained and that the fewest joints lead to from there, or <see cref="Nobody"/>.</summary>
    private int[] NearestUnexplained()
    {
        var nearest = new int[question.Family.Parts.Length];
        Array.Fill(nearest, Nobody);
        var queue = new Queue<int>();
        for (int find = 0; find < finds.Length; find++)
        {
            int vertex = VertexOf(finds[find]);
            if (nearest[vertex] != Nobody || !free.Reaches(vertex) || IsExplained(finds[find]))
                continue;
            nearest[vertex] = find;
            queue.Enqueue(vertex);
        }

        if (queue.Count == 0)
            return nearest;
        PackedGraph against = graph.Open.Reversed();
        while (queue.TryDequeue(out int vertex))
        {
            for (int place = against.First[vertex]; place < against.First[vertex + 1]; place++)
            {
                int before = against.Target[place];
                if (nearest[before] != Nobody)
                    continue;
                nearest[before] = nearest[vertex];
                queue.Enqueue(before);
            }
        }

        return nearest;
    }

    private IEnumerable<Contradiction> AllOf()
    {
        ILookup<int, int> voids = cleanPlaces.Where(vertex => DisproofOf(vertex) is not null).Order().ToLookup(vertex => disprovedBy[vertex]);
        for (int find = 0; find < finds.Length; find++)
        {
            FindOrigin origin = OriginOf(finds[find]);
            if (origin != FindOrigin.Failure || voids.Contains(find))
                yield return new Contradiction(finds[find], origin, [.. voids[find].Select(vertex => question.Family.Parts[vertex].Id)]);
        }
    }
}
