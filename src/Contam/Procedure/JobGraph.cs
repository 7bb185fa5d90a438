using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>
/// The jobs of a procedure and what must be finished before what. Built once, then only read.
/// Adding the same order twice is harmless.
/// </summary>
internal sealed class JobGraph
{
    private readonly List<Job> jobs = [];
    private readonly List<HashSet<int>> before = [];
    private readonly List<List<int>> after = [];

    public IReadOnlyList<Job> Jobs => jobs;

    /// <summary>The jobs that wait for this one, in the order in which that was said.</summary>
    public IReadOnlyList<int> After(int job) => after[job];

    /// <summary>The jobs that this one waits for, rising.</summary>
    public ImmutableArray<int> Before(int job) => [.. before[job].Order()];

    public int BeforeCount(int job) => before[job].Count;

    public bool HasBefore(int job, int first) => before[job].Contains(first);

    /// <summary>Adds the job that <paramref name="make"/> makes for the number it is given.</summary>
    public Job Add(Func<int, Job> make)
    {
        Job job = make(jobs.Count);
        jobs.Add(job);
        before.Add([]);
        after.Add([]);
        return job;
    }

    /// <summary>Says that <paramref name="first"/> is finished before <paramref name="then"/> starts. Nothing where either is <c>null</c> or they are one.</summary>
    public void Order(Job? first, Job? then)
    {
        if (first is null || then is null || first.Id == then.Id)
            return;
        if (before[then.Id].Add(first.Id))
            after[first.Id].Add(then.Id);
    }

    /// <summary>
    /// The jobs in an order in which each stands after all that it waits for; ties by number.
    /// Cost: linear but for the ties (Kahn, "Topological sorting of large networks", Communications of the ACM 5, 1962).
    /// </summary>
    /// <exception cref="OrderCycleException">The order goes round in a circle; the exception names it.</exception>
    public int[] InOrder()
    {
        var waitsFor = new int[jobs.Count];
        var ready = new PriorityQueue<int, int>();
        for (int job = 0; job < jobs.Count; job++)
        {
            waitsFor[job] = before[job].Count;
            if (waitsFor[job] == 0)
                ready.Enqueue(job, job);
        }

        var order = new List<int>(jobs.Count);
        while (ready.TryDequeue(out int job, out _))
        {
            order.Add(job);
            foreach (int next in after[job])
            {
                if (--waitsFor[next] == 0)
                    ready.Enqueue(next, next);
            }
        }

        if (order.Count < jobs.Count)
            throw new OrderCycleException(CircleAmong(waitsFor));
        return [.. order];
    }

    /// <summary>A circle among the jobs that still wait: each waits for another that still waits, so walking back must come round.</summary>
    private List<string> CircleAmong(int[] waitsFor)
    {
        int start = Array.FindIndex(waitsFor, count => count > 0);
        var placeOnWalk = new Dictionary<int, int>();
        var walk = new List<int>();
        for (int job = start; placeOnWalk.TryAdd(job, walk.Count); job = before[job].Where(first => waitsFor[first] > 0).Min())
            walk.Add(job);
        int again = before[walk[^1]].Where(first => waitsFor[first] > 0).Min();
        IEnumerable<int> circle = walk.Skip(placeOnWalk[again]).Reverse();
        return [.. circle.Select(job => Describe(jobs[job]))];
    }

    private static string Describe(Job job) => job.Part is { } part ? $"{job.Action} {part.Id}" : $"{job.Action} {job.Topic}{string.Join(' ', job.Parts.Select(one => one.Id))}";
}
