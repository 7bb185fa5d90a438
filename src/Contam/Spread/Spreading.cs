using System.Collections.Immutable;

namespace Contam.Spread;

/// <summary>
/// How far one debris has gone.
/// <para>
/// A part is listed when it is a source (a failed part, or one where this debris was found) or has a path over open joints from one. It is
/// <em>exposed</em> when some source's full size arrives, <em>cleared</em> when an accepted clean finding was made at it or on every path to it, else
/// <em>guarded</em>. A part that clean findings do not spare (<see cref="Sparing"/>) is graded as if nobody had found anything clean.
/// </para>
/// <para>
/// The answer errs on the side of too many parts: joints are taken to pass in every engine state that the engine has, at any time, in any amount.
/// </para>
/// <para>Cost: linear in parts and joints, plus the parts behind closed conditional joints once for every part that would open some.</para>
/// </summary>
public static class Spreading
{
    /// <summary>Answers the question.</summary>
    /// <exception cref="KeyNotFoundException">A failed part or a finding names a part that the family does not have.</exception>
    public static DebrisSpread Of(SpreadQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Of(question, SpreadGraph.Of(question));
    }

    /// <summary>Answers the question on the graph that was made of it.</summary>
    internal static DebrisSpread Of(SpreadQuestion question, SpreadGraph graph)
    {
        var contradictions = Contradictions.Of(question, graph);
        ImmutableArray<JudgedFinding> findings = CleanFindingJudge.Judge(question, contradictions);
        var acceptedClean = findings.Where(judged => judged.IsAccepted).Select(judged => question.Family.IndexOf(judged.Finding.Part)).ToHashSet();
        SpreadWorld plain = SpreadWorld.Of(graph, new HashSet<int>());
        ReachedPart?[] ignoring = plain.Parts();
        if (acceptedClean.Count == 0)
        {
            return new DebrisSpread(question.Family, question.Debris, ignoring, findings)
            {
                Conditional = ConditionalParts.Of(question, graph, plain),
                Contradictions = contradictions?.All ?? [],
            };
        }

        ReachedPart?[] counting = SpreadWorld.Of(graph, acceptedClean).Parts();
        bool[] spared = Sparing.By(graph, acceptedClean);
        return new DebrisSpread(question.Family, question.Debris, [.. spared.Select((isSpared, vertex) => (isSpared ? counting : ignoring)[vertex])], findings)
        {
            Conditional = ConditionalParts.Of(question, graph, plain),
            Contradictions = contradictions?.All ?? [],
            Worlds = (counting, ignoring),
        };
    }
}
