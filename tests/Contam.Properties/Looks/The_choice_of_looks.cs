using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;
using Contam.Looks;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.Looks;

/// <summary>What the choice of looks promises, held against random systems.</summary>
public class The_choice_of_looks
{
    [Fact]
    public void Takes_no_more_than_any_other_of_few_places() => ForEvery.Case(
        asked =>
        {
            // Each look stands for itself, nothing is narrow and there is one debris: then what is reckoned quickly is exact.
            ChoiceQuestion question = Question(Unlike(The_conditions.Plain(asked)));
            LookPlan chosen = DecidingLooks.Choose(question);
            ImmutableArray<PartId> places = Places(question);
            if (places.Length > 7)
                return;
            double least = double.PositiveInfinity;
            for (int choice = 0; choice < 1 << places.Length; choice++)
            {
                LookPlan plan = DecidingLooks.Choose(question with { LookAt = [.. places.Where((_, index) => (choice >> index & 1) == 1)] });
                least = Math.Min(least, plan.MinutesExpected);
                Assert.True(plan.MinutesExpected >= chosen.MinutesBound - 0.001, $"{plan.MinutesExpected} under a bound of {chosen.MinutesBound}");
            }

            Assert.Equal(ChoiceMethod.All, chosen.Method);
            Assert.Equal(least, chosen.MinutesExpected, 0.01);
        },
        mostParts: 14);

    // Over all cases the search misses the best by little: it is there for more places than can all be tried.
    [Fact]
    public void Comes_near_the_best_where_it_only_searches()
    {
        double best = 0, searched = 0;
        ForEvery.Case(
            asked =>
            {
                ChoiceQuestion question = Question(asked);
                ImmutableArray<DebrisWays> ways = [.. question.Question.Debris.Select(debris => DebrisWays.Of(question.Question, debris))];
                var work = new BenchWork(question.Question.Family, question.Minutes);
                var model = ChoiceModel.Of(question, ways, Deciding.Of(FixedLooks.Of(question.Question, ways, [])).Parts, work);
                if (model.Units.Length > 9)
                    return;
                double least = model.Expected(LookSearch.All(model, LookMask.Most));
                double found = model.Expected(LookSearch.Searched(model, LookMask.Most, 0));
                Assert.True(found >= least);
                Assert.True(model.Bound <= least + 0.001, $"a bound of {model.Bound} over {least}");
                best += least;
                searched += found;
            },
            mostParts: 40);
        Assert.True(searched <= best * 1.002, $"{searched} where {best} is least");
    }

    [Fact]
    public void Is_to_be_expected_to_take_what_its_histories_take() => ForEvery.Case(
        asked =>
        {
            ChoiceQuestion question = Question(asked);
            LookPlan plan = DecidingLooks.Choose(question);
            ImmutableArray<LookHistory> histories = plan.Plan.Histories!.Value;
            var reference = new ReferenceExpectation(question, plan);

            Assert.Equal(1, histories.Sum(reference.Likelihood), 1e-9);
            Assert.Equal(histories.Sum(history => reference.Likelihood(history) * reference.Minutes(history)), plan.MinutesExpected, 0.01);
            Assert.Equal(reference.Minutes(histories[0]), plan.MinutesAllClean, 0.01);
            Assert.Equal(histories.Max(reference.Minutes), plan.MinutesMost, 0.01);
        },
        mostParts: 30);

    [Fact]
    public void Keeps_to_the_letters_and_to_256_histories() => ForEvery.Case(
        asked =>
        {
            Random chance = ForEvery.ChanceFor(asked);
            ChoiceQuestion question = Question(asked) with { MostLooks = chance.Next(0, 17) };
            LookPlan plan = DecidingLooks.Choose(question);

            Assert.True(plan.Plan.Looks.Length <= question.MostLooks);
            Assert.True(plan.Plan.Histories!.Value.Length <= 256);
            Assert.True(plan.MinutesExpected <= DecidingLooks.Choose(question with { MostLooks = 0 }).MinutesExpected + 0.01 || plan.Method == ChoiceMethod.Search || !IsPlain(question));
            for (int look = 0; look < plan.Plan.Looks.Length; look++)
                Assert.All(plan.Plan.Looks[look].Due.OnlyIf, before => Assert.True(before < look));
        },
        mostParts: 80);

    [Fact]
    public void Changes_no_treatment_with_other_shares_once_the_looks_are_held_fixed() => ForEvery.Case(
        asked =>
        {
            Random chance = ForEvery.ChanceFor(asked);
            ChoiceQuestion question = Question(asked);
            LookPlan plan = DecidingLooks.Choose(question);
            ImmutableArray<PartId> places = [.. plan.Plan.Looks.SelectMany(look => look.Places)];
            Dictionary<PartId, double> shares = asked.Family.Parts.ToDictionary(part => part.Id, _ => chance.NextDouble());
            LookPlan one = DecidingLooks.Choose(question with { LookAt = places });
            LookPlan other = DecidingLooks.Choose(question with { LookAt = places, PassesOn = (part, _) => shares[part.Id] });

            Assert.Equal(Text(one.Plan), Text(other.Plan));
        },
        mostParts: 60);

