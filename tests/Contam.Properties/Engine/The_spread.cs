using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Properties.Spread;
using Contam.Spread;
using Contam.Support;

namespace Contam.Properties.Engine;

/// <summary>The promises that the spread makes, each held against random systems.</summary>
public class The_spread
{
    // Promise 1

    [Fact]
    public void Lists_exactly_what_the_graph_librarys_search_reaches() => ForEveryDebris((asked, debris) =>
    {
        ReferenceSpread reference = ReferenceSpread.Of(asked.Question(debris));
        DebrisSpread spread = Spreading.Of(asked.Question(debris));

        Assert.Equal(debris, spread.Debris);
        Assert.Equal(reference.Parts.Select(part => part.Part), spread.Parts.Select(part => part.Part));
        Assert.Equal(reference.ClearCount, spread.ClearCount);
    });

    [Fact]
    public void Gives_each_part_the_grade_and_reach_of_the_reference() => ForEveryDebris((asked, debris) =>
        Assert.Equal(
            ReferenceSpread.Of(asked.Question(debris)).Parts,
            Spreading.Of(asked.Question(debris)).Parts.Select(part => new ReferencePart(part.Part, part.Grade, part.Reach))));

    [Fact]
    public void Finds_each_listed_part_and_no_other() => ForEveryDebris((asked, debris) =>
    {
        DebrisSpread spread = Spreading.Of(asked.Question(debris));
        Dictionary<PartId, ReachedPart> listed = spread.Parts.ToDictionary(part => part.Part);

        Assert.All(asked.Family.Parts, part => Assert.Equal(listed.GetValueOrDefault(part.Id), spread.Find(part.Id)));
    });

    [Fact]
    public void Adds_nothing_to_its_own_result() => ForEveryDebris((asked, debris) =>
    {
        TestCase plain = Changed.WithoutConditions(asked);
        ImmutableArray<PartId> listed = Listed(plain, debris);

        Assert.Equal(listed, Listed(plain with { Failed = listed }, debris));
    });

    [Fact]
    public void Of_several_failures_is_that_of_each_together() => ForEveryDebris((asked, debris) =>
    {
        TestCase plain = Changed.WithoutConditions(asked) with { Findings = [] };
        HashSet<PartId> together = [.. plain.Failed.SelectMany(part => Listed(plain with { Failed = [part] }, debris))];

        Assert.Equal(plain.Family.Parts.Select(part => part.Id).Where(together.Contains), Listed(plain, debris));
    });

    // Promise 2

    [Fact]
    public void Is_never_milder_without_a_barrier() => NeverMilder(Changed.WithoutABarrier, mayExplainAFind: true);

    [Fact]
    public void Is_never_milder_with_a_joint_more() => NeverMilder(Changed.WithAJoint, mayExplainAFind: true);

    [Fact]
    public void Is_never_milder_with_a_failure_more() => NeverMilder(Changed.WithAFailure, mayExplainAFind: true);

    [Fact]
    public void Is_never_milder_with_a_find_more() => NeverMilder(Changed.WithAFind, mayExplainAFind: false);

    [Fact]
    public void Is_never_milder_without_a_clean_finding() => NeverMilder(Changed.WithoutACleanFinding, mayExplainAFind: true);

    // Promise 3

    [Fact]
    public void Lists_as_much_with_a_barrier_more() => ListsAsMuch(Changed.WithABarrier);

    [Fact]
    public void Lists_as_much_with_a_clean_finding_more() => ListsAsMuch(Changed.WithACleanFinding);

    [Fact]
    public void Is_never_milder_for_a_critical_part_with_a_clean_finding_more() => ForEveryDebris((asked, debris) =>
    {
        TestCase looked = Changed.WithACleanFinding(asked, ForEvery.ChanceFor(asked));
        DebrisSpread before = Spreading.Of(asked.Question(debris));
        DebrisSpread after = Spreading.Of(looked.Question(debris));

        Assert.All(before.Parts.Where(part => asked.Family[part.Part].ClearedBy == ClearedBy.TwoLooks), part =>
            Assert.True(after.Find(part.Part) is { } now && (now.Grade == Grade.Cleared || (now.Grade, now.Reach) == (part.Grade, part.Reach)), $"{part} became {after.Find(part.Part)}"));
        Assert.All(before.Parts.Where(part => asked.Family[part.Part].ClearedBy == ClearedBy.Nothing), part =>
        {
            Assert.Equal(part.Grade, after.Find(part.Part)!.Grade);
            Assert.Equal(part.Reach, after.Find(part.Part)!.Reach);
        });
    });

