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
public sealed class Small_proven_instances(ITestOutputHelper output)
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

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Pat1_takes_for_each_kind_of_resource_what_the_solver_proves_and_at_most_19(int kind) => Check(Carried(Pat1, kind), Pat1Capacity[kind], 18, 19);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Pat2_takes_for_each_kind_of_resource_what_the_solver_proves_and_at_most_7(int kind) => Check(Carried(Pat2, kind), Pat2Capacity[kind], 6, 7);

    private void Check(JobGraph graph, int technicians, double atLeast, double atMost)
    {
        SolverAnswer answer = ConstraintSolver.Solve(graph, technicians, known: []);
        double ours = Work.ScheduleOf(graph, technicians).Elapsed;
        Assert.True(answer.IsProven);
        Assert.Equal(answer.Shortest, ours, 1e-9);
        Assert.InRange(ours, atLeast, atMost);
        output.WriteLine($"optimum {ours}");
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
