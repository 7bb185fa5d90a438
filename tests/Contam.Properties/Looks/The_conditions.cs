using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Spread;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.Looks;

/// <summary>What holds for the conditions of every part, whatever the looks show.</summary>
public class The_conditions
{
    private const int Some = 40;

    [Fact]
    public void Miss_no_treatment_of_any_history() => ForEvery.Case(
        asked =>
        {
            var looks = LooksCase.For(asked, ForEvery.ChanceFor(asked), withTwoLooks: true);
            foreach (LookHistory history in looks.Plan.Histories ?? [])
                AssertComplete(looks, history, new ReferenceHistory(looks, history));
        },
        mostParts: Some);

    // Who finds metal at one of two places stops looking, and records no more than that.
    [Fact]
    public void Miss_none_where_a_look_finds_only_some_of_what_it_could() => ForEvery.Case(
        asked =>
        {
            Random chance = ForEvery.ChanceFor(asked);
            var looks = LooksCase.For(asked, chance, withTwoLooks: true);
            foreach (LookHistory history in looks.Plan.Histories ?? [])
                AssertComplete(looks, history, new ReferenceHistory(looks, history, chance));
        },
        mostParts: Some);

    [Fact]
    public void Ask_for_nothing_that_a_history_does_not_need_where_no_way_is_narrow() => ForEvery.Case(
        asked =>
        {
            var looks = LooksCase.For(Plain(asked), ForEvery.ChanceFor(asked));
            foreach (LookHistory history in looks.Plan.Histories ?? [])
            {
                var flat = new ReferenceHistory(looks, history);
                foreach (Part part in looks.Asked.Family.Parts)
                    Assert.Equal((history, part.Id, string.Join(' ', flat.Treatments(part))), (history, part.Id, string.Join(' ', Of(looks.Plan, part.Id)?.In(history) ?? [])));
            }
        },
        mostParts: Some);

    [Fact]
    public void Never_ask_for_less_when_more_is_found() => ForEvery.Case(
        asked =>
        {
            var looks = LooksCase.For(asked, ForEvery.ChanceFor(asked), withTwoLooks: true);
            ImmutableArray<LookHistory> histories = looks.Plan.Histories ?? [];
            foreach (LookHistory fewer in histories)
            {
                foreach (LookHistory more in histories.Where(more => (fewer.CountsAsFound & ~more.CountsAsFound) == 0))
                {
                    foreach (PartLooks part in looks.Plan.Parts)
                    {
                        Assert.True(part.In(fewer).IsEmpty || !part.In(more).IsEmpty, $"{part.Part.Id} is left alone in {more}, not in {fewer}");
                        foreach (IGrouping<Debris, GradeAsk> asks in part.Asks.GroupBy(ask => ask.Debris))
                            Assert.True(Worst(asks, more) >= Worst(asks, fewer), $"{part.Part.Id} is less dirty in {more} than in {fewer}");
                    }
                }
            }
        },
        mostParts: Some);

    [Fact]
    public void List_just_the_parts_that_the_spread_lists_and_those_that_failed() => ForEvery.Case(
        asked =>
        {
            var looks = LooksCase.For(asked, ForEvery.ChanceFor(asked));
            HashSet<PartId> listed = [.. looks.Question.Debris.SelectMany(debris => Spreading.Of(looks.Asked.Question(debris)).Parts.Select(part => part.Part)), .. looks.Asked.Failed];

            Assert.Equal(looks.Asked.Family.Parts.Select(part => part.Id).Where(listed.Contains), looks.Plan.Parts.Select(part => part.Part.Id));
        },
        mostParts: Some);

    private static void AssertComplete(LooksCase looks, LookHistory history, ReferenceHistory flat)
    {
        foreach (Part part in looks.Asked.Family.Parts)
        {
            ImmutableArray<TreatmentKind> done = Of(looks.Plan, part.Id)?.In(history) ?? [];
            ImmutableArray<TreatmentKind> missed = [.. flat.Treatments(part).Where(one => !done.Contains(one) && !IsReplaced(one, done))];
            Assert.True(missed.IsEmpty, $"{history}: {part.Id} needs {string.Join(' ', missed)} as well as {string.Join(' ', done)}");
        }
    }

    private static int Worst(IEnumerable<GradeAsk> asks, LookHistory history) =>
        asks.Where(ask => history.Meets(ask.When)).Select(ask => ask.Situation switch { Situation.Guarded => 1, Situation.Exposed => 2, _ => 3 }).Append(0).Max();

    private static PartLooks? Of(DecidedPlan plan, PartId part) => plan.Parts.FirstOrDefault(one => one.Part.Id == part);

    // A renewed part is neither flushed nor cleaned.
    private static bool IsReplaced(TreatmentKind treatment, ImmutableArray<TreatmentKind> done) =>
        treatment is TreatmentKind.Flush or TreatmentKind.Clean && done.Contains(TreatmentKind.Replace);

    // The same system in which nothing holds anything back, for one debris, with nothing seen beforehand and every part spared by one look.
    internal static TestCase Plain(TestCase asked)
    {
        Family family = SystemBuilder.Build(
            asked.Family.Parts.Select(part => part with { Holds = [], Passage = null, ClearedBy = ClearedBy.OneLook }),
            asked.Family.Joints.Select(joint => joint with { Passage = null }),
            asked.Family.States);
        return asked with { Family = family, Asked = [asked.Asked[0]], Findings = [], Failed = asked.Failed.IsEmpty ? [family.Parts[0].Id] : asked.Failed };
    }
}