    // Promise 4

    [Fact]
    public void Shows_a_path_to_every_listed_part_whose_narrowest_hop_is_its_reach() => ForEveryDebris((asked, debris) =>
    {
        DebrisSpread spread = Spreading.Of(asked.Question(debris));
        var counted = new ReferenceWorld(asked.Question(debris), countCleanFindings: true);
        var uncounted = new ReferenceWorld(asked.Question(debris), countCleanFindings: false);
        ReferenceSpread reference = ReferenceSpread.Of(asked.Question(debris));
        foreach (ReachedPart part in spread.Parts)
        {
            ReferenceWorld world = reference.IsSpared(part.Part) ? counted : uncounted;
            ImmutableArray<PartId> path = spread.PathTo(part.Part);

            Assert.Equal(part.Part, path[^1]);
            Assert.Equal(part.From, path[0]);
            Assert.Equal(part.Via, path.Length == 1 ? null : path[^2]);
            Assert.Equal(path.Length, path.Distinct().Count());
            Assert.Equal(part.Reach, Narrowest(asked, world, path));
        }
    });

    // Promise 5

    [Fact]
    public void Is_the_same_again_and_in_another_country() => ForEveryDebris((asked, debris) =>
    {
        string first = Text(Spreading.Of(asked.Question(debris)));
        string twice = Text(Spreading.Of(asked.Question(debris) with { Failures = [.. asked.Failures, .. asked.Failures] }));

        Assert.Equal(first, twice);
        Assert.Equal(first, Abroad.Do(() => Text(Spreading.Of(asked.Question(debris)))));
    });

    // Promise 6

    [Fact]
    public void Changes_nothing_but_ids_with_the_ids() => ForEveryDebris((asked, debris) =>
    {
        (TestCase renamed, Func<PartId, PartId> newIdOf) = Changed.Renamed(asked, ForEvery.ChanceFor(asked));
        DebrisSpread before = Spreading.Of(asked.Question(debris));
        DebrisSpread after = Spreading.Of(renamed.Question(debris));

        Assert.Equal(
            before.Parts.Select(part => part with { Part = newIdOf(part.Part), From = newIdOf(part.From), Via = part.Via is { } via ? newIdOf(via) : null }),
            after.Parts);
        Assert.Equal(
            before.Conditional.Select(entry => Text(new ConditionalReach(newIdOf(entry.IfFailed), [.. entry.AlsoFailed.Select(newIdOf)], [.. entry.Parts.Select(newIdOf)]))),
            after.Conditional.Select(Text));
    });

    [Fact]
    public void Changes_nothing_but_the_order_with_the_order() => ForEveryDebris((asked, debris) =>
        SameButForOrder(asked, Changed.Reordered(asked, ForEvery.ChanceFor(asked)), debris));

    [Fact]
    public void Changes_nothing_where_runs_are_written_as_links() => ForEveryDebris((asked, debris) =>
        Assert.Equal(Text(Spreading.Of(asked.Question(debris))), Text(Spreading.Of(Changed.WithRunsSplit(asked).Question(debris)))));

    // Conditional joints

    [Fact]
    public void Names_what_each_other_failure_would_reach() => ForEveryDebris((asked, debris) =>
    {
        ReferenceSpread reference = ReferenceSpread.Of(asked.Question(debris));
        ImmutableArray<ConditionalReach> conditional = Spreading.Of(asked.Question(debris)).Conditional;
        HashSet<PartId> listed = [.. reference.Parts.Select(part => part.Part)];

        foreach ((PartId condition, ImmutableArray<PartId> reached) in reference.ReachedIfOneFails)
            Assert.Equal(reached, InFamilyOrder(asked, conditional.Where(entry => entry.IfFailed == condition && entry.AlsoFailed.IsEmpty).SelectMany(entry => entry.Parts)));
        Assert.Equal(reference.ReachedIfAllFailed, InFamilyOrder(asked, conditional.SelectMany(entry => entry.Parts)));
        Assert.All(conditional, entry =>
        {
            HashSet<PartId> reached = reference.ReachedIfFailed([entry.IfFailed, .. entry.AlsoFailed]);

            Assert.NotEmpty(entry.Parts);
            Assert.All(entry.Parts, part => Assert.True(reached.Contains(part) && !listed.Contains(part), $"{part} if {entry.IfFailed} failed"));
            Assert.Equal(InFamilyOrder(asked, entry.Parts), entry.Parts);
        });
    });

