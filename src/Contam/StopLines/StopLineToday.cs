using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.StopLines;

/// <summary>
/// What holds before any look of the line: how far each debris gets with the findings so far, where looks would count, and what is treated.
/// A part is <em>open</em> to a debris when it gets there without passing a place that is on record as clean.
/// </summary>
internal sealed class StopLineToday
{
    private readonly ImmutableArray<OneDebris> each;
    private readonly bool[] isOpen;
    private readonly bool[] isLookDoubtful;
    private readonly bool[] isFailed;

    private StopLineToday(Family family, PackedGraph joints, ImmutableArray<OneDebris> each, bool[] canLook, bool[] isDoubtful, ImmutableArray<PartTreatment> treatments, ImmutableArray<PartId> failed)
    {
        Family = family;
        Joints = joints;
        this.each = each;
        CanLook = [.. canLook.Zip(isDoubtful, (can, doubtful) => can && !doubtful)];
        isLookDoubtful = [.. canLook.Zip(isDoubtful, (can, doubtful) => can && doubtful)];
        Treatments = treatments;
        var failedParts = failed.ToHashSet();
        isFailed = [.. family.Parts.Select(part => failedParts.Contains(part.Id))];
        isOpen = new bool[family.Parts.Length];
        IsSource = new bool[family.Parts.Length];
        foreach (OneDebris one in each)
        {
            for (int vertex = 0; vertex < isOpen.Length; vertex++)
                isOpen[vertex] |= one.IsOpen[vertex];
            foreach (int source in one.Sources)
                IsSource[source] = true;
        }
    }

    public Family Family { get; }

    /// <summary>The open joints, which are the same for every debris.</summary>
    public PackedGraph Joints { get; }

    /// <summary>Whether a part failed and shed some debris that is asked about, or is one where some of it was found.</summary>
    public bool[] IsSource { get; }

    /// <summary>Whether a part is treated whatever a look shows: a source, a failed part whatever it shed, a critical one.</summary>
    public bool IsTreatedAnyway(int vertex) => IsSource[vertex] || isFailed[vertex] || Family.Parts[vertex].IsCritical;

    /// <summary>Whether a clean finding of every debris would be accepted there, by the judge that the spread goes by, whatever is found clean besides.</summary>
    public bool[] CanLook { get; }

    /// <summary>
    /// Open places where a clean finding would count if it were not for a find: debris went past there to where it was found, or is taken to have done so
    /// (see <see cref="Spread.Contradictions.DoubtfulPlaces"/>). Rising.
    /// </summary>
    public IEnumerable<int> DoubtfulPlaces => Enumerable.Range(0, isOpen.Length).Where(vertex => isLookDoubtful[vertex] && isOpen[vertex] && !IsSource[vertex]);

    /// <summary>The finds on record that disprove a clean look or speak for a further source.</summary>
    public required ImmutableArray<Contradiction> Contradictions { get; init; }

    /// <summary>What every listed part gets today.</summary>
    public ImmutableArray<PartTreatment> Treatments { get; }

    public static StopLineToday Of(StopLineQuestion question)
    {
        Family family = question.Family;
        ImmutableArray<SpreadQuestion> asked = [.. question.Debris.Distinct().Select(debris => new SpreadQuestion(family, question.Failures, debris)
        {
            Findings = question.Findings,
            AcceptsCleanFindings = question.Standard.CleanFindings != CleanFindings.Never,
        })];
        ImmutableArray<SpreadGraph> graphs = [.. asked.Select(SpreadGraph.Of)];
        ImmutableArray<DebrisSpread> spreads = [.. asked.Zip(graphs, Spreading.Of)];
        return new StopLineToday(
            family,
            graphs[0].Open,
            [.. graphs.Zip(spreads, OneDebris.Of)],
            WhereLooksCount(asked),
            WhereFindsSpeakAgainst(asked, graphs),
            Treating.Decide(family, spreads, question.Failed, new RuleBook(question.Standard)),
            question.Failed)
        {
            Contradictions = [.. spreads.SelectMany(spread => spread.Contradictions)],
        };
    }

