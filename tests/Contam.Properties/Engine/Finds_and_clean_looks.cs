using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Properties.Spread;
using Contam.Spread;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Engine;

/// <summary>A find that clean looks contradict: the looks are void, and nothing is left alone on their strength.</summary>
public class Finds_and_clean_looks
{
    [Fact]
    public void Are_set_against_each_other_by_the_definition_on_every_way() => ForEvery.Case(
        drawn =>
        {
            TestCase asked = Looked(drawn);
            foreach (Debris debris in asked.Asked)
            {
                var reference = new ReferenceContradictions(asked.Question(debris));
                HashSet<PartId> byEveryWay = reference.VoidByEveryWay();

                Assert.Equal(InOrder(asked, byEveryWay), InOrder(asked, reference.Void));
                Assert.Equal(InOrder(asked, byEveryWay), InOrder(asked, VoidOf(asked, debris)));
            }
        },
        runs: 3000,
        mostParts: 9);

    [Fact]
    public void Are_set_against_each_other_by_the_definition() => ForEveryLooked((asked, debris) =>
    {
        var reference = new ReferenceContradictions(asked.Question(debris));
        DebrisSpread spread = Spreading.Of(asked.Question(debris));

        Assert.Equal(InOrder(asked, reference.Void), InOrder(asked, VoidOf(asked, debris)));
        Assert.Equal(InOrder(asked, reference.Void), InOrder(asked, spread.Contradictions.SelectMany(one => one.Voids)));
        Assert.All(spread.Contradictions, one => Assert.All(one.Voids, place => Assert.True(reference.Disproves(one.Find, place), $"{one.Find} does not disprove {place}")));
        Assert.All(spread.Findings, judged => Assert.Equal(judged.Finding.Found ? reference.OriginOf(judged.Finding) : FindOrigin.Failure, judged.Origin));
        Assert.All(spread.Findings, judged => Assert.False(judged.IsAccepted && reference.Void.Contains(judged.Finding.Part)));
    });

    [Fact]
    public void Leave_nothing_alone_on_any_walk_to_a_find_that_clean_looks_contradict() => ForEveryLooked((asked, debris) =>
    {
        var reference = new ReferenceContradictions(asked.Question(debris));
        DebrisSpread spread = Spreading.Of(asked.Question(debris));
        foreach (Finding find in reference.Finds.Where(reference.IsUnexplained))
        {
            Assert.All(asked.Family.Parts.Where(part => reference.IsOnAWalkTo(find, part.Id)), part =>
                Assert.NotEqual(Grade.Cleared, spread.Find(part.Id)!.Grade));
        }
    });

    [Fact]
    public void Are_as_if_a_void_look_had_never_been_made() => ForEveryLooked((asked, debris) =>
    {
        HashSet<PartId> disproved = [.. VoidOf(asked, debris)];
        TestCase without = asked with { Findings = [.. asked.Findings.Where(finding => finding.Found || finding.Debris != debris || !disproved.Contains(finding.Part))] };

        Assert.Equal(Spreading.Of(without.Question(debris)).Parts, Spreading.Of(asked.Question(debris)).Parts);
    });

    [Fact]
    public void Are_never_milder_with_a_find_more() => ForEveryLooked((asked, debris) =>
    {
        DebrisSpread before = Spreading.Of(asked.Question(debris));
        DebrisSpread after = Spreading.Of(Changed.WithAFind(asked, ForEvery.ChanceFor(asked)).Question(debris));

        Assert.Empty(before.Findings.Where(judged => judged.IsVoid).Select(judged => judged.Finding).Except(after.Findings.Where(judged => judged.IsVoid).Select(judged => judged.Finding)));
        Assert.All(before.Parts, part => Assert.True(after.Find(part.Part)!.Grade <= part.Grade && after.Find(part.Part)!.Reach >= part.Reach, $"{part} became {after.Find(part.Part)}"));
    });

    [Fact]
    public void Are_a_plan_that_the_verifier_takes_and_refuses_once_a_look_is_no_longer_void() => ForEvery.Case(
        drawn =>
        {
            TestCase asked = Looked(drawn);
            PlanDocument plan = Planner.Plan(asked.ToRequest());
            Verification verification = PlanVerifier.Verify(plan, asked.Family, asked.Catalogue.Debris);
            Assert.True(verification.Holds, string.Join('\n', verification.Claims.Select(claim => claim.Where)));
            foreach (PlanFinding finding in plan.Findings)
            {
                PlanFinding[] edited =
                [
                    .. finding.Void ? [finding with { Void = false, ContradictedBy = null }, finding with { Accepted = true }, finding with { Void = false, Accepted = true }, finding with { ContradictedBy = null }] : Array.Empty<PlanFinding>(),
                    .. finding is { Found: false, Void: false } && plan.Debris.Contains(finding.Debris) ? [finding with { Void = true }] : Array.Empty<PlanFinding>(),
                    .. finding.Source is null ? Array.Empty<PlanFinding>() : [finding with { Source = null }],
                ];
                Assert.All(edited, other => Assert.False(PlanVerifier.Verify(plan with { Findings = plan.Findings.Replace(finding, other) }, asked.Family, asked.Catalogue.Debris).Holds, $"{finding} became {other}"));
            }
        },
        mostParts: 40);