    [Fact]
    public void Asks_for_no_more_failures_than_it_takes() => ForEveryDebris((asked, debris) =>
    {
        ReferenceSpread reference = ReferenceSpread.Of(asked.Question(debris));
        foreach (ConditionalReach entry in Spreading.Of(asked.Question(debris)).Conditional)
        {
            PartId[] all = [entry.IfFailed, .. entry.AlsoFailed];
            foreach (PartId spared in all)
            {
                HashSet<PartId> reached = reference.ReachedIfFailed([.. all.Where(part => part != spared)]);
                Assert.DoesNotContain(entry.Parts, reached.Contains);
            }
        }
    });

    private static void ForEveryDebris(Action<TestCase, Debris> rule) => ForEvery.Case(asked =>
    {
        foreach (Debris debris in asked.Asked)
            rule(asked, debris);
    });

    // What explains a find that clean looks contradicted lets these looks count again, so that the grades may become milder; the list never grows shorter.
    private static void NeverMilder(Func<TestCase, Random, TestCase> change, bool mayExplainAFind) => ForEveryDebris((asked, debris) =>
    {
        DebrisSpread before = Spreading.Of(asked.Question(debris));
        DebrisSpread after = Spreading.Of(change(asked, ForEvery.ChanceFor(asked)).Question(debris));
        bool isListedOnly = mayExplainAFind && before.Findings.Any(judged => judged.IsVoid);

        Assert.All(before.Parts, part =>
        {
            ReachedPart? then = after.Find(part.Part);
            Assert.NotNull(then);
            if (isListedOnly)
                return;
            Assert.True(then.Grade <= part.Grade, $"{part.Part} was {part.Grade} and became {then.Grade}");
            Assert.True(then.Reach >= part.Reach, $"{part.Part} was reached by {part.Reach} and then by {then.Reach}");
        });
    });

    private static void ListsAsMuch(Func<TestCase, Random, TestCase> change) => ForEveryDebris((asked, debris) =>
        Assert.Equal(Listed(asked, debris), Listed(change(asked, ForEvery.ChanceFor(asked)), debris)));

    private static void SameButForOrder(TestCase asked, TestCase other, Debris debris)
    {
        DebrisSpread before = Spreading.Of(asked.Question(debris));
        DebrisSpread after = Spreading.Of(other.Question(debris));

        Assert.Equal(
            before.Parts.Select(part => (part.Part, part.Grade, part.Reach)),
            after.Parts.Select(part => (part.Part, part.Grade, part.Reach)).OrderBy(part => asked.Family.IndexOf(part.Part)));
        Assert.Equal(before.ClearCount, after.ClearCount);
        Assert.Equal(
            InFamilyOrder(asked, before.Conditional.SelectMany(entry => entry.Parts)),
            InFamilyOrder(asked, after.Conditional.SelectMany(entry => entry.Parts)));
    }

    // The largest particle that can go along these parts from first to last.
    private static ParticleSize Narrowest(TestCase asked, ReferenceWorld world, ImmutableArray<PartId> path)
    {
        ParticleSize arrives = world.Sources.Where(source => source.Part == path[0]).Max(source => source.Size);
        for (int i = 1; i < path.Length; i++)
        {
            ParticleSize widest = asked.Family.Joints
                .Where(joint => joint.From == path[i - 1] && joint.To == path[i] && world.IsOpen(joint, []))
                .Max(world.LetsOn);
            arrives = ParticleSize.Min(arrives, ParticleSize.Min(widest, world.LetsOn(asked.Family[path[i - 1]])));
        }

        return arrives;
    }

    private static ImmutableArray<PartId> Listed(TestCase asked, Debris debris) => [.. Spreading.Of(asked.Question(debris)).Parts.Select(part => part.Part)];

    private static ImmutableArray<PartId> InFamilyOrder(TestCase asked, IEnumerable<PartId> parts) => [.. parts.Distinct().OrderBy(asked.Family.IndexOf)];

    private static string Text(DebrisSpread spread) => string.Join('\n',
    [
        .. spread.Parts.Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.Part} {part.Grade} {part.Reach.Micrometres} {part.From} {part.Via} by {string.Join('>', spread.PathTo(part.Part))}")),
        .. spread.Conditional.Select(Text),
        spread.ClearCount.ToString(CultureInfo.InvariantCulture),
    ]);

    private static string Text(ConditionalReach entry) => $"if {entry.IfFailed}+{string.Join('+', entry.AlsoFailed)}: {string.Join(' ', entry.Parts)}";
}
