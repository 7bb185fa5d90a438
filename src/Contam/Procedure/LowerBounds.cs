namespace Contam.Procedure;

/// <summary>Times before which no schedule can end, each with its proof.</summary>
internal static class LowerBounds
{
    // Pairs of thresholds are tried for lists that a bench sees; a longer list gets the plain bounds.
    private const int MostPairs = 600;

    /// <summary>The greatest of the bounds.</summary>
    public static double Of(JobGraph graph, int technicians)
    {
        Chains chains = Chains.Of(graph);
        (double Head, double Minutes, double Tail)[] work =
            [.. graph.Jobs.Where(job => job.NeedsHands && job.Minutes > 0).Select(job => (chains.Head[job.Id], job.Minutes, chains.Tail[job.Id] - job.Minutes))];
        if (work.Length == 0)
            return chains.Longest;
        double bound = Math.Max(chains.Longest, Shared(work, technicians));
        return technicians == 1 ? Math.Max(bound, OneAfterTheOther(work)) : bound;
    }

    /// <summary>
    /// Of jobs that cannot start before <c>h</c> and leave at least <c>t</c> to do after them, all the work must pass the hands between:
    /// <c>h</c> + work ÷ hands + <c>t</c>, for the choice of <c>h</c> and <c>t</c> that gives most.
    /// </summary>
    private static double Shared((double Head, double Minutes, double Tail)[] work, int technicians)
    {
        double[] heads = work.Length <= MostPairs ? [.. work.Select(job => job.Head).Distinct()] : [work.Min(job => job.Head)];
        (double Head, double Minutes, double Tail)[] longestTailFirst = [.. work.OrderByDescending(job => job.Tail)];
        double best = 0;
        foreach (double head in heads)
        {
            double minutes = 0;
            foreach ((double Head, double Minutes, double Tail) job in longestTailFirst)
            {
                if (job.Head < head)
                    continue;
                minutes += job.Minutes;
                best = Math.Max(best, head + minutes / technicians + job.Tail);
            }
        }

        return best;
    }

    /// <summary>
    /// One pair of hands that may break off a job and take it up again: always at the job with most left to do after it. This ends no later than any schedule
    /// that may not break off (Jackson's preemptive schedule; Carlier, "The one-machine sequencing problem", European Journal of Operational Research 11, 1982).
    /// </summary>
    private static double OneAfterTheOther((double Head, double Minutes, double Tail)[] work)
    {
        int[] byHead = [.. Enumerable.Range(0, work.Length).OrderBy(job => work[job].Head)];
        double[] left = [.. work.Select(job => job.Minutes)];
        var ready = new PriorityQueue<int, double>();
        double now = 0;
        double bound = 0;
        int next = 0;
        while (next < byHead.Length || ready.Count > 0)
        {
            if (ready.Count == 0)
                now = Math.Max(now, work[byHead[next]].Head);
            while (next < byHead.Length && work[byHead[next]].Head <= now)
            {
                ready.Enqueue(byHead[next], -work[byHead[next]].Tail);
                next++;
            }

            int job = ready.Dequeue();
            double until = next < byHead.Length ? Math.Min(now + left[job], work[byHead[next]].Head) : now + left[job];
            left[job] -= until - now;
            now = until;
            if (left[job] > 1e-9)
                ready.Enqueue(job, -work[job].Tail);
            else
                bound = Math.Max(bound, now + work[job].Tail);
        }

        return bound;
    }
}
