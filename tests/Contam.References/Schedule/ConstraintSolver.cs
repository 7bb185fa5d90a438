using System.Globalization;
using Google.OrTools.Sat;

namespace Contam.Procedure.References;

/// <summary>What the solver found.</summary>
/// <param name="Shortest">The shortest schedule it found, in minutes.</param>
/// <param name="Bound">No schedule is shorter than this, in minutes.</param>
/// <param name="IsProven">Whether it proved that the two are one.</param>
internal sealed record SolverAnswer(double Shortest, double Bound, bool IsProven);

/// <summary>
/// The shortest schedule by a general-purpose constraint solver (the CP-SAT solver of OR-Tools), which knows nothing of how ours is made. One worker, a fixed seed and a limit
/// on its own count of work, not on time, so that a run can be repeated.
/// </summary>
internal static class ConstraintSolver
{
    // The two ways of filtering prove more lists in the same work, as most of ours are short of hands.
    private const string Settings = "num_workers:1 random_seed:1 use_overload_checker_in_cumulative:true use_timetable_edge_finding_in_cumulative:true max_deterministic_time:";

    /// <summary>Solves the work, beginning at a schedule that is known.</summary>
    /// <param name="graph">The jobs.</param>
    /// <param name="technicians">At least 1.</param>
    /// <param name="known">A start for each job by number, in minutes; empty for none known.</param>
    /// <param name="mostWork">How much the solver may work, in its own measure, which is about seconds of a fast machine.</param>
    public static SolverAnswer Solve(JobGraph graph, int technicians, double[] known, double mostWork = 0.5)
    {
        long[] seconds = [.. graph.Jobs.Select(job => Seconds(job.Minutes))];
        // The solver counts in whole numbers, and the fewer there are the better for it.
        long tick = Math.Max(1, seconds.Aggregate(0L, Common));
        long[] length = [.. seconds.Select(one => one / tick)];
        long horizon = length.Sum();

        var model = new CpModel();
        IntVar end = model.NewIntVar(LeastEnd(graph, technicians, length), horizon, "end");
        IntVar[] start = [.. graph.Jobs.Select(job => model.NewIntVar(0, horizon - length[job.Id], $"start {job.Id}"))];
        CumulativeConstraint hands = model.AddCumulative(technicians);
        foreach (Job job in graph.Jobs)
        {
            foreach (int next in graph.After(job.Id))
                model.Add(start[next] >= start[job.Id] + length[job.Id]);
            model.Add(end >= start[job.Id] + length[job.Id]);
            if (known.Length > 0)
                model.AddHint(start[job.Id], Math.Clamp(Seconds(known[job.Id]) / tick, 0, horizon - length[job.Id]));
            if (job.NeedsHands)
                hands.AddDemand(model.NewFixedSizeIntervalVar(start[job.Id], length[job.Id], $"work {job.Id}"), 1);
        }

        model.Minimize(end);
        var solver = new CpSolver { StringParameters = Settings + mostWork.ToString(CultureInfo.InvariantCulture) };
        CpSolverStatus status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            throw new InvalidOperationException($"the solver answers {status}");
        return new SolverAnswer(InMinutes(solver.ObjectiveValue), InMinutes(solver.BestObjectiveBound), status == CpSolverStatus.Optimal);

        double InMinutes(double ticks) => ticks * tick / 60;
    }

    /// <summary>
    /// A redundant cut: of jobs that each have at least <c>h</c> to wait before and <c>t</c> to follow after, all the work lies between <c>h</c> and <c>end − t</c>, so
    /// <c>hands × (end − h − t) ≥ work</c>, in whole ticks. It says nothing new, but without it the solver does not prove the optimum of plain lists: it gives up at a bound
    /// up to two fifths too low. Written here from the definition by plain repetition, so that nothing of the library's own bounds is trusted.
    /// </summary>
    private static long LeastEnd(JobGraph graph, int technicians, long[] length)
    {
        var head = new long[length.Length];
        var tail = new long[length.Length];
        for (bool hasChanged = true; hasChanged;)
        {
            hasChanged = false;
            for (int job = 0; job < length.Length; job++)
            {
                foreach (int next in graph.After(job))
                {
                    hasChanged |= Raise(ref head[next], head[job] + length[job]);
                    hasChanged |= Raise(ref tail[job], tail[next] + length[next]);
                }
            }
        }

        int[] worked = [.. graph.Jobs.Where(job => job.NeedsHands).Select(job => job.Id)];
        long least = graph.Jobs.Max(job => head[job.Id] + length[job.Id] + tail[job.Id]);
        foreach (long before in worked.Select(job => head[job]).Distinct())
        {
            foreach (long after in worked.Select(job => tail[job]).Distinct())
            {
                long work = worked.Where(job => head[job] >= before && tail[job] >= after).Sum(job => length[job]);
                if (work > 0)
                    least = Math.Max(least, before + after + ((work + technicians - 1) / technicians));
            }
        }

        return least;
    }

    private static bool Raise(ref long value, long atLeast)
    {
        if (value >= atLeast)
            return false;
        value = atLeast;
        return true;
    }

    private static long Seconds(double minutes)
    {
        long seconds = (long)Math.Round(minutes * 60);
        if (Math.Abs((minutes * 60) - seconds) > 1e-6)
            throw new ArgumentException($"{minutes} min is no whole number of seconds", nameof(minutes));
        return seconds;
    }

    private static long Common(long left, long right)
    {
        while (right != 0)
            (left, right) = (right, left % right);
        return left;
    }
}
