using System.Globalization;

namespace Contam.Procedure.References;

/// <summary>
/// The library's schedules beside what a general-purpose constraint solver finds. Where the solver does not prove its own to be the shortest, ours is judged by the solver's bound,
/// which is never more than the optimum, so that the judgement is only stricter.
/// </summary>
public sealed class Against_a_constraint_solver(ITestOutputHelper output)
{
    private const int Plans = 100;
    private const double Rounding = 1e-6;

    private static readonly Lazy<Judged[]> All = new(Judge);

    [Fact]
    public void Schedules_are_within_3_percent_on_average_and_never_10_percent_longer()
    {
        Print("all", All.Value);
        Print("shipped", [.. All.Value.Where(one => !IsGenerated(one))]);
        Print("generated", [.. All.Value.Where(IsGenerated)]);
        for (int technicians = 1; technicians <= KnownWork.MostTechnicians; technicians++)
            Print($"technicians {technicians}", [.. All.Value.Where(one => one.Work.Technicians == technicians)]);
        Print("short of hands", [.. All.Value.Where(one => one.IsShortOfHands)]);
        foreach (Judged one in All.Value.OrderByDescending(one => one.Over).Take(5))
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {one.Work}: ours {one.Work.Ours.Elapsed}, found {one.Answer.Shortest}, bound {one.Answer.Bound}"));

        Assert.InRange(All.Value.Average(one => one.Over), -Rounding, 0.03);
        Assert.Equal([], All.Value.Where(one => one.Over > 0.10).Select(one => one.Work.ToString()));
    }

    [Fact]
    public void Schedules_can_be_worked() => Assert.Equal([], All.Value.SelectMany(one => one.Work.Faults()));

    [Fact]
    public void The_bound_that_a_plan_states_is_beaten_by_no_schedule() => Assert.Equal(
        [],
        All.Value.Where(one => LowerBounds.Of(one.Work.Graph, one.Work.Technicians) > one.Answer.Shortest + Rounding).Select(one => one.Work.ToString()));

    /// <summary>An average over easy lists says nothing: half at least must be longer than the longest chain, and a fifth must have jobs that need no hands.</summary>
    [Fact]
    public void The_lists_are_of_20_to_60_jobs_and_not_all_easy()
    {
        Judged[] generated = [.. All.Value.Where(IsGenerated)];
        Assert.Equal(Plans * 2 * KnownWork.MostTechnicians, generated.Length);
        Assert.All(All.Value, one => Assert.InRange(one.Work.Graph.Jobs.Count, KnownWork.Fewest, KnownWork.Most));
        Assert.InRange(All.Value.Count(one => one.IsShortOfHands), All.Value.Length / 2, All.Value.Length);
        Assert.InRange(All.Value.Count(one => one.Work.Graph.Jobs.Any(job => job.IsWait && job.Minutes > 0)), All.Value.Length / 5, All.Value.Length);
        Assert.InRange(All.Value.Count(one => one.Answer.IsProven), All.Value.Length * 9 / 10, All.Value.Length);
    }

    private static bool IsGenerated(Judged one) => one.Work.Name.StartsWith("seed ", StringComparison.Ordinal);

    private static Judged[] Judge()
    {
        Work[] works = [.. KnownWork.Shipped(), .. KnownWork.Generated(Plans)];
        var judged = new Judged[works.Length];
        // Each is solved by one worker, so the answers do not depend on how many are solved at once.
        var asManyAsCores = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, works.Length, asManyAsCores, i => judged[i] = new Judged(works[i], ConstraintSolver.Solve(works[i].Graph, works[i].Technicians, works[i].Starts)));
        return judged;
    }

    private void Print(string name, Judged[] some) => output.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{name}: {some.Length} lists, {some.Count(one => one.Answer.IsProven)} proven; ours longer by {100 * some.Average(one => one.Over):F3} % on average, {100 * some.Max(one => one.Over):F2} % at worst; longer than what the solver found: {some.Count(one => one.Work.Ours.Elapsed > one.Answer.Shortest + Rounding)}; short of hands: {some.Count(one => one.IsShortOfHands)}"));

    private sealed record Judged(Work Work, SolverAnswer Answer)
    {
        /// <summary>By how much of the bound ours is longer than it.</summary>
        public double Over => (Work.Ours.Elapsed / Answer.Bound) - 1;

        /// <summary>Whether the longest chain is not all there is to wait for.</summary>
        public bool IsShortOfHands => Work.Ours.Elapsed > Chains.Of(Work.Graph).Longest + Rounding;
    }
}
