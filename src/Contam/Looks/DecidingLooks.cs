using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;
using Contam.StopLines;

namespace Contam.Looks;

/// <summary>
/// Which looks decide how far to go, and what each part then needs. The door of this folder.
/// <para>
/// Of the places where a clean finding would count, those that are to be expected to take the least bench time: looks, what comes off for them alone, and
/// treatments, over all histories, each as likely as it is (<see cref="Expecting"/>). At most 16 looks and 256 histories. How often debris passes on chooses and
/// ranks looks; with the looks held fixed it changes no treatment of any history (<see cref="Deciding"/>).
/// </para>
/// </summary>
internal static class DecidingLooks
{
    /// <summary>Answers the question. The same question always gives the same looks.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More looks are asked for than there are letters, or fewer than none.</exception>
    /// <exception cref="ArgumentException">A place is named at which a look decides nothing, or so many that there are more looks than letters or more histories than a plan may have.</exception>
    /// <exception cref="KeyNotFoundException">A place is named that the family does not have.</exception>
    public static LookPlan Choose(ChoiceQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentOutOfRangeException.ThrowIfNegative(asked.MostLooks);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(asked.MostLooks, LookMask.Most);
        LookQuestion question = asked.Question;
        ImmutableArray<DebrisWays> ways = [.. question.Debris.Select(debris => DebrisWays.Of(question, debris))];
        var work = new BenchWork(question.Family, asked.Minutes);
        DecidedPlan flat = Deciding.Of(FixedLooks.Of(question, ways, []));
        var model = ChoiceModel.Of(asked, ways, flat.Parts, work);
        int placesThatCould = ChoiceUnits.Places(question, ways).Length;
        if (asked.LookAt is { } named)
            return Finished(Named(named), ChoiceMethod.Named);
        if (asked.MostLooks == 0)
            return Finished(FixedLooks.Of(question, ways, []), ChoiceMethod.Named);

        (ulong chosen, bool isAll) = LookSearch.Least(model, asked.MostLooks, model.Units.Length <= LookSearch.MostForAll ? 0 : StopLine());
        while (true)
        {
            // Units that are not due together become several looks, and a look that others make void may bring more histories than were reckoned with.
            if (Arranged(chosen) is { } looks && Deciding.Of(looks) is { Histories: not null })
                return Finished(looks, isAll ? ChoiceMethod.All : ChoiceMethod.Search);
            chosen = WithoutOne(chosen);
        }

        FixedLooks Named(ImmutableArray<PartId> places)
        {
            var judge = new LookJudge(question, ways);
            foreach (PartId place in places)
            {
                if (judge.WhyNot(place) is { } because)
                    throw new ArgumentException($"a look at {place} decides nothing: {because}", nameof(asked));
            }

            return LookArrangement.Of(question, ways, LookArrangement.Like(places.Select(question.Family.IndexOf), question.Family), work, LookMask.Most)
                ?? throw new ArgumentException($"these places are more than {LookMask.Most} looks", nameof(asked));
        }

        FixedLooks? Arranged(ulong units) => LookArrangement.Of(question, ways, Indices(units).Select(unit => model.Units[unit]), work, asked.MostLooks);

        ulong WithoutOne(ulong units) => Indices(units).Select(unit => units & ~(1UL << unit)).MinBy(model.Expected);

        ulong StopLine()
        {
            var at = StopLineFinder.Of(new StopLineQuestion(question.Family, question.Standard, question.Failed, question.Debris) { Findings = question.Findings }).Looks
                .Select(look => question.Family.IndexOf(look.Part)).ToHashSet();
            return Enumerable.Range(0, model.Units.Length).Where(unit => model.Units[unit].Any(at.Contains)).Aggregate(0UL, (mask, unit) => mask | 1UL << unit);
        }

        LookPlan Finished(FixedLooks looks, ChoiceMethod method)
        {
            DecidedPlan plan = looks.Count == 0 ? flat : Deciding.Of(looks);
            ImmutableArray<LookHistory> histories = plan.Histories ?? throw new ArgumentException($"these looks can come out in more than {Histories.Most} ways", nameof(asked));
            var expecting = new Expecting(looks, plan, work, asked.PassesOn);
            double[] minutes = [.. histories.Select(expecting.Minutes)];
            double[] likely = [.. histories.Select(expecting.Likelihood)];
            return new LookPlan(plan, [.. Enumerable.Range(0, looks.Count).Select(look => new LookFigures(OddsOf(look), expecting.MinutesOf(look), expecting.MinutesHangingOn(look)))], method)
            {
                MinutesAllClean = minutes[0],
                MinutesExpected = minutes.Zip(likely, (one, share) => one * share).Sum(),
                MinutesMost = minutes.Max(),
                MinutesBound = Math.Min(model.Bound, minutes[0]),
                PlacesThatCould = placesThatCould,
            };

            double OddsOf(int look)
            {
                double made = 0, found = 0;
                for (int i = 0; i < histories.Length; i++)
                {
                    made += histories[i].Outcomes[look] is LookOutcome.Clean or LookOutcome.Void or LookOutcome.Found ? likely[i] : 0;
                    found += histories[i].Outcomes[look] is LookOutcome.Found ? likely[i] : 0;
                }

                return made > 0 ? found / made : 0;
            }
        }
    }

    private static IEnumerable<int> Indices(ulong units)
    {
        for (ulong left = units; left != 0; left &= left - 1)
            yield return BitOperations.TrailingZeroCount(left);
    }
}
