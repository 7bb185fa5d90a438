namespace Contam.Procedure;

/// <summary>
/// Chooses the schedule of a procedure: the list scheduler with several rules of rank, and the shortest result; of equal ones the one whose rule stands
/// first, and the first keeps the phases together, which is easiest to work by.
/// </summary>
internal static class Scheduling
{
    /// <summary>The best schedule found.</summary>
    /// <param name="graph">The jobs.</param>
    /// <param name="technicians">At least 1.</param>
    /// <param name="placeOf">For each job a number by which ties are decided: circuit and flow order, then file order.</param>
    public static Schedule Best(JobGraph graph, int technicians, int[] placeOf)
    {
        Chains chains = Chains.Of(graph);
        int[][] ranks = [.. Ranks(graph, chains, placeOf)];
        Schedule? best = null;
        // A schedule for fewer hands serves more hands too; trying them all keeps one more technician from ever making it longer.
        foreach (int hands in Enumerable.Range(1, technicians).Reverse())
        {
            foreach (int[] rank in ranks)
            {
                Schedule candidate = ListScheduler.Schedule(graph, hands, rank);
                if (best is null || candidate.Elapsed < best.Elapsed)
                    best = candidate;
            }
        }

        return best! with { Technicians = technicians };
    }

    /// <summary>
    /// No schedule can end sooner: the longest chain; and all the work shared evenly, after the shortest way to any of it and before the shortest way from it.
    /// </summary>
    public static double LowerBound(JobGraph graph, int technicians)
    {
        Chains chains = Chains.Of(graph);
        Job[] work = [.. graph.Jobs.Where(job => job.NeedsHands && job.Minutes > 0)];
        if (work.Length == 0)
            return chains.Longest;
        double shared = work.Min(job => chains.Head[job.Id]) + work.Sum(job => job.Minutes) / technicians + work.Min(job => chains.Tail[job.Id] - job.Minutes);
        return Math.Max(chains.Longest, shared);
    }

    private static IEnumerable<int[]> Ranks(JobGraph graph, Chains chains, int[] placeOf)
    {
        IEnumerable<Job> byPlace = graph.Jobs.OrderBy(job => placeOf[job.Id]).ThenBy(job => job.Id);
        yield return RankOf(byPlace.OrderBy(job => job.Phase).ThenByDescending(job => chains.Tail[job.Id]));
        yield return RankOf(byPlace.OrderByDescending(job => chains.Tail[job.Id]));
        yield return RankOf(byPlace.OrderByDescending(job => graph.After(job.Id).Count).ThenByDescending(job => chains.Tail[job.Id]));
        yield return RankOf(byPlace.OrderBy(job => chains.Longest - chains.Tail[job.Id] - chains.Head[job.Id]).ThenByDescending(job => chains.Tail[job.Id]));
    }

    private static int[] RankOf(IEnumerable<Job> inOrder)
    {
        Job[] jobs = [.. inOrder];
        var rank = new int[jobs.Length];
        for (int place = 0; place < jobs.Length; place++)
            rank[jobs[place].Id] = place;
        return rank;
    }
}