    /// <summary>A rule that never met a contradiction would hold of anything.</summary>
    [Fact]
    public void Meet_in_every_way()
    {
        (TestCase Asked, Debris Debris, ReferenceContradictions Reference)[] cases =
        [
            .. Enumerable.Range(0, 2000).Select(seed => Looked(Cases.Make(seed, 60)))
                .SelectMany(asked => asked.Asked.Select(debris => (asked, debris, new ReferenceContradictions(asked.Question(debris))))),
        ];
        var ways = new Dictionary<string, Func<TestCase, Debris, ReferenceContradictions, bool>>
        {
            ["a void look"] = (_, _, reference) => reference.Void.Count > 0,
            ["several void looks"] = (_, _, reference) => reference.Void.Count > 2,
            ["a void look beside one that counts"] = (asked, debris, reference) => reference.Void.Count > 0 && Spreading.Of(asked.Question(debris)).Findings.Any(judged => judged.IsAccepted),
            ["two finds that contradict the looks"] = (_, _, reference) => reference.Finds.Where(reference.IsUnexplained).Select(find => find.Part).Distinct().Count() > 1,
            ["two finds in a loop with each other"] = (asked, _, reference) => reference.Finds.Where(reference.IsUnexplained)
                .Any(find => reference.Finds.Any(other => other.Part != find.Part && reference.IsUnexplained(other) && reference.IsOnAWalkTo(find, other.Part) && reference.IsOnAWalkTo(other, find.Part))),
            ["a find that another walk explains"] = (_, _, reference) => reference.Void.Count == 0 && reference.Finds.Any(find => reference.OriginOf(find) == FindOrigin.Failure) ,
            ["a find with a source of its own"] = (_, _, reference) => reference.Finds.Any(find => reference.OriginOf(find) == FindOrigin.OwnSource),
            ["a find that speaks for a further source"] = (_, _, reference) => reference.Finds.Any(find => reference.OriginOf(find) == FindOrigin.FurtherSource),
            ["one that does and contradicts a look"] = (_, _, reference) => reference.Finds.Any(find => reference.OriginOf(find) == FindOrigin.FurtherSource && reference.IsUnexplained(find)),
            ["one that does and contradicts none though looks are on record"] = (asked, _, reference) => asked.Findings.Any(one => !one.Found) && reference.Finds.Any(find => reference.OriginOf(find) == FindOrigin.FurtherSource && !reference.IsUnexplained(find)),
            ["a walk past no clean place that is too narrow"] = (asked, debris, reference) => reference.Finds.Any(find => reference.IsUnexplained(find) && !new ReferenceContradictions(asked.Question(debris) with { Findings = [.. asked.Findings.Where(one => one != find), find with { Size = ParticleSize.Zero }] }).IsUnexplained(find with { Size = ParticleSize.Zero })),
        };
        Assert.All(ways, way => Assert.True(cases.Count(one => way.Value(one.Asked, one.Debris, one.Reference)) >= 10, $"{way.Key}: {cases.Count(one => way.Value(one.Asked, one.Debris, one.Reference))}"));
    }

    private static void ForEveryLooked(Action<TestCase, Debris> rule) => ForEvery.Case(
        drawn =>
        {
            TestCase asked = Looked(drawn);
            foreach (Debris debris in asked.Asked)
                rule(asked, debris);
        },
        mostParts: 60);

    /// <summary>The case with clean looks at some parts, all of which show debris well, and a few finds, with a size or without.</summary>
    private static TestCase Looked(TestCase asked)
    {
        Random random = ForEvery.ChanceFor(asked);
        double clean = random.Of([0.1, 0.25, 0.5]);
        ImmutableArray<Part> parts = [.. asked.Family.Parts.Select(part => Happens(random, clean) ? part with { Inspect = new Inspection(5, Shows.Good, "", null) } : part)];
        IEnumerable<Finding> looks = parts.Where(part => part.Inspect?.Shows == Shows.Good && Happens(random, 0.8)).SelectMany(part => asked.Asked.Select(debris => new Finding(part.Id, debris, Found: false)));
        IEnumerable<Finding> finds = Enumerable.Range(0, random.Next(1, 4)).Select(_ => random.Of(asked.Asked)).Select(debris => new Finding(random.Of(parts).Id, debris, Found: true)
        {
            Size = debris.HasSize && Happens(random, 0.6) ? ParticleSize.FromMicrometres(random.Of([0, 5, 10, 20, 30, 50, 100, 500, 2000.0])) : null,
        });
        TestCase looked = asked with
        {
            Family = SystemBuilder.Build(parts, asked.Family.Joints, asked.Family.States),
            Findings = [.. random.Shuffled([.. asked.Findings, .. looks, .. finds])],
        };
        return looked.Failed.IsEmpty && Happens(random, 0.7) ? looked with { Failed = [random.Of(parts).Id] } : looked;
    }

    private static bool Happens(Random random, double rate) => random.NextDouble() < rate;

    private static IEnumerable<PartId> VoidOf(TestCase asked, Debris debris) =>
        Spreading.Of(asked.Question(debris)).Findings.Where(judged => judged.IsVoid).Select(judged => judged.Finding.Part);

    private static PartId[] InOrder(TestCase asked, IEnumerable<PartId> parts) => [.. parts.Distinct().OrderBy(asked.Family.IndexOf)];
}