    /// <summary>Whether some debris gets to this part.</summary>
    public bool IsOpen(int vertex) => isOpen[vertex];

    /// <summary>Whether the same debris gets to both ends of a joint.</summary>
    public bool Carries(int from, int to)
    {
        foreach (OneDebris one in each)
        {
            if (one.IsOpen[from] && one.IsOpen[to])
                return true;
        }

        return false;
    }

    /// <summary>What is still open to some debris once these places, too, are on record as clean of all of it.</summary>
    public bool[] OpenPast(IReadOnlySet<int> looks)
    {
        var open = new bool[isOpen.Length];
        foreach (OneDebris one in each)
        {
            bool[] marked = Reachable.From(Joints, one.Sources, vertex => looks.Contains(vertex) || one.Accepted.Contains(vertex));
            for (int vertex = 0; vertex < open.Length; vertex++)
                open[vertex] |= marked[vertex] && !looks.Contains(vertex) && !one.Accepted.Contains(vertex);
        }

        return open;
    }

    /// <summary>Whether a place that is on record as clean is so of every debris.</summary>
    public bool RecordIsTheSameForAll => each.All(one => one.Accepted.SetEquals(each[0].Accepted));

    /// <summary>The fewest joints to each part from a source; -1 for a part that is not open.</summary>
    public int[] Distances()
    {
        var distance = new int[isOpen.Length];
        Array.Fill(distance, -1);
        var queue = new Queue<int>();
        for (int vertex = 0; vertex < distance.Length; vertex++)
        {
            if (!IsSource[vertex])
                continue;
            distance[vertex] = 0;
            queue.Enqueue(vertex);
        }

        while (queue.TryDequeue(out int vertex))
        {
            for (int place = Joints.First[vertex]; place < Joints.First[vertex + 1]; place++)
            {
                int next = Joints.Target[place];
                if (distance[next] >= 0 || !Carries(vertex, next))
                    continue;
                distance[next] = distance[vertex] + 1;
                queue.Enqueue(next);
            }
        }

        return distance;
    }

    private static bool[] WhereLooksCount(ImmutableArray<SpreadQuestion> asked)
    {
        ImmutableArray<Part> parts = asked[0].Family.Parts;
        var counts = new bool[parts.Length];
        Array.Fill(counts, true);
        foreach (SpreadQuestion question in asked)
        {
            var tried = question with { Findings = [.. question.Findings.Where(finding => finding.Found), .. parts.Select(part => new Finding(part.Id, question.Debris, Found: false))] };
            foreach (JudgedFinding judged in CleanFindingJudge.Judge(tried, contradictions: null))
                counts[asked[0].Family.IndexOf(judged.Finding.Part)] &= judged.IsAccepted || judged.Finding.Found;
        }

        return counts;
    }

    private static bool[] WhereFindsSpeakAgainst(ImmutableArray<SpreadQuestion> asked, ImmutableArray<SpreadGraph> graphs)
    {
        var isDoubtful = new bool[asked[0].Family.Parts.Length];
        foreach ((SpreadQuestion question, SpreadGraph graph) in asked.Zip(graphs))
        {
            bool[]? here = Spread.Contradictions.Of(question, graph)?.DoubtfulPlaces();
            for (int vertex = 0; here is not null && vertex < here.Length; vertex++)
                isDoubtful[vertex] |= here[vertex];
        }

        return isDoubtful;
    }

    /// <summary>How far one debris gets: its sources, where a clean finding of it is accepted, and where it gets past those.</summary>
    private sealed record OneDebris(int[] Sources, HashSet<int> Accepted, bool[] IsOpen)
    {
        public static OneDebris Of(SpreadGraph graph, DebrisSpread spread)
        {
            var accepted = spread.Findings.Where(judged => judged.IsAccepted).Select(judged => graph.Family.IndexOf(judged.Finding.Part)).ToHashSet();
            int[] sources = [.. graph.Sources];
            bool[] marked = Reachable.From(graph.Open, sources, accepted.Contains);
            return new OneDebris(sources, accepted, [.. marked.Select((isMarked, vertex) => isMarked && !accepted.Contains(vertex))]);
        }
    }
}
