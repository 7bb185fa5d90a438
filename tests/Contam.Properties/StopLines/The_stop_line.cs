using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;
using Contam.Spread;
using Contam.StopLines;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.StopLines;

/// <summary>What the stop line promises, held against random systems.</summary>
public class The_stop_line
{
    // Few enough that every choice of looks can be tried.
    private const int Few = 12;

    [Fact]
    public void Takes_no_more_than_any_other_choice_of_looks() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            decimal least = new ReferenceStopLine(asked).Least;
            decimal takes = Tenths(line.Minutes.Looks) + Tenths(line.Minutes.Treatment);
            if (line.IsLeast)
                Assert.Equal(least, takes);
            else
                Assert.True(least <= takes && takes <= Tenths(line.Minutes.WithoutLooking), $"{takes} where {least} is least");
        },
        mostParts: Few);

    [Fact]
    public void Counts_just_what_its_looks_and_what_they_leave_take() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            var reference = new ReferenceStopLine(asked);
            int looks = reference.Choice(line.Looks.Select(look => look.Part));

            Assert.Equal(0, looks & ~reference.Places);
            Assert.Equal(reference.SparedBy(looks) & ~reference.SparedBy(0), reference.Choice(line.Clears));
            Assert.Equal(reference.CostOf(looks), Tenths(line.Minutes.Looks) + Tenths(line.Minutes.Treatment));
            Assert.Equal(reference.CostOf(0), Tenths(line.Minutes.WithoutLooking));
            Assert.Equal(Tenths(line.Minutes.Looks), line.Looks.Sum(look => Tenths(look.Minutes)));
            Assert.Equal(Tenths(line.Minutes.Treatment), line.Treat.Sum(part => Tenths(part.Minutes)));
            Assert.Equal(line.Looks.IsEmpty, line.Silence != StopLineSilence.None);
        },
        mostParts: Few);

    [Fact]
    public void Of_equals_has_fewest_looks_and_then_fewest_parts_open() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            if (!line.IsLeast)
                return;
            var reference = new ReferenceStopLine(asked);
            int looks = reference.Choice(line.Looks.Select(look => look.Part));
            int[] equals = reference.LeastChoices();
            int fewest = equals.Min(choice => BitOperations.PopCount((uint)choice));

            Assert.Equal(fewest, BitOperations.PopCount((uint)looks));
            // Not only as few as in any other: all of them are open in every other too.
            Assert.All(equals.Where(choice => BitOperations.PopCount((uint)choice) == fewest), choice => Assert.Equal(0, reference.Open(looks) & ~reference.Open(choice)));
        },
        mostParts: Few);

    [Fact]
    public void Clears_just_what_the_spread_clears_once_its_looks_are_on_record() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            TestCase after = WithClean(asked, line.Looks.Select(look => look.Part));

            // A part that asks for two looks is never promised; two of the looks may clear it all the same.
            PartId[] cleared = ClearedOfAll(after);
            Assert.Equal(
                InOrder(asked, line.Clears.Concat(line.ClearedAlready)),
                cleared.Where(part => asked.Family[part].ClearedBy != ClearedBy.TwoLooks || line.ClearedAlready.Contains(part)));
            Assert.Empty(line.ClearedAlready.Except(cleared));
            Assert.Equal(line.ClearedAlready, ClearedOfAll(asked));
            foreach (Debris debris in asked.Asked)
            {
                DebrisSpread before = Spreading.Of(asked.Question(debris));
                DebrisSpread then = Spreading.Of(after.Question(debris));
                Assert.All(then.Findings.Skip(before.Findings.Length), judged => Assert.True(judged.IsAccepted, judged.NotAcceptedBecause));
                // Nothing falls off the list, and what is not cleared has at most become guarded where full-size debris came past a look.
                Assert.Equal(before.Parts.Select(part => part.Part), then.Parts.Select(part => part.Part));
                Assert.All(before.Parts.Zip(then.Parts), pair => Assert.True(pair.Second.Grade >= pair.First.Grade, $"{pair.First} became {pair.Second}"));
            }
        },
        mostParts: 60);

    [Fact]
    public void Each_look_spares_by_itself_what_it_says_and_all_of_them_the_rest() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            PartId[] byOne = [.. line.Looks.SelectMany(look => look.Clears)];

            Assert.Equal(line.Clears, InOrder(asked, byOne.Concat(line.ClearsTogether)));
            foreach (StopLineLook look in line.Looks)
            {
                PartId[] cleared = ClearedOfAll(WithClean(asked, [look.Part]));
                Assert.Empty(look.Clears.Except(cleared));
                if (line.IsLeast)
                    Assert.Empty(line.Clears.Intersect(cleared).Except(look.Clears));
            }
        },
        mostParts: 60);

    [Fact]
    public void Names_every_part_that_is_treated_with_its_reason() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            PartId[] listed = [.. asked.Asked.SelectMany(debris => Spreading.Of(asked.Question(debris)).Parts).Select(part => part.Part).Concat(asked.Failed).Distinct()];

            Assert.Equal(InOrder(asked, listed), InOrder(asked, line.Treat.Select(part => part.Part).Concat(line.Clears).Concat(line.ClearedAlready)));
            Assert.All(line.Treat, part => Assert.Equal(
                asked.Failed.Contains(part.Part) ? StopLineReason.Failed
                : asked.Findings.Any(finding => finding.Found && finding.Part == part.Part && asked.Asked.Contains(finding.Debris)) ? StopLineReason.Found
                : asked.Family[part.Part].IsCritical ? StopLineReason.Critical
                : StopLineReason.BeforeTheLine,
                part.Reason));
            Assert.DoesNotContain(line.Clears, part => asked.Family[part].IsCritical);
        },
        mostParts: 60);

    /// <summary>
    /// Where a part costs the same whichever way it is reached. Where it does not, one more find may make a treatment dearer and so a look worth its while, which spares more than before.
    /// </summary>
    [Fact]
    public void A_further_find_never_shrinks_what_is_treated() => ForEvery.Case(
        drawn =>
        {
            TestCase asked = WithOnePrice(drawn);
            Random chance = ForEvery.ChanceFor(asked);
            PartId place = asked.Family.Parts[chance.Next(asked.Family.Parts.Length)].Id;
            StopLine before = LineOf(asked);
            StopLine then = LineOf(asked with { Findings = asked.Findings.Add(new Finding(place, asked.Asked[0], Found: true)) });

            Assert.Empty(before.Treat.Select(part => part.Part).Except(then.Treat.Select(part => part.Part)));
            Assert.True(then.Minutes.Looks + then.Minutes.Treatment >= before.Minutes.Looks + before.Minutes.Treatment - 0.05);
        },
        mostParts: 60);

    [Fact]
    public void A_look_that_was_found_clean_is_not_asked_for_again() => ForEvery.Case(
        asked =>
        {
            StopLine line = LineOf(asked);
            StopLine then = LineOf(WithClean(asked, line.Looks.Select(look => look.Part)));

            Assert.Empty(then.Looks.Select(look => look.Part).Intersect(line.Looks.Select(look => look.Part)));
            Assert.Empty(line.Clears.Except(then.ClearedAlready));
        },
        mostParts: 60);

    /// <summary>A rule that never met a line would hold of anything.</summary>
    [Fact]
    public void The_cases_have_lines_of_every_sort()
    {
        StopLine[] lines = [.. Enumerable.Range(0, 1000).Select(seed => LineOf(Support.Generation.Cases.Make(seed, 60)))];
        Assert.All(
            new Func<StopLine, bool>[]
            {
                line => line.Looks.Length == 1,
                line => line.Looks.Length > 2,
                line => line.Looks.Any(look => look.Clears.IsEmpty),
                line => line.Looks.Any(look => !look.InTheWay.IsEmpty),
                line => !line.ClearsTogether.IsEmpty,
                line => !line.ClearedAlready.IsEmpty && !line.Looks.IsEmpty,
                line => line.Treat.Any(part => part.Reason == StopLineReason.BeforeTheLine) && !line.Looks.IsEmpty,
                line => line.Treat.Any(part => part.Reason == StopLineReason.Critical) && !line.Looks.IsEmpty,
                line => line.Treat.Any(part => part.Reason == StopLineReason.Found) && !line.Looks.IsEmpty,
                line => !line.IsLeast && !line.Looks.IsEmpty,
                line => line.Silence == StopLineSilence.StandardForbids,
                line => line.Silence == StopLineSilence.NothingToSpare,
                line => line.Silence == StopLineSilence.NowhereToLook,
                line => line.Silence == StopLineSilence.NothingSaved,
            },
            sort => Assert.Contains(lines, line => sort(line)));
    }

    private static StopLine LineOf(TestCase asked) =>
        StopLineFinder.Of(new StopLineQuestion(asked.Family, asked.Standard, asked.Failures, asked.Asked) { Findings = asked.Findings });

    private static decimal Tenths(double minutes) => Math.Round((decimal)minutes, 1);

    private static TestCase WithClean(TestCase asked, IEnumerable<PartId> places) => asked with
    {
        Findings = [.. asked.Findings, .. places.SelectMany(place => asked.Asked.Select(debris => new Finding(place, debris, Found: false)))],
    };

    private static PartId[] InOrder(TestCase asked, IEnumerable<PartId> parts) => [.. parts.Distinct().OrderBy(asked.Family.IndexOf)];

    /// <summary>The parts that every debris that could have reached them is cleared of.</summary>
    private static PartId[] ClearedOfAll(TestCase asked)
    {
        ReachedPart[] reached = [.. asked.Asked.SelectMany(debris => Spreading.Of(asked.Question(debris)).Parts)];
        return InOrder(asked, reached.GroupBy(part => part.Part).Where(group => !asked.Failed.Contains(group.Key) && group.All(part => part.Grade == Grade.Cleared)).Select(group => group.Key));
    }

    /// <summary>One debris, nothing in the way of anything, and one treatment whatever the grade.</summary>
    private static TestCase WithOnePrice(TestCase asked)
    {
        ImmutableArray<TreatmentKind> clean = [TreatmentKind.Clean];
        ImmutableArray<Part> parts = [.. asked.Family.Parts.Select(part => part with { Access = [], IsRemovable = false, SendOut = null })];
        TestCase plain = asked with
        {
            Family = SystemBuilder.Build(parts, asked.Family.Joints, asked.Family.States),
            Asked = [asked.Asked[0]],
            Standard = new ShopStandard
            {
                Id = "one",
                Kinds = asked.Standard.Kinds,
                CleanFindings = asked.Standard.CleanFindings,
                Debris = asked.Standard.Debris,
                Rules = [.. ShopFloor.Kinds.Select((kind, index) => new Rule(new RuleFor(null, kind.Name, null), clean, clean, clean, "", ShopFloor.Written(index + 1)))],
            },
        };
        return plain.IsSensible ? plain : plain with { Failed = [parts[0].Id] };
    }
}
