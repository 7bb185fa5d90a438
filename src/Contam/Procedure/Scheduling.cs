namespace Contam.Procedure;

/// <summary>
/// Chooses the schedule of a procedure: the list scheduler with several rules of rank; where the best of these does not meet the lower bound, a bounded
/// search from there. Of equally short ones the first, and the first keeps the phases together, which is easiest to work by. The same graph always
/// gives the same schedule.
/// </summary>
internal static class Scheduling
{
    // The search is bounded by work, not by time, so that it ends at the same place on any machine. A try costs about the square of the jobs.
    private const int SearchWork = 3_000_000;
    private const int MostTries = 400;
    private const int FewestTries = 4;
    private const int MostJobsForSearch = 1500;
    private const double Rounding = 1e-6;

    /// <summary>The best schedule found.</summary>
    /// <param name="graph">The jobs.</param>
    /// <param name="technicians">At least 1.</param>
    /// <param name="placeOf">For each job a number by which ties are decided: circuit and flow order, then file order.</param>
    public static Schedule Best(JobGraph graph, int technicians, int[] placeOf)
    {
        Chains chains = Chains.Of(graph);
        int[][] ranks = [.. Ranks(graph, chains, placeOf)];
        Schedule best = BestFor(graph, 1, chains, ranks);
        // A schedule for fewer hands serves more hands too; beginning there keeps one more technician from ever making it longer.
        // Once the longest chain is all there is to wait for, more hands have nothing to do.
        for (int hands = 2; hands <= technicians && best.Elapsed > chains.Longest + Rounding; hands++)
        {
            Schedule withMore = BestFor(graph, hands, chains, ranks);
            if (withMore.Elapsed < best.Elapsed - Rounding)
                best = withMore;
        }

        return best with { Technicians = technicians };
    }

    /// <summary>The schedule that keeps the phases together, which is the first that <see cref="Best"/> tries; nothing is searched.</summary>
    public static Schedule First(JobGraph graph, int technicians, int[] placeOf) =>
        ListScheduler.Schedule(graph, technicians, Ranks(graph, Chains.Of(graph), placeOf).First());

    private static Schedule BestFor(JobGraph graph, int technicians, Chains chains, int[][] ranks)
    {
        Schedule? best = null;
        foreach (int[] rank in ranks)
        {
            Schedule candidate = ListScheduler.Schedule(graph, technicians, rank);
            if (best is null || candidate.Elapsed < best.Elapsed - Rounding)
                best = candidate;
        }

        return best!.Elapsed > LowerBounds.Of(graph, technicians) + Rounding && graph.Jobs.Count <= MostJobsForSearch
            ? Search(graph, technicians, chains, best)
            : best;
    }

    /// <summary>
    /// Tries serial schedules with urgencies shaken by fixed dice, each packed to its end and back, and keeps the shortest.
    /// </summary>
    private static Schedule Search(JobGraph graph, int technicians, Chains chains, Schedule best)
    {
        double bound = LowerBounds.Of(graph, technicians) + Rounding;
        var scheduler = new SerialScheduler(graph, technicians);
        var dice = new FixedDice(seed: 1);
        double shortest = best.Elapsed;
        double[]? found = null;
        double[] urgency = [.. chains.Tail];
        int tries = Math.Clamp(SearchWork / Math.Max(1, graph.Jobs.Count * graph.Jobs.Count), FewestTries, MostTries);
        for (int turn = 0; turn < tries && shortest > bound; turn++)
        {
            double[] start = scheduler.Justify(scheduler.Forward(urgency));
            double end = scheduler.EndOf(start);
            if (end < shortest - Rounding)
            {
                shortest = end;
                found = start;
            }

            // Shaking the best order found and the longest chains in turn looks both near and far.
            for (int job = 0; job < urgency.Length; job++)
                urgency[job] = turn % 2 == 0 || found is null ? chains.Tail[job] * (0.6 + (0.8 * dice.Next())) : -found[job] + (0.15 * shortest * dice.Next());
        }

        return found is null ? best : scheduler.ToSchedule(found);
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
