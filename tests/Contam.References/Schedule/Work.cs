using Contam.Plans;

namespace Contam.Procedure.References;

/// <summary>Jobs with their order, for so many technicians, and the library's schedule of them.</summary>
/// <param name="Name">What it is, for messages.</param>
/// <param name="Graph">The jobs.</param>
/// <param name="Ours">The schedule.</param>
internal sealed record Work(string Name, JobGraph Graph, Schedule Ours)
{
    public int Technicians => Ours.Technicians;

    /// <summary>When each job begins, by number.</summary>
    public double[] Starts
    {
        get
        {
            var starts = new double[Graph.Jobs.Count];
            foreach (ScheduledJob job in Ours.Jobs)
                starts[job.Job] = job.Start;
            return starts;
        }
    }

    /// <summary>The steps of a plan as its document says them: minutes, whether hands are needed, what each comes after, and when it is worked.</summary>
    public static Work Of(string name, PlanDocument plan) => new(
        name,
        GraphOf(plan.Steps),
        new Schedule([.. plan.Steps.Select(step => new ScheduledJob(step.Number - 1, step.Start, step.Finish, step.Technician ?? 0))], plan.Hours.Technicians));

    /// <summary>
    /// The work of a plan in slices of at most so many steps, as even as may be, in the order of the plan. Whatever stands between two jobs of a slice in the order is in the slice too,
    /// so that no order among them is lost.
    /// </summary>
    public static IEnumerable<Work> Slices(string name, PlanDocument plan, int most, int technicians)
    {
        int slices = (plan.Steps.Length + most - 1) / most;
        for (int slice = 0; slice < slices; slice++)
        {
            int first = plan.Steps.Length * slice / slices;
            int end = plan.Steps.Length * (slice + 1) / slices;
            JobGraph graph = GraphOf(plan.Steps.Where(step => step.Number > first && step.Number <= end));
            yield return new Work($"{name}, steps {first + 1} to {end}", graph, ScheduleOf(graph, technicians));
        }
    }

    /// <summary>The same jobs and order with other minutes, and with more jobs that need no hands, as a send-out does not. The same chance gives the same work.</summary>
    public Work WithOtherMinutes(Random chance)
    {
        var graph = new JobGraph();
        foreach (Job job in Graph.Jobs)
        {
            bool isWait = job.IsWait || (job.Phase is Phase.CleanOut or Phase.Test && chance.Next(8) == 0);
            double minutes = job.Minutes == 0 ? 0 : isWait ? 5 * chance.Next(6, 97) : 5 * chance.Next(1, 25);
            graph.Add(id => new Job(id, job.Phase, job.Action) { Minutes = minutes, IsWait = isWait });
        }

        foreach (Job job in Graph.Jobs)
        {
            foreach (int next in Graph.After(job.Id))
                graph.Order(graph.Jobs[job.Id], graph.Jobs[next]);
        }

        return new Work(Name + ", other minutes", graph, ScheduleOf(graph, Technicians));
    }

    /// <summary>What makes the schedule one that cannot be worked, judged by the graph alone; empty where nothing does.</summary>
    public IEnumerable<string> Faults()
    {
        const double Rounding = 1e-6;
        ScheduledJob[] placed = [.. Ours.Jobs.OrderBy(job => job.Job)];
        if (!placed.Select(job => job.Job).SequenceEqual(Enumerable.Range(0, Graph.Jobs.Count)))
            yield return $"{this}: not every job is there once";
        foreach (ScheduledJob job in placed)
        {
            if (job.Start < 0 || Math.Abs(job.Finish - job.Start - Graph.Jobs[job.Job].Minutes) > Rounding)
                yield return $"{this}: job {job.Job} does not last as long as it must";
            if (Graph.Jobs[job.Job].NeedsHands != (job.Technician > 0) || job.Technician > Technicians)
                yield return $"{this}: job {job.Job} is done by technician {job.Technician}";
            foreach (int next in Graph.After(job.Job).Where(next => placed[next].Start < job.Finish - Rounding))
                yield return $"{this}: job {next} begins before job {job.Job} is finished";
        }

        foreach (IGrouping<int, ScheduledJob> one in placed.Where(job => job.Technician > 0).GroupBy(job => job.Technician))
        {
            ScheduledJob[] day = [.. one.Where(job => job.Finish > job.Start).OrderBy(job => job.Start)];
            for (int i = 1; i < day.Length; i++)
            {
                if (day[i].Start < day[i - 1].Finish - Rounding)
                    yield return $"{this}: technician {one.Key} does jobs {day[i - 1].Job} and {day[i].Job} at once";
            }
        }
    }

    public override string ToString() => $"{Name}, {Technicians} technician{(Technicians == 1 ? "" : "s")}";

    public static Schedule ScheduleOf(JobGraph graph, int technicians) => Scheduling.Best(graph, technicians, [.. graph.Jobs.Select(job => job.Id)]);

    private static JobGraph GraphOf(IEnumerable<PlanStep> steps)
    {
        var graph = new JobGraph();
        var jobOf = new Dictionary<int, Job>();
        foreach (PlanStep step in steps)
        {
            jobOf[step.Number] = graph.Add(id => new Job(id, step.Phase, step.Action) { Minutes = step.Minutes, IsWait = step.Technician is null });
            foreach (int before in step.After.Where(jobOf.ContainsKey))
                graph.Order(jobOf[before], jobOf[step.Number]);
        }

        return graph;
    }
}
