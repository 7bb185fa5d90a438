using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;

namespace Contam.Looks;

/// <summary>
/// What is chosen among: every place that could decide. Numbers of one part that debris comes to with the same odds, and that take the same, are chosen together.
/// </summary>
internal static class ChoiceUnits
{
    /// <summary>The places that could decide, in the order of the family.</summary>
    public static ImmutableArray<int> Places(LookQuestion question, ImmutableArray<DebrisWays> ways)
    {
        var judge = new LookJudge(question, ways);
        return [.. Enumerable.Range(0, question.Family.Parts.Length).Where(vertex => ways.Any(one => one.IsReached[vertex]) && judge.WhyNot(question.Family.Parts[vertex].Id) is null)];
    }

    public static ImmutableArray<ImmutableArray<int>> Of(ChoiceQuestion asked, ImmutableArray<DebrisWays> ways, BenchWork work)
    {
        Family family = asked.Question.Family;
        double[][] odds = [.. ways.Select(one => PassingOdds.From(one, one.Sources.Select(source => source.Vertex), family.Parts, asked.PassesOn))];
        // What nothing open leads to is cleared by what is on record: a look there is never due.
        bool[][] open = [.. ways.Select(one => Reachable.From(one.Joints, one.Sources.Select(source => source.Vertex), one.OnRecord.Contains))];
        ImmutableArray<ImmutableArray<int>> units =
        [
            .. Places(asked.Question, ways).Where(place => open.Any(one => one[place]))
                .GroupBy(place => (family.Parts[place].RepeatOf ?? $"={family.Parts[place].Id.Value}", string.Join(' ', odds.Select(one => Math.Round(one[place], 9))), work.Look(place)))
                .Select(group => group.ToImmutableArray()),
        ];
        if (units.Length <= ChoiceModel.MostUnits)
            return units;
        return
        [
            .. units.OrderByDescending(unit => Beyond(unit, ways).Sum(vertex => work.OffAndOn(vertex)) - unit.Sum(work.Look)).ThenBy(unit => unit[0])
                .Take(ChoiceModel.MostUnits).OrderBy(unit => unit[0]),
        ];
    }

    private static IEnumerable<int> Beyond(ImmutableArray<int> unit, ImmutableArray<DebrisWays> ways)
    {
        bool[] beyond = Reachable.From(ways[0].Joints, unit);
        return Enumerable.Range(0, beyond.Length).Where(vertex => beyond[vertex]);
    }
}
