using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Why;

/// <summary>
/// Explains one part of a spread: hop by hop where it is reached, and what keeps it clear where it is not.
/// Cost: the spread once, the dominators once, and a search for each way in.
/// </summary>
public static class Explaining
{
    /// <summary>Explains this part.</summary>
    /// <exception cref="KeyNotFoundException">The part, a failed part or a finding is not of the family.</exception>
    public static Explanation Of(SpreadQuestion question, PartId part, ShopStandard standard)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(standard);
        Part asked = question.Family[part];
        SpreadGraph graph = SpreadGraph.Of(question);
        DebrisSpread spread = Spreading.Of(question, graph);
        return spread.Find(part) is { } reached
            ? Reached(question, standard, asked, spread, graph, reached)
            : new Explanation(part, question.Debris) { NotReached = KeptClear(question, spread, graph, part), Contradictions = spread.Contradictions };
    }

    private static Explanation Reached(SpreadQuestion question, ShopStandard standard, Part part, DebrisSpread spread, SpreadGraph graph, ReachedPart reached)
    {
        Family family = question.Family;
        int vertex = family.IndexOf(part.Id);
        var sources = graph.Sources.ToHashSet();
        bool isSource = sources.Contains(vertex);
        VertexCut cut = isSource ? new VertexCut([], IsDirect: false) : VertexCut.Smallest(graph.Open, sources, vertex);
        // Where one part between would not do, all paths share nothing but where they begin, if that is one part.
        bool isSharedNowhereBetween = !isSource && (cut.IsDirect || cut.Vertices.Length > 1);
        int dominator = isSharedNowhereBetween && sources.Count == 1 ? sources.Single() : Dominators.Immediate(graph.Open, [.. graph.Sources])[vertex];
        ImmutableArray<PartId> path = spread.PathTo(part.Id);
        PartTreatment? treated = Treating.DecideFor(part, [spread], question.Failed.ToHashSet(), new RuleBook(standard));
        return new Explanation(part.Id, question.Debris)
        {
            Grade = reached.Grade,
            Reach = reached.Reach,
            Shed = ShedBy(question, spread, reached),
            Hops = HopsOf(question, spread, path),
            Barriers = BarriersOn(question, spread, path),
            Contradictions = spread.Contradictions,
            ClearedBy = reached.Grade == Grade.Cleared ? ClearedBy(spread, graph, vertex) : [],
            LastSinglePart = dominator < 0 ? null : family.Parts[dominator].Id,
            Cut = [.. cut.Vertices.Select(one => family.Parts[one].Id)],
            IsJoinedToSource = cut.IsDirect,
            Treatments = treated?.Treatments ?? [],
            Rule = treated?.Rule,
        };
    }

    private static ParticleSize ShedBy(SpreadQuestion question, DebrisSpread spread, ReachedPart reached)
    {
        PartFailure[] failures = [.. question.Failures.Where(failure => failure.Part == reached.From && failure.Sheds(question.Debris))];
        ParticleSize shed = failures.Length == 0 ? ParticleSize.Unlimited : failures.Max(failure => failure.SizeOf(question.Family[failure.Part], question.Debris));
        bool wasFound = spread.Findings.Any(judged => judged.Finding.Found && judged.Finding.Part == reached.From);
        return wasFound && reached.Reach > shed ? ParticleSize.Unlimited : shed;
    }

    private static ImmutableArray<Hop> HopsOf(SpreadQuestion question, DebrisSpread spread, ImmutableArray<PartId> path)
    {
        var failed = question.Failed.ToHashSet();
        var hops = ImmutableArray.CreateBuilder<Hop>();
        for (int i = 1; i < path.Length; i++)
        {
            Joint joint = question.Family.Joints
                .Where(one => one.From == path[i - 1] && one.To == path[i] && SpreadGraph.IsOpen(question.Family, one, failed))
                .MaxBy(one => SpreadGraph.LetsOn(one, question.Debris))!;
            ParticleSize letsOn = SpreadGraph.LetsOn(joint, question.Debris);
            if (!IsSource(spread, failed, joint.From))
                letsOn = ParticleSize.Min(letsOn, SpreadGraph.LetsOn(question.Family[joint.From], question.Debris));
            hops.Add(new Hop(joint.From, joint.To, joint.Circuit, joint.When & question.Family.States, letsOn, joint.Place));
        }

        return hops.ToImmutable();
    }

    private static bool IsSource(DebrisSpread spread, HashSet<PartId> failed, PartId part) =>
        failed.Contains(part) || spread.Findings.Any(judged => judged.Finding.Found && judged.Finding.Part == part);

    private static ImmutableArray<BarrierPassed> BarriersOn(SpreadQuestion question, DebrisSpread spread, ImmutableArray<PartId> path)
    {
        var failed = question.Failed.ToHashSet();
        var barriers = ImmutableArray.CreateBuilder<BarrierPassed>();
        foreach (Part part in path.Length == 0 ? [] : path.SkipLast(1).Select(id => question.Family[id]))
        {
            ParticleSize? holds = part.HoldOf(question.Debris)?.Above;
            ParticleSize? passes = question.Debris is { HasSize: true, IsHard: true } ? part.Passage : null;
            if (holds is null && passes is null)
                continue;
            ParticleSize said = ParticleSize.Min(holds ?? ParticleSize.Unlimited, passes ?? ParticleSize.Unlimited);
            (bool isReliedOn, string because) = Judge(part);
            barriers.Add(new BarrierPassed(part.Id, said, isReliedOn, because));
        }

        return barriers.ToImmutable();

        (bool IsReliedOn, string Because) Judge(Part part)
        {
            if (failed.Contains(part.Id))
                return (false, "it is the failed part, and a failed part holds nothing");
            if (IsSource(spread, failed, part.Id))
                return (false, $"{question.Debris.Name} was found there, so it holds nothing");
            if (part.HoldOf(question.Debris) is null)
                return (true, "nothing wider and hard gets through it");
            if (part.HasBypass)
                return (part.Passage is not null && question.Debris.IsHard, "it opens past itself when it is loaded");
            return part.HasAbsoluteRating ? (true, "its rating is absolute and nothing goes round it") : (part.Passage is not null && question.Debris.IsHard, "its rating is nominal: some larger particles get through");
        }
    }

    /// <summary>The accepted clean findings on whose strength the part is cleared: its own, or those that stand on its ways without another behind them.</summary>
    private static ImmutableArray<Finding> ClearedBy(DebrisSpread spread, SpreadGraph graph, int vertex)
    {
        JudgedFinding[] accepted = [.. spread.Findings.Where(judged => judged.IsAccepted)];
        JudgedFinding[] own = [.. accepted.Where(judged => graph.Family.IndexOf(judged.Finding.Part) == vertex)];
        if (own.Length > 0)
            return [.. own.Select(judged => judged.Finding)];
        var places = accepted.Select(judged => graph.Family.IndexOf(judged.Finding.Part)).ToHashSet();
        bool[] isBeforeFinding = Reachable.From(graph.Open, graph.Sources, places.Contains);
        return [.. accepted.Where(judged => isBeforeFinding[graph.Family.IndexOf(judged.Finding.Part)] && LeadsTo(judged)).Select(judged => judged.Finding)];

        bool LeadsTo(JudgedFinding judged) => Reachable.From(graph.Open, [graph.Family.IndexOf(judged.Finding.Part)])[vertex];
    }

    private static NotReached KeptClear(SpreadQuestion question, DebrisSpread spread, SpreadGraph graph, PartId part)
    {
        Family family = question.Family;
        var failed = question.Failed.ToHashSet();
        ILookup<PartId, PartId> into = family.Joints.Where(joint => SpreadGraph.IsOpen(family, joint, failed)).ToLookup(joint => joint.To, joint => joint.From);
        var seen = new HashSet<PartId> { part };
        var nearestFirst = new List<PartId> { part };
        for (int next = 0; next < nearestFirst.Count; next++)
        {
            foreach (PartId from in into[nearestFirst[next]])
            {
                if (seen.Add(from))
                    nearestFirst.Add(from);
            }
        }

        ImmutableArray<Joint> closed = [.. family.Joints.Where(joint =>
            !SpreadGraph.IsOpen(family, joint, failed) && seen.Contains(joint.To) && spread.Find(joint.From) is not null)];
        return new NotReached([.. nearestFirst.Skip(1)], closed);
    }
}
