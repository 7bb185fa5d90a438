using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Audits;

/// <summary>Plans the same failures twice and says what differs and which rule or joint makes the difference.</summary>
/// <remarks>Cost: two plans a failure and side, one with looks and one without; failures are gone through side by side, and the answer does not depend on how many at once.</remarks>
public static class Comparing
{
    /// <summary>Every failure that both sides have: a part of one id that sheds the same debris in both.</summary>
    /// <param name="pairs">The two sides, a pair for each family; under two standards both sides are the same family.</param>
    /// <param name="first">What the first side is called.</param>
    /// <param name="second">What the second side is called.</param>
    /// <param name="jobs">How many failures at once, at least 1.</param>
    /// <param name="progress">Told how many are done of how many; called from any thread.</param>
    public static ComparisonAnswer All(ImmutableArray<(ComparedSide First, ComparedSide Second)> pairs, string first, string second, int jobs = 1, Action<int, int>? progress = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(jobs, 1);
        (int Pair, Part Part, Debris Debris)[] asked = [.. pairs.SelectMany((pair, index) => FailuresOf(pair.First.Family).Where(failure => Has(pair.Second.Family, failure)).Select(failure => (index, failure.Part, failure.Debris)))];
        var compared = new ComparedFailure[asked.Length];
        int done = 0;
        Parallel.For(0, asked.Length, new ParallelOptions { MaxDegreeOfParallelism = jobs }, place =>
        {
            (int pair, Part part, Debris debris) = asked[place];
            compared[place] = One(pairs[pair].First, pairs[pair].Second, new ComparedQuestion([part.Id], [debris]), takesFirstSchedule: true);
            progress?.Invoke(Interlocked.Increment(ref done), asked.Length);
        });
        return new ComparisonAnswer(first, second, [.. compared])
        {
            OnlyFirst = [.. pairs.SelectMany(pair => FailuresOf(pair.First.Family).Where(failure => !Has(pair.Second.Family, failure)).Select(failure => NameOf(pair.First.Family, failure)))],
            OnlySecond = [.. pairs.SelectMany(pair => FailuresOf(pair.Second.Family).Where(failure => !Has(pair.First.Family, failure)).Select(failure => NameOf(pair.Second.Family, failure)))],
        };
    }

    /// <summary>One failure.</summary>
    /// <exception cref="KeyNotFoundException">A failed part is not in one of the families.</exception>
    public static ComparedFailure One(ComparedSide first, ComparedSide second, ComparedQuestion question) => One(first, second, question, takesFirstSchedule: false);

    private static ComparedFailure One(ComparedSide first, ComparedSide second, ComparedQuestion question, bool takesFirstSchedule)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(question);
        BothPlans Plan(ComparedSide side) => BothPlans.Of(new PlanRequest(side.Family, side.Standard, question.Failures, question.Debris) { TakesFirstSchedule = takesFirstSchedule });
        var name = new FailureName(first.Family.Id, [.. question.Failures.PartsOf().Select(part => part.Value)], [.. question.Debris.Select(debris => debris.Name)]);
        return new ComparedFailure(name, PlanSides.Lay(Plan(first), first.Family, Plan(second), second.Family));
    }

    private static IEnumerable<(Part Part, Debris Debris)> FailuresOf(Family family) => family.Parts.SelectMany(part => part.Sheds.Select(shed => (part, shed.Debris)));

    private static bool Has(Family family, (Part Part, Debris Debris) failure) => family.Find(failure.Part.Id)?.ShedOf(failure.Debris) is not null;

    private static FailureName NameOf(Family family, (Part Part, Debris Debris) failure) => new(family.Id, [failure.Part.Id.Value], [failure.Debris.Name]);
}