    [Fact]
    public void Does_not_depend_on_names_or_on_the_order_of_the_file() => ForEvery.Case(
        asked =>
        {
            Random chance = ForEvery.ChanceFor(asked);
            LookPlan plan = DecidingLooks.Choose(Question(Unlike(asked)));
            TestCase renamed = Unlike(asked, part => $"x{part}");
            LookPlan same = DecidingLooks.Choose(Question(renamed));
            TestCase plain = Unlike(asked);
            TestCase shuffled = plain with { Family = SystemBuilder.Build(Shuffled(plain.Family.Parts, chance), plain.Family.Joints, plain.Family.States) };
            LookPlan moved = DecidingLooks.Choose(Question(shuffled));

            Assert.Equal(plan.Plan.Looks.Select(look => string.Join('+', look.Places.Select(place => $"x{place}"))), same.Plan.Looks.Select(look => string.Join('+', look.Places)));
            Assert.Equal(plan.MinutesExpected, same.MinutesExpected, 0.01);
            if (plan.Method == ChoiceMethod.All && IsPlain(Question(Unlike(asked))))
                Assert.Equal(plan.MinutesExpected, moved.MinutesExpected, 0.01);
        },
        mostParts: 30);

    private static IEnumerable<Part> Shuffled(ImmutableArray<Part> parts, Random chance)
    {
        Part[] shuffled = [.. parts];
        chance.Shuffle(shuffled);
        return shuffled.Select(part => part with { Access = [.. shuffled.Select(other => other.Id).Where(part.Access.Contains)] });
    }

    private static bool IsPlain(ChoiceQuestion question) => question.Question.Debris.Length == 1 && question.Question.Findings.IsEmpty
        && question.Question.Family.Parts.All(part => part.Holds.IsEmpty && part.Passage is null) && question.Question.Family.Joints.All(joint => joint.Passage is null);

    // The same system without numbers of one part, and under other names.
    private static TestCase Unlike(TestCase asked, Func<string, string>? name = null)
    {
        PartId Named(PartId id) => new(name?.Invoke(id.Value) ?? id.Value);
        Family family = SystemBuilder.Build(
            asked.Family.Parts.Select(part => part with { Id = Named(part.Id), Name = "", RepeatOf = null, RepeatIndex = 0, Access = [.. part.Access.Select(Named)], Inspect = part.Inspect is null ? null : part.Inspect with { Access = null } }),
            asked.Family.Joints.Select(joint => joint with { From = Named(joint.From), To = Named(joint.To), OnlyIfFailed = joint.OnlyIfFailed is { } condition ? Named(condition) : null }),
            asked.Family.States);
        return asked with
        {
            Family = family,
            Failed = [.. asked.Failed.Select(Named)],
            Own = [.. asked.Own.Select(own => own with { Part = Named(own.Part) })],
            Findings = [.. asked.Findings.Select(finding => finding with { Part = Named(finding.Part) })],
            Standard = new ShopStandard
            {
                Id = asked.Standard.Id,
                Sha256 = asked.Standard.Sha256,
                Kinds = asked.Standard.Kinds,
                Debris = asked.Standard.Debris,
                CleanFindings = asked.Standard.CleanFindings,
                Times = asked.Standard.Times,
                Rules = [.. asked.Standard.Rules.Where(rule => rule.For.Part is null)],
            },
        };
    }

    internal static ChoiceQuestion Question(TestCase asked) => new(LooksCase.QuestionOf(asked), new Procedure.WorkTimes(asked.Standard).Of, static (part, debris) => part.Kind.IsFilter ? 0.2 : debris.IsHard ? 0.7 : 0.9) { MinutesADecision = 0 };

    private static ImmutableArray<PartId> Places(ChoiceQuestion question)
    {
        ImmutableArray<DebrisWays> ways = [.. question.Question.Debris.Select(debris => DebrisWays.Of(question.Question, debris))];
        return [.. ChoiceUnits.Places(question.Question, ways).Select(place => question.Question.Family.Parts[place].Id)];
    }

    private static string Text(DecidedPlan plan) => string.Join('\n',
    [
        .. plan.Looks.Select(look => $"{string.Join('+', look.Places)} {look.Due}"),
        .. plan.Parts.Select(part => $"{part.Part.Id}: {string.Join("; ", part.Treatments.Select(one => $"{one.Treatment} {one.When}"))}"),
        .. plan.Histories!.Value.Select(history => history.ToString()),
    ]);
}
