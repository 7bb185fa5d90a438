using Contam.Families;
using Contam.Properties.Spread;
using Contam.Support;
using Contam.Treatment;
using QuikGraph;
using QuikGraph.Algorithms;

namespace Contam.Properties.Generation;

/// <summary>What a generated case can have, by name, each with the question whether a case has it.</summary>
internal static class Features
{
    internal static IReadOnlyDictionary<string, Func<TestCase, bool>> All { get; } = new Dictionary<string, Func<TestCase, bool>>(StringComparer.Ordinal)
    {
        ["a loop"] = asked => Loops(asked.Family) > 0,
        ["two loops apart"] = asked => Loops(asked.Family) > 1,
        ["a diamond"] = asked => HasDiamond(asked.Family),
        ["an island"] = asked => Islands(asked.Family) > 1,
        ["a repeat"] = asked => asked.Family.Parts.Any(part => part.RepeatOf is not null),
        ["a both-ways joint"] = asked => Pairs(asked.Family).Any(pair => pair.There.From == pair.Back.To && pair.There.To == pair.Back.From && pair.There.From != pair.There.To),
        ["a self-loop"] = asked => asked.Family.Joints.Any(joint => joint.From == joint.To),
        ["parallel joints"] = asked => asked.Family.Joints.GroupBy(joint => (joint.From, joint.To)).Any(group => group.Count() > 1),
        ["an absolute barrier"] = asked => Any(asked, part => part is { HasAbsoluteRating: true, HasBypass: false, Holds.Length: > 0 }),
        ["a nominal barrier"] = asked => Any(asked, part => part is { HasAbsoluteRating: false, Holds.Length: > 0 }),
        ["an absolute barrier with bypass"] = asked => Any(asked, part => part is { HasAbsoluteRating: true, HasBypass: true, Holds.Length: > 0 }),
        ["a barrier that holds all"] = asked => Any(asked, part => part.HasAbsoluteRating && part.Holds.Any(hold => hold.Debris.HasSize && hold.Above == ParticleSize.Zero)),
        ["a barrier against debris without size"] = asked => Any(asked, part => part.HasAbsoluteRating && part.Holds.Any(hold => !hold.Debris.HasSize)),
        ["a passage of a part"] = asked => Any(asked, part => part.Passage is not null),
        ["a passage of a link"] = asked => asked.Family.Joints.Any(joint => joint.Passage is not null),
        ["several circuits"] = asked => asked.Family.Circuits.Length > 1,
        ["a part in two circuits"] = asked => asked.Family.Circuits.SelectMany(circuit => circuit.Parts).GroupBy(part => part).Any(group => group.Count() > 1),
        ["a conditional link"] = asked => asked.Family.Joints.Any(joint => joint.OnlyIfFailed is not null),
        ["an open conditional link"] = asked => asked.Family.Joints.Any(joint => joint.OnlyIfFailed is { } part && asked.Failed.Contains(part)),
        ["a link of some states"] = asked => asked.Family.Joints.Any(joint => joint.When != EngineStates.All && (joint.When & asked.Family.States) != EngineStates.None),
        ["a link of no state"] = asked => asked.Family.Joints.Any(joint => (joint.When & asked.Family.States) == EngineStates.None),
        ["no failed part"] = asked => asked.Failed.Length == 0,
        ["one failed part"] = asked => asked.Failed.Length == 1,
        ["several failed parts"] = asked => asked.Failed.Length > 1,
        ["a source of limited size"] = asked => asked.Failed.Any(part => asked.Asked.Any(debris => asked.Family[part].ShedOf(debris) is { UpTo.IsUnlimited: false })),
        ["sources of two sizes"] = asked => asked.Asked.Any(debris => asked.Failed.Select(part => asked.Family[part].ShedOf(debris)?.UpTo ?? ParticleSize.Unlimited).Distinct().Count() > 1),
        ["a failed part that shed nothing"] = asked => asked.Failures.Any(failure => failure.ShedNothing),
        ["failed parts that shed different debris"] = asked => asked.Failures.Select(failure => string.Join(' ', asked.Asked.Where(failure.Sheds).Select(debris => debris.Name))).Where(shed => shed.Length > 0).Distinct().Count() > 1,
        ["a debris that no failed part shed"] = asked => asked.Failed.Length > 0 && asked.Asked.Any(debris => !asked.Failures.Any(failure => failure.Sheds(debris))),
        ["a size seen below the family's"] = asked => asked.Failures.Any(failure => failure.UpTo is { } size && asked.Asked.Any(debris => failure.Sheds(debris) && asked.Family[failure.Part].ShedOf(debris)?.UpTo > size)),
        ["one part that shed two sizes"] = asked => asked.Failures.GroupBy(failure => failure.Part).Any(part => part.Count() > 1),
        ["a barrier that failed and shed nothing of what it holds"] = asked => asked.Asked.Any(debris => asked.Failed.Any(part => asked.Family[part] is { HasAbsoluteRating: true, HasBypass: false } barrier && barrier.HoldOf(debris) is not null && !asked.Failures.Any(failure => failure.Part == part && failure.Sheds(debris)))),
        ["a link that opens for a part that shed nothing"] = asked => asked.Family.Joints.Any(joint => joint.OnlyIfFailed is { } part && asked.Failures.Any(failure => failure.Part == part && failure.ShedNothing)),
        ["metal"] = asked => asked.Asked.Contains(Debris.Metal),
        ["rubber"] = asked => asked.Asked.Contains(Debris.Rubber),
        ["water"] = asked => asked.Asked.Contains(Debris.Water),
        ["a shop's own debris"] = asked => asked.Asked.Any(debris => debris.Name == "carbon"),
        ["several debris"] = asked => asked.Asked.Length > 1,
        ["hard debris without size"] = asked => asked.Asked.Any(debris => debris is { IsHard: true, HasSize: false }),
        ["a find"] = asked => asked.Findings.Any(finding => finding.Found),
        ["a find at a failed part"] = asked => asked.Findings.Any(finding => finding.Found && asked.Failed.Contains(finding.Part)),
        ["a find of debris that is not asked about"] = asked => asked.Findings.Any(finding => !asked.Asked.Contains(finding.Debris)),
        ["a clean finding"] = asked => asked.Findings.Any(finding => !finding.Found),
        ["a clean finding at a failed part"] = asked => asked.Findings.Any(finding => !finding.Found && asked.Failed.Contains(finding.Part)),
        ["a part both clean and not"] = asked => asked.Findings.Any(finding => asked.Findings.Contains(finding with { Found = !finding.Found, Size = null })),
        ["a look that shows poorly"] = asked => Any(asked, part => part.Inspect?.Shows == Shows.Poor),
        ["a look that shows fairly"] = asked => Any(asked, part => part.Inspect?.Shows == Shows.Fair),
        ["a look that shows well"] = asked => Any(asked, part => part.Inspect?.Shows == Shows.Good),
        ["clearance"] = asked => Any(asked, part => part.Clearance is not null),
        ["a critical part"] = asked => Any(asked, part => part.IsCritical),
        ["access"] = asked => Any(asked, part => part.Access.Length > 0),
        ["access behind access"] = asked => Any(asked, part => part.Access.Any(access => asked.Family[access].Access.Length > 0)),
        ["a part treated in place that is in the way"] = asked => Any(asked, part => part.Access.Any(access => !asked.Family[access].IsRemovable)),
        ["seals"] = asked => Any(asked, part => part.Seals.Length > 0),
        ["a seal twice"] = asked => Any(asked, part => part.Seals.Distinct().Count() < part.Seals.Length),
        ["a send-out"] = asked => Any(asked, part => part.SendOut is not null),
        ["a removable part"] = asked => Any(asked, part => part.IsRemovable),
        ["a part treated in place"] = asked => Any(asked, part => !part.IsRemovable),
        ["a filter"] = asked => Any(asked, part => part.Kind.IsFilter),
        ["a rule by part"] = asked => asked.Standard.Rules.Any(rule => rule.For.Part is not null),
        ["a rule by kind"] = asked => asked.Standard.Rules.Any(rule => rule.For is { Kind: not null, Debris: null }),
        ["a rule by kind and debris"] = asked => asked.Standard.Rules.Any(rule => rule.For is { Kind: not null, Debris: not null }),
        ["a rule by debris"] = asked => asked.Standard.Rules.Any(rule => rule.For is { Kind: null, Debris: not null }),
        ["a rule for the failed part"] = asked => asked.Standard.Rules.Any(rule => rule.Failed is not null),
        ["replace beside another treatment"] = asked => asked.Standard.Rules.Any(rule => rule.Exposed is { Length: > 1 } treatments && treatments.Contains(TreatmentKind.Replace)),
        ["times by kind"] = asked => asked.Standard.Times.Length > 0,
        ["clean findings accepted"] = asked => asked.Standard.CleanFindings == CleanFindings.Accept,
        ["clean findings never accepted"] = asked => asked.Standard.CleanFindings == CleanFindings.Never,
        ["one technician"] = asked => asked.Technicians == 1,
        ["three technicians"] = asked => asked.Technicians == 3,

        // What comes of it, by the reference.
        ["an exposed part beside the sources"] = asked => AnyReached(asked, part => part.Grade == Grade.Exposed && asked.Family.Parts.Length > asked.Failed.Length + 2),
        ["a guarded part"] = asked => AnyReached(asked, part => part.Grade == Grade.Guarded),
        ["a guarded part that something still reaches"] = asked => AnyReached(asked, part => part.Grade == Grade.Guarded && part.Reach > ParticleSize.Zero),
        ["a cleared part"] = asked => AnyReached(asked, part => part.Grade == Grade.Cleared),
        ["a part cleared by another's clean finding"] = asked => AnyReached(asked, part => part.Grade == Grade.Cleared && asked.Findings.All(finding => finding.Part != part.Part)),
        ["a part that asks for two looks"] = asked => Any(asked, part => part.ClearedBy == ClearedBy.TwoLooks),
        ["a critical part that would have been cleared"] = asked => Spreads(asked).Any(spread => spread.Parts.Any(part => spread.WouldBeCleared(part.Part))),
        ["a part of which nothing can get"] = asked => AnyReached(asked, part => part.Reach == ParticleSize.Zero),
        ["a clear part"] = asked => Spreads(asked).Any(spread => spread.ClearCount > 0),
        ["a part that another failure would reach"] = asked => Spreads(asked).Any(spread => spread.ReachedIfAllFailed.Length > 0),
        ["a part that only two more failures would reach"] = asked => Spreads(asked).Any(spread => spread.ReachedIfAllFailed.Length > spread.ReachedIfOneFails.Values.SelectMany(parts => parts).Distinct().Count()),
    };

