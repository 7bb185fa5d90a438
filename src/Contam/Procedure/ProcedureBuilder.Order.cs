using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Procedure;

/// <summary>The rules of order between parts.</summary>
internal sealed partial class ProcedureBuilder
{
    private const int MostPassedByFlush = 50;

    /// <summary>Within a part: off, away, clean, flush, look, renew, test, on. A loop's flush comes after the hand cleaning of each of its parts.</summary>
    private void OrderWithinParts()
    {
        foreach (PartJobs jobs in jobsOf.OfType<PartJobs>())
        {
            Job? before = null;
            foreach (Job job in jobs.InOrder)
            {
                graph.Order(before, job);
                before = job;
            }

            graph.Order(orderNote, jobs.Arrival);
            graph.Order(jobs.Arrival, jobs.Replace);
        }
    }

    /// <summary>What is in the way off first, on last; also for a part that is treated where it stands.</summary>
    private void OrderAccess()
    {
        for (int index = 0; index < items.Length; index++)
        {
            if (jobsOf[index] is not { } jobs)
                continue;
            foreach (PartId inTheWay in items[index]!.Access)
            {
                PartJobs other = jobsOf[family.IndexOf(inTheWay)]!;
                graph.Order(other.Remove, jobs.Remove ?? jobs.FirstTreatment);
                graph.Order(jobs.Refit ?? jobs.LastTreatment, other.Refit);
                if (jobs.Remove is null && jobs.Flush is { } flush)
                {
                    // The flush may be that of a loop, which other parts' jobs precede and follow.
                    graph.Order(other.Remove, flush);
                    graph.Order(flush, other.Refit);
                }
            }
        }
    }

    /// <summary>
    /// No cleaned part is joined to a dirty one. For every open joint from a part that is treated:
    /// what lies beyond and comes off is refitted only when this part is done; what lies beyond and stays is treated only when this part is done or off.
    /// What lies beyond a flush in place is off, or treated later, or blanked.
    /// </summary>
    private void OrderAlongTheFlow()
    {
        foreach ((int from, int to) in openJoints)
        {
            if (items[from] is not { IsOnlyInTheWay: false } upstream)
                continue;
            PartJobs here = jobsOf[from]!;
            PartJobs? beyond = jobsOf[to];
            if (items[to] is { ComesOff: true })
            {
                graph.Order(here.Done, beyond!.Refit);
                continue;
            }

            if (upstream.ComesOff)
            {
                if (items[to] is { IsCleaned: true })
                    graph.Order(here.Remove, beyond!.FirstTreatment);
                continue;
            }

            if (items[to] is not null && !loops.GoesRoundThrough(from, to))
                graph.Order(here.Done, beyond!.FirstTreatment);
        }

        OrderBeyondFlushes();
    }

    /// <summary>
    /// A flush in place goes on through what is fitted beyond it. That does no harm to what is cleaned later where it stands. Whatever else it would come to
    /// is off by then, or is blanked: what is only looked at, what has been cleared, and, so that no flush is followed through a whole engine,
    /// the next part where so many have been passed already.
    /// </summary>
    private void OrderBeyondFlushes()
    {
        ILookup<int, int> beyond = openJoints.ToLookup(joint => joint.From, joint => joint.To);
        var flushes = new HashSet<Job>();
        for (int index = 0; index < items.Length; index++)
        {
            if (items[index] is not { ComesOff: false } || jobsOf[index]!.Flush is not { } flush || !flushes.Add(flush))
                continue;
            int[] flushed = loops.Of(index) is var loop and >= 0 ? [.. loops.Loops[loop]] : [index];
            var passed = new HashSet<int>(flushed);
            var queue = new Queue<int>(flushed);
            var blank = new SortedSet<int>();
            while (queue.TryDequeue(out int at))
            {
                foreach (int to in beyond[at])
                {
                    if (items[to] is { ComesOff: true })
                        graph.Order(jobsOf[to]!.Remove, flush);
                    else if (passed.Contains(to))
                        continue;
                    else if (items[to] is { IsCleaned: true } && passed.Count < flushed.Length + MostPassedByFlush)
                    {
                        passed.Add(to);
                        queue.Enqueue(to);
                    }
                    else
                    {
                        blank.Add(to);
                    }
                }
            }

            flush.Blank = [.. blank.Where(one => !passed.Contains(one)).Select(one => family.Parts[one])];
        }
    }

    /// <summary>
    /// Filters last within a circuit: a hold point comes after every other part of the circuit is done and back, and the filters go back after it.
    /// A part that can only go back after a filter (the filter lies behind it) is waited for until it is done, not until it is back.
    /// </summary>
    private void OrderFiltersLast()
    {
        foreach (Circuit circuit in family.Circuits)
        {
            int[] worked = [.. circuit.Parts.Select(family.IndexOf).Where(index => jobsOf[index] is not null)];
            bool IsFilter(int index) => items[index] is { IsOnlyInTheWay: false, ComesOff: true } && family.Parts[index].Kind.IsFilter;
            int[] filters = [.. worked.Where(IsFilter)];
            int[] others = [.. worked.Where(index => !IsFilter(index))];
            if (filters.Length == 0 || others.Length == 0)
                continue;

            HashSet<int> waitForFilters = ReachableFrom(filters.Select(index => jobsOf[index]!.Refit!.Id));
            Job gate = graph.Add(id => new Job(id, Phase.Refit, StepAction.Note)
            {
                Topic = FrameNames.FiltersNext,
                Frame = frame.Find(FrameSection.Refit, FrameNames.FiltersNext, [circuit], []),
                Circuits = [circuit],
                Minutes = 0,
            });
            foreach (int index in others)
            {
                PartJobs jobs = jobsOf[index]!;
                graph.Order(jobs.Done, gate);
                Job? last = jobs.Refit ?? jobs.LastTreatment;
                if (last is not null && !waitForFilters.Contains(last.Id))
                    graph.Order(last, gate);
            }

            foreach (int index in filters)
                graph.Order(gate, jobsOf[index]!.Refit);
        }
    }

    /// <summary>The jobs that wait, however far on, for one of these.</summary>
    private HashSet<int> ReachableFrom(IEnumerable<int> starts)
    {
        var reached = new HashSet<int>();
        var queue = new Queue<int>(starts);
        while (queue.TryDequeue(out int job))
        {
            foreach (int next in graph.After(job))
            {
                if (reached.Add(next))
                    queue.Enqueue(next);
            }
        }

        return reached;
    }
}
