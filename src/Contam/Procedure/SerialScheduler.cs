using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>
/// Puts jobs one by one at the earliest time at which what they wait for is finished and a technician is free for the whole of them, also into gaps left
/// earlier (the serial schedule generation scheme; Kelley 1963, described by Kolisch, European Journal of Operational Research 90, 1996). Some list of the jobs
/// always gives a shortest schedule. Cost: the square of the jobs.
/// </summary>
internal sealed class SerialScheduler
{
    private readonly Job[] jobs;
    private readonly int[][] before;
    private readonly int[][] after;
    private readonly int technicians;

    public SerialScheduler(JobGraph graph, int technicians)
    {
        jobs = [.. graph.Jobs];
        before = [.. jobs.Select(job => graph.Before(job.Id).ToArray())];
        after = [.. jobs.Select(job => graph.After(job.Id).ToArray())];
        this.technicians = technicians;
    }

    /// <summary>Start times, taking of the jobs whose turn has come the one of the highest urgency first; ties by number.</summary>
    public double[] Forward(double[] urgency) => Place(urgency, before, after);

    /// <summary>
    /// Start times after packing the schedule to its end and then to its beginning again, which never makes it longer
    /// (double justification; Valls, Ballestín and Quintanilla, European Journal of Operational Research 165, 2005).
    /// </summary>
    public double[] Justify(double[] start)
    {
        double[] mirrored = Place([.. jobs.Select(job => start[job.Id] + job.Minutes)], after, before);
        double end = EndOf(mirrored);
        return Place([.. jobs.Select(job => -(end - mirrored[job.Id] - job.Minutes))], before, after);
    }

    public double EndOf(double[] start) => jobs.Length == 0 ? 0 : jobs.Max(job => start[job.Id] + job.Minutes);

    /// <summary>The schedule of these start times: each job that needs hands goes to the free technician of the lowest number.</summary>
    public Schedule ToSchedule(double[] start)
    {
        int[] depth = Depths();
        Job[] inOrder = [.. jobs.OrderBy(job => start[job.Id]).ThenBy(job => depth[job.Id]).ThenBy(job => job.Id)];
        var freeFrom = new double[technicians + 1];
        var scheduled = ImmutableArray.CreateBuilder<ScheduledJob>(jobs.Length);
        foreach (Job job in inOrder)
        {
            int technician = 0;
            if (job.NeedsHands)
            {
                technician = Enumerable.Range(1, technicians).First(one => freeFrom[one] <= start[job.Id] + 1e-9);
                freeFrom[technician] = start[job.Id] + job.Minutes;
            }

            scheduled.Add(new ScheduledJob(job.Id, start[job.Id], start[job.Id] + job.Minutes, technician));
        }

        return new Schedule(scheduled.MoveToImmutable(), technicians);
    }

    private double[] Place(double[] urgency, int[][] waitFor, int[][] release)
    {
        var start = new double[jobs.Length];
        var left = new int[jobs.Length];
        var turn = new PriorityQueue<int, (double, int)>();
        var hands = new HandsInUse(technicians);
        for (int job = 0; job < jobs.Length; job++)
        {
            left[job] = waitFor[job].Length;
            if (left[job] == 0)
                turn.Enqueue(job, (-urgency[job], job));
        }

        while (turn.TryDequeue(out int job, out _))
        {
            double earliest = 0;
            foreach (int first in waitFor[job])
                earliest = Math.Max(earliest, start[first] + jobs[first].Minutes);
            start[job] = jobs[job].NeedsHands ? hands.Take(earliest, jobs[job].Minutes) : earliest;
            foreach (int next in release[job])
            {
                if (--left[next] == 0)
                    turn.Enqueue(next, (-urgency[next], next));
            }
        }

        return start;
    }

    /// <summary>How many jobs must come before each at least: of jobs that start together, one that another waits for comes first.</summary>
    private int[] Depths()
    {
        var depth = new int[jobs.Length];
        var left = before.Select(list => list.Length).ToArray();
        var queue = new Queue<int>(Enumerable.Range(0, jobs.Length).Where(job => left[job] == 0));
        while (queue.TryDequeue(out int job))
        {
            foreach (int next in after[job])
            {
                depth[next] = Math.Max(depth[next], depth[job] + 1);
                if (--left[next] == 0)
                    queue.Enqueue(next);
            }
        }

        return depth;
    }
}
