namespace Contam.Procedure.References;

/// <summary>
/// Two of Patterson's project-scheduling instances with several kinds of resource, as printed in the public repository ptal/kobe-scheduling, data/rcpsp/patterson.rcp (pat1, pat2), with their
/// optima there: 19 and 7; both optima were proven again by exhaustive search apart from this library. A line is: job, duration, demand for r1, r2, r3, successors.
/// <para>
/// This library knows one kind of resource, technicians, of which a job takes one or none, so an instance cannot be carried whole. What is carried is one kind at a time: the kind's capacity as
/// technicians, and for each job as many equal jobs side by side as its demand for that kind, or one that needs no hands where it has none. Any schedule of the instance is a
/// schedule of each of these, so none of them can need longer than the instance's optimum, and none can be shorter than its longest chain (18 and 6, printed with the instances).
/// </para>
/// </summary>
public sealed class Small_proven_instances
{
    private static readonly int[] Pat1Capacity = [2, 1, 2];

    private static readonly int[][] Pat1 =
    [
        [0, 0, 0, 0, 2, 3, 4], [6, 1, 0, 0, 9, 10], [4, 0, 0, 0, 5, 6, 7], [3, 0, 0, 0, 8, 11], [1, 0, 0, 0, 10], [6, 1, 0, 1, 12], [2, 1, 0, 0, 8, 11],
        [1, 0, 0, 0, 13], [4, 0, 1, 1, 14], [3, 0, 0, 1, 12], [2, 0, 0, 1, 12], [3, 0, 1, 0, 13], [5, 0, 0, 0, 14], [0, 0, 0, 0],
    ];

    private static readonly int[] Pat2Capacity = [5, 5, 3];

    private static readonly int[][] Pat2 =
    [
        [0, 0, 0, 0, 2, 3], [1, 1, 2, 2, 4, 5], [2, 0, 2, 1, 6], [2, 3, 3, 3, 7], [3, 2, 1, 3, 6], [2, 1, 1, 0, 7], [0, 0, 0, 0],
    ];

    [Fact]
    public void Have_the_printed_longest_chains()
    {
        Assert.Equal(18, Chains.Of(Carried(Pat1, 0)).Longest);
        Assert.Equal(6, Chains.Of(Carried(Pat2, 0)).Longest);
    }

    /// <summary>The third kind of resource is the one that makes either instance longer than its longest chain, so with it alone the published optimum must come out.</summary>
    [Fact]
    public void Take_their_published_optimum_for_the_resource_that_is_short()
    {
        Assert.Equal(19, Work.ScheduleOf(Carried(Pat1, 2), Pat1Capacity[2]).Elapsed);
        Assert.Equal(7, Work.ScheduleOf(Carried(Pat2, 2), Pat2Capacity[2]).Elapsed);
    }

    /// <summary>The other two kinds have room enough for the longest chain to be all there is to wait for, which the solver must find too.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Take_their_longest_chain_for_each_resource_that_is_not_short(int kind)
    {
        Assert.Equal(18, Work.ScheduleOf(Carried(Pat1, kind), Pat1Capacity[kind]).Elapsed);
        Assert.Equal(6, Work.ScheduleOf(Carried(Pat2, kind), Pat2Capacity[kind]).Elapsed);
    }

    /// <summary>Judges the judge: the constraint solver, given no schedule to begin at, proves the same optima.</summary>
    [Theory]
    [InlineData(0, 18, 6)]
    [InlineData(1, 18, 6)]
    [InlineData(2, 19, 7)]
    public void Are_solved_alike_by_the_constraint_solver(int kind, double pat1, double pat2)
    {
        Assert.Equal(new SolverAnswer(pat1, pat1, IsProven: true), ConstraintSolver.Solve(Carried(Pat1, kind), Pat1Capacity[kind], known: []));
        Assert.Equal(new SolverAnswer(pat2, pat2, IsProven: true), ConstraintSolver.Solve(Carried(Pat2, kind), Pat2Capacity[kind], known: []));
    }

    private static JobGraph Carried(int[][] instance, int kind)
    {
        var graph = new JobGraph();
        Job[][] jobs = [.. instance.Select(line => Enumerable.Range(0, Math.Max(1, line[1 + kind]))
            .Select(_ => graph.Add(id => new Job(id, Phase.CleanOut, StepAction.Clean) { Minutes = line[0], IsWait = line[1 + kind] == 0 }))
            .ToArray())];
        for (int job = 0; job < instance.Length; job++)
        {
            foreach (int next in instance[job][4..])
            {
                foreach (Job first in jobs[job])
                {
                    foreach (Job then in jobs[next - 1])
                        graph.Order(first, then);
                }
            }
        }

        return graph;
    }
}
