using Contam.Families;

namespace Contam.Procedure;

/// <summary>Makes one job of jobs that stand next to each other and are the same work at like parts.</summary>
internal static class StepMerging
{
    private const int MostWords = 12;

    /// <summary>
    /// The same work in a graph of its own, its jobs numbered in the given order. Jobs are joined only where they follow one another in the order and none of
    /// them waits for another, so that no circle can come about. Linear.
    /// </summary>
    /// <param name="graph">The jobs.</param>
    /// <param name="order">Their numbers, each after all that it waits for.</param>
    /// <param name="likeKey">The same text for jobs at like parts; <c>null</c> for none.</param>
    /// <param name="indexOf">The place of a part in the family.</param>
    public static JobGraph Merge(JobGraph graph, int[] order, Func<int, string?> likeKey, Func<PartId, int> indexOf)
    {
        var merged = new JobGraph();
        var newOf = new Job[order.Length];
        for (int start = 0; start < order.Length;)
        {
            int end = start + 1;
            while (end < order.Length && likeKey(order[start]) is { } key && likeKey(order[end]) == key && !WaitsForOneOf(graph, order, start, end) && IsShort(graph, order[start..(end + 1)], indexOf))
                end++;
            Job[] together = [.. order[start..end].Select(job => graph.Jobs[job])];
            Job one = merged.Add(id => together is [var alone] ? alone.Renumbered(id) : Joined(id, together, indexOf));
            foreach (Job job in together)
                newOf[job.Id] = one;
            start = end;
        }

        foreach (int job in order)
        {
            foreach (int next in graph.After(job))
                merged.Order(newOf[job], newOf[next]);
        }

        return merged;
    }

    // A line that names more is no line any more.
    private static bool IsShort(JobGraph graph, int[] jobs, Func<PartId, int> indexOf) =>
        Sentences.Names(jobs.Select(job => graph.Jobs[job].Part!).OrderBy(part => indexOf(part.Id))).Split(' ').Length <= MostWords;

    private static bool WaitsForOneOf(JobGraph graph, int[] order, int start, int end)
    {
        for (int place = start; place < end; place++)
        {
            if (graph.HasBefore(order[end], order[place]))
                return true;
        }

        return false;
    }

    private static Job Joined(int id, Job[] jobs, Func<PartId, int> indexOf)
    {
        Job first = jobs[0];
        Job[] inOrder = [.. jobs.OrderBy(job => indexOf(job.Part!.Id))];
        return new Job(id, first.Phase, first.Action)
        {
            Parts = [.. inOrder.Select(job => job.Part!)],
            Minutes = first.IsWait ? jobs.Max(job => job.Minutes) : jobs.Sum(job => job.Minutes),
            IsWait = first.IsWait,
            IsEach = true,
            ForAccess = first.ForAccess,
            IsOutside = first.IsOutside,
            Topic = first.Topic,
            Frame = first.Frame,
            Circuits = first.Circuits,
            About = first.About,
            Condition = first.Condition,
            DecidingLook = first.DecidingLook,
            WordedAs = first.WordedAs ?? first,
            Drains = [.. inOrder.SelectMany(job => job.Drains)],
            Seals = [.. inOrder.SelectMany(job => job.Seals)],
        };
    }
}
