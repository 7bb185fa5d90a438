using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>A place that all of one debris must pass on its way to some parts, with those parts.</summary>
/// <param name="Place">The place; a look there shows debris well.</param>
/// <param name="Clears">The parts that would be cleared if it were found clean, in the order of the family.</param>
internal sealed record CleanPlace(Part Place, ImmutableArray<Part> Clears);

/// <summary>
/// Places to look that, found clean, let what lies beyond them be left alone: for each part the first place from the failure on that every way to it passes
/// (its dominators, nearest the failure first) where a look shows debris well. Not a guess: a clean finding clears a part just where it is on every way to it.
/// Critical parts are cleared by nothing. A place past which debris went to where it was found is none: a clean look there would contradict the find.
/// </summary>
/// <param name="Debris">The debris.</param>
/// <param name="Places">The places, in the order of the family.</param>
internal sealed record CleanPlaces(Debris Debris, ImmutableArray<CleanPlace> Places)
{
    /// <summary>For each debris for which there are such places; none where the standard never lets a clean finding clear.</summary>
    public static IEnumerable<CleanPlaces> For(ProcedureRequest request) => request.Standard.CleanFindings == CleanFindings.Never
        ? []
        : request.Spreads.Select(spread => Of(request, spread)).Where(places => places.Places.Length > 0);

    private static CleanPlaces Of(ProcedureRequest request, DebrisSpread spread)
    {
        Family family = request.Family;
        var question = new SpreadQuestion(family, request.Failures, spread.Debris) { Findings = [.. spread.Findings.Select(judged => judged.Finding)] };
        SpreadGraph graph = SpreadGraph.Of(question);
        bool[]? isDoubtful = Contradictions.Of(question, graph)?.DoubtfulPlaces();
        int[] sources = [.. graph.Sources];
        var isSource = sources.ToHashSet();
        int[] dominator = Dominators.Immediate(graph.Open, sources);
        var first = new int?[family.Parts.Length];
        var clears = new SortedDictionary<int, List<Part>>();
        foreach (ReachedPart reached in spread.Parts.Where(reached => reached.Grade != Grade.Cleared))
        {
            int vertex = family.IndexOf(reached.Part);
            int place = dominator[vertex] < 0 ? -1 : FirstGoodPlace(dominator[vertex]);
            if (place < 0 || family.Parts[vertex].IsCritical)
                continue;
            if (!clears.TryGetValue(place, out List<Part>? beyond))
                clears[place] = beyond = [];
            beyond.Add(family.Parts[vertex]);
        }

        return new CleanPlaces(spread.Debris, [.. clears.Select(pair => new CleanPlace(family.Parts[pair.Key], [.. pair.Value]))]);

        // Of the vertex and its dominators the one nearest the failure at which a look shows debris well; -1 for none. Each is worked out once.
        int FirstGoodPlace(int vertex)
        {
            var chain = new Stack<int>();
            int at = vertex;
            while (at >= 0 && first[at] is null)
            {
                chain.Push(at);
                at = dominator[at];
            }

            int known = at < 0 ? -1 : first[at]!.Value;
            while (chain.TryPop(out int next))
            {
                if (known < 0 && !isSource.Contains(next) && isDoubtful?[next] != true && family.Parts[next].Inspect is { Shows: Shows.Good })
                    known = next;
                first[next] = known;
            }

            return known;
        }
    }
}
