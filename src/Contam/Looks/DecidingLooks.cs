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
        if (asked.LookAt is { } named)
            return Finished(TriedLooks.Of(asked, Named(named), work), ChoiceMethod.Named);
        if (asked.MostLooks == 0)
            return Finished(TriedLooks.Of(asked, FixedLooks.Of(question, ways, []), work), ChoiceMethod.Named);

        (ulong chosen, bool isAll) = LookSearch.Least(model, asked.MostLooks, model.Units.Length <= LookSearch.MostForAll ? 0 : StopLine());
        return Finished(Pruned(chosen), isAll ? ChoiceMethod.All : ChoiceMethod.Search);

        // Where looks can be void the quick sums are not exact: then looks go, one by one, as long as it takes less without. Where units that are not due together have become
        // too many looks, or there are more histories than were reckoned with, some go in any case.
        TriedLooks Pruned(ulong units)
        {
            TriedLooks? best = Tried(units);
            while (units != 0 && best is not { IsAsReckoned: true })
            {
                (ulong fewer, TriedLooks? tried) = Indices(units).Select(unit => units & ~(1UL << unit)).Select(fewer => (Units: fewer, Tried: Tried(fewer))).MinBy(one => one.Tried?.Weight ?? double.PositiveInfinity);
                if (best is not null && (tried is null || tried.Weight >= best.Weight))
                    break;
                (units, best) = (fewer, tried);
            }

            return best ?? TriedLooks.Of(asked, FixedLooks.Of(question, ways, []), work);
        }

        TriedLooks? Tried(ulong units) =>
            LookArrangement.Of(question, ways, Indices(units).Select(unit => model.Units[unit]), work, asked.MostLooks) is { } looks && TriedLooks.Of(asked, looks, work) is { Plan.Histories: not null } tried ? tried : null;

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

        ulong StopLine()
        {
            var at = StopLineFinder.Of(new StopLineQuestion(question.Family, question.Standard, question.Failures, question.Debris) { Findings = question.Findings }).Looks
                .Select(look => question.Family.IndexOf(look.Part)).ToHashSet();
            return Enumerable.Range(0, model.Units.Length).Where(unit => model.Units[unit].Any(at.Contains)).Aggregate(0UL, (mask, unit) => mask | 1UL << unit);
        }

        LookPlan Finished(TriedLooks looks, ChoiceMethod method) => looks.Plan.Histories is null
            ? throw new ArgumentException($"these looks can come out in more than {Histories.Most} ways", nameof(asked))
            : new LookPlan(looks.Plan, looks.Figures(), method)
            {
                Likely = looks.Likely,
                MinutesAllClean = looks.MinutesAllClean,
                MinutesExpected = looks.MinutesExpected,
                MinutesMost = looks.MinutesMost,
                MinutesBound = Math.Min(model.Bound, looks.MinutesAllClean),
                PlacesThatCould = ChoiceUnits.Places(question, ways).Length,
            };
    }

    private static IEnumerable<int> Indices(ulong units)
    {
        for (ulong left = units; left != 0; left &= left - 1)
            yield return BitOperations.TrailingZeroCount(left);
    }
}
