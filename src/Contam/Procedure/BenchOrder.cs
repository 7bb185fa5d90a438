namespace Contam.Procedure;

/// <summary>
/// The order in which a bench works the jobs of a procedure: seven phases, each once, and within each what a mechanic would do next.
/// <list type="bullet">
/// <item>Confirm: what frames the failure first, then the looks that need no stripping, nearest and cheapest first.</item>
/// <item>Strip: what a removal has just freed comes next, so that one assembly is done after the other from outside in; send-outs leave at the end.</item>
/// <item>Clean out and test: what is off the engine by circuit and flow, then what stays, then what an outside workshop does.</item>
/// <item>Refit: last off, first on, of what is there; what is still on its way waits, and its arrival, check and test stand right before its own refit.</item>
/// </list>
/// In every phase like parts are drawn together. The same graph always gives the same order. Cost: (jobs + order) × log jobs.
/// </summary>
internal sealed class BenchOrder
{
    private readonly JobGraph graph;
    private readonly BenchRanks ranks;
    private readonly BenchClock clock;
    private readonly Func<int, string?> likeKey;
    private readonly int[] waitsFor;
    private readonly SortedSet<int>[] ready;
    private readonly Dictionary<string, SortedSet<int>> readyLike = new(StringComparer.Ordinal);
    private readonly Stack<int> freed = new();
    private readonly bool[] isPicked;
    private readonly List<int> order = [];
    private readonly RefitQueue refits;

    private BenchOrder(JobGraph graph, BenchRanks ranks, int technicians, Func<int, string?> likeKey)
    {
        this.graph = graph;
        this.ranks = ranks;
        this.likeKey = likeKey;
        clock = new BenchClock(graph, technicians);
        waitsFor = [.. graph.Jobs.Select(job => graph.BeforeCount(job.Id))];
        isPicked = new bool[waitsFor.Length];
        ready = [.. Enum.GetValues<Phase>().Select(_ => new SortedSet<int>())];
        refits = new RefitQueue(graph, ranks, clock, likeKey);
        MakeReady(Enumerable.Range(0, waitsFor.Length).Where(job => waitsFor[job] == 0));
    }

    /// <summary>The numbers of the jobs in the order of the bench: each after all that it waits for, and the phases rising.</summary>
    /// <param name="graph">The jobs; no job may wait for one of a later phase.</param>
    /// <param name="ranks">What decides where the order is free.</param>
    /// <param name="technicians">How many work at once, at least 1.</param>
    /// <param name="likeKey">The same text for jobs at like parts; <c>null</c> for none.</param>
    public static int[] Of(JobGraph graph, BenchRanks ranks, int technicians, Func<int, string?> likeKey)
    {
        var bench = new BenchOrder(graph, ranks, technicians, likeKey);
        foreach (Phase phase in Enum.GetValues<Phase>())
            bench.Work(phase);
        if (bench.order.Count < graph.Jobs.Count)
        {
            // A circle, or a job that waits for a later phase; the former names itself.
            graph.InOrder();
            throw new InvalidOperationException(WaitsForLater(graph));
        }

        return [.. bench.order];
    }

    private static string WaitsForLater(JobGraph graph)
    {
        (Job first, Job then) = graph.Jobs.SelectMany(first => graph.After(first.Id).Select(then => (first, graph.Jobs[then]))).First(pair => pair.first.Phase > pair.Item2.Phase);
        return $"{then.Action} {then.At.FirstOrDefault()?.Id} in {then.Phase} waits for {first.Action} {first.At.FirstOrDefault()?.Id} in {first.Phase}";
    }

    private void Work(Phase phase)
    {
        while (ready[(int)phase].Count > 0)
        {
            switch (phase)
            {
                case Phase.Refit:
                    foreach (int job in refits.Next(ready[(int)phase].Select(rank => ranks.JobOf(rank))))
                        Pick(job);
                    break;
                default:
                    PickWithLike(phase == Phase.Strip ? NextToStrip() : ranks.JobOf(ready[(int)phase].Min));
                    break;
            }
        }
    }

    private int NextToStrip()
    {
        while (freed.TryPop(out int job))
        {
            if (!isPicked[job])
                return job;
        }

        return ranks.JobOf(ready[(int)Phase.Strip].Min);
    }

    /// <summary>Picks a job, and with it all of its like that wait for nothing any more, lowest rank first.</summary>
    private void PickWithLike(int job)
    {
        if (likeKey(job) is not { } key)
        {
            Pick(job);
            return;
        }

        foreach (int rank in readyLike[key].ToArray())
            Pick(ranks.JobOf(rank));
    }

    private void Pick(int job)
    {
        isPicked[job] = true;
        order.Add(job);
        ready[(int)graph.Jobs[job].Phase].Remove(ranks.RankOf(job));
        if (likeKey(job) is { } key)
            readyLike[key].Remove(ranks.RankOf(job));
        clock.Place(job);
        refits.Picked(job);
        ranks.Picked(job);
        MakeReady(graph.After(job).Where(next => --waitsFor[next] == 0));
    }

    private void MakeReady(IEnumerable<int> jobs)
    {
        // On top comes to lie what is to be looked at, of this the one of lowest rank.
        foreach (int job in jobs.OrderByDescending(job => graph.Jobs[job].Action == StepAction.Remove).ThenByDescending(ranks.RankOf).ToArray())
        {
            ready[(int)graph.Jobs[job].Phase].Add(ranks.RankOf(job));
            if (likeKey(job) is { } key)
            {
                if (!readyLike.TryGetValue(key, out SortedSet<int>? like))
                    readyLike[key] = like = [];
                like.Add(ranks.RankOf(job));
            }

            if (graph.Jobs[job] is { Phase: Phase.Strip, Action: not StepAction.SendOut })
                freed.Push(job);
        }
    }
}