    internal static bool HasAccessInACircle(Family family)
    {
        var graph = new AdjacencyGraph<PartId, SEdge<PartId>>();
        graph.AddVertexRange(family.Parts.Select(part => part.Id));
        graph.AddEdgeRange(family.Parts.SelectMany(part => part.Access.Select(access => new SEdge<PartId>(part.Id, access))));
        return !graph.IsDirectedAcyclicGraph();
    }

    private static bool Any(TestCase asked, Func<Part, bool> has) => asked.Family.Parts.Any(has);

    private static IEnumerable<ReferenceSpread> Spreads(TestCase asked) => asked.Asked.Select(debris => ReferenceSpread.Of(asked.Question(debris)));

    private static bool AnyReached(TestCase asked, Func<ReferencePart, bool> has) => Spreads(asked).Any(spread => spread.Parts.Any(has));

    private static IEnumerable<(Joint There, Joint Back)> Pairs(Family family) => family.Joints.Zip(family.Joints.Skip(1));

    private static AdjacencyGraph<PartId, SEdge<PartId>> Graph(Family family)
    {
        var graph = new AdjacencyGraph<PartId, SEdge<PartId>>();
        graph.AddVertexRange(family.Parts.Select(part => part.Id));
        graph.AddEdgeRange(family.Joints.Select(joint => new SEdge<PartId>(joint.From, joint.To)));
        return graph;
    }

    private static int Loops(Family family)
    {
        var component = new Dictionary<PartId, int>();
        Graph(family).StronglyConnectedComponents(component);
        return component.GroupBy(entry => entry.Value).Count(group => group.Count() > 1);
    }

    private static int Islands(Family family)
    {
        var component = new Dictionary<PartId, int>();
        return Graph(family).WeaklyConnectedComponents(component);
    }

    private static bool HasDiamond(Family family)
    {
        Dictionary<PartId, HashSet<PartId>> next = family.Joints.Where(joint => joint.From != joint.To)
            .GroupBy(joint => joint.From).ToDictionary(group => group.Key, group => group.Select(joint => joint.To).ToHashSet());
        return next.Any(top => top.Value.Any(left => top.Value.Any(right => left != right && next.ContainsKey(left) && next.ContainsKey(right)
            && next[left].Any(bottom => bottom != top.Key && next[right].Contains(bottom)))));
    }
}
