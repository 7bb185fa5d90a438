namespace Contam.Procedure.References;

/// <summary>
/// The construction project of Hillier and Lieberman, "Introduction to Operations Research", chapter on project management: activities, weeks, predecessors, the 44 weeks and the
/// critical path from memory, sure; the slacks follow from these and were worked out again apart from this library.
/// </summary>
public sealed class The_construction_project
{
    private static readonly (string Name, int Weeks, string After)[] Activities =
    [
        ("A", 2, ""), ("B", 4, "A"), ("C", 10, "B"), ("D", 6, "C"), ("E", 4, "C"), ("F", 5, "E"), ("G", 7, "D"),
        ("H", 9, "EG"), ("I", 7, "C"), ("J", 8, "FI"), ("K", 4, "J"), ("L", 5, "J"), ("M", 2, "H"), ("N", 6, "KL"),
    ];

    [Theory]
    [InlineData(4)]
    [InlineData(14)]
    public void Takes_44_weeks_where_no_activity_waits_for_hands(int technicians)
    {
        JobGraph graph = Graph(isWait: false);
        Assert.Equal(44, Work.ScheduleOf(graph, technicians).Elapsed);
        Assert.Equal(44, LowerBounds.Of(graph, technicians));
    }

    /// <summary>Each activity has a crew of its own, so that what may be put off is a matter of the order alone, as in the book.</summary>
    [Fact]
    public void Has_the_slacks_of_the_book()
    {
        JobGraph graph = Graph(isWait: true);
        double[] slack = Slack.Of(graph, Work.ScheduleOf(graph, technicians: 1));
        Assert.Equal("A 0, B 0, C 0, D 4, E 0, F 0, G 4, H 4, I 2, J 0, K 1, L 0, M 4, N 0", string.Join(", ", Activities.Select((activity, job) => $"{activity.Name} {slack[job]}")));
    }

    [Fact]
    public void Has_the_critical_path_of_the_book()
    {
        JobGraph graph = Graph(isWait: true);
        Schedule schedule = Work.ScheduleOf(graph, technicians: 1);
        double[] slack = Slack.Of(graph, schedule);
        Assert.Equal("ABCEFJLN", string.Concat(schedule.Jobs.Where(job => slack[job.Job] == 0).Select(job => Activities[job.Job].Name)));
    }

    [Fact]
    public void Takes_the_sum_of_all_weeks_by_one_pair_of_hands()
    {
        JobGraph graph = Graph(isWait: false);
        Assert.Equal(Activities.Sum(activity => activity.Weeks), Work.ScheduleOf(graph, technicians: 1).Elapsed);
    }

    /// <summary>For two and three the book says nothing; the constraint solver does.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Takes_as_long_as_the_constraint_solver_proves(int technicians)
    {
        JobGraph graph = Graph(isWait: false);
        SolverAnswer answer = ConstraintSolver.Solve(graph, technicians, known: []);
        Assert.True(answer.IsProven);
        Assert.Equal(answer.Shortest, Work.ScheduleOf(graph, technicians).Elapsed, 1e-9);
    }

    private static JobGraph Graph(bool isWait)
    {
        var graph = new JobGraph();
        Job[] jobs = [.. Activities.Select(activity => graph.Add(id => new Job(id, Phase.CleanOut, StepAction.Clean) { Minutes = activity.Weeks, IsWait = isWait }))];
        foreach ((string name, _, string after) in Activities)
        {
            foreach (char before in after)
                graph.Order(JobOf(before.ToString()), JobOf(name));
        }

        return graph;

        Job JobOf(string name) => jobs[Array.FindIndex(Activities, activity => activity.Name == name)];
    }
}
