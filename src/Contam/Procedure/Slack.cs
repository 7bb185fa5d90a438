namespace Contam.Procedure;

/// <summary>How long each job of a schedule may be put off without putting off the end, the order and who does what kept. Linear.</summary>
internal static class Slack
{
    /// <summary>Slack in minutes, by job number.</summary>
    public static double[] Of(JobGraph graph, Schedule schedule)
    {
        double end = schedule.Elapsed;
        var latestFinish = new double[graph.Jobs.Count];
        Array.Fill(latestFinish, end);
        var latestStartOfNext = new double[schedule.Technicians + 1];
        Array.Fill(latestStartOfNext, end);
        var slack = new double[graph.Jobs.Count];
        foreach (ScheduledJob job in schedule.Jobs.Reverse())
        {
            double latest = end;
            foreach (int next in graph.After(job.Job))
                latest = Math.Min(latest, latestFinish[next] - graph.Jobs[next].Minutes);
            if (job.Technician > 0)
            {
                latest = Math.Min(latest, latestStartOfNext[job.Technician]);
                latestStartOfNext[job.Technician] = latest - (job.Finish - job.Start);
            }

            latestFinish[job.Job] = latest;
            slack[job.Job] = latest - job.Finish;
        }

        return slack;
    }
}
