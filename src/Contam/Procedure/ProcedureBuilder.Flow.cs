namespace Contam.Procedure;

/// <summary>What the flow joins: no cleaned part to a dirty one, and no flush into what is clean.</summary>
internal sealed partial class ProcedureBuilder
{
    private const int MostPassedByFlush = 50;

    /// <summary>
    /// No cleaned part is joined to a dirty one. For every open joint from a part that is treated:
    /// what lies beyond and comes off, by itself or with its carrier, goes back only when this part is done; what lies beyond and stays is treated only when
    /// this part is done or off. What lies beyond a flush in place is off, or treated later, or blanked.
    /// </summary>
    private void OrderAlongTheFlow()
    {
        foreach ((int from, int to) in openJoints)
        {
            if (items[from] is not { IsOnlyInTheWay: false } upstream)
                continue;
            // What comes new inside of another goes off and comes back with that.
            int whole = upstream.ComesInside ? family.IndexOf(WholeOf(upstream.Part).Id) : from;
            PartJobs here = jobsOf[whole]!;
            PartJobs? beyond = jobsOf[to];
            if (whole != from && whole == to)
                continue;
            bool isOnOneBench = benchOf[from] == benchOf[to];
            if (items[to] is { ComesOff: true })
            {
                graph.Order(ComesBackCleanTo(whole, to) ? here.Remove : here.Done, beyond!.Refit);
                continue;
            }

            if (benchOf[to] != Carriers.Engine && !isOnOneBench)
                graph.Order(ComesBackCleanTo(whole, benchOf[to]) ? here.Remove : here.Done, jobsOf[benchOf[to]]!.Refit);
            if (!isOnOneBench)
            {
                if (benchOf[from] != Carriers.Engine && items[to] is { IsCleaned: true, ComesInside: false })
                    graph.Order(jobsOf[benchOf[from]]!.Remove, beyond!.FirstWork);
                continue;
            }

            // The carrier itself comes first, as for all that stays on it.
            if (upstream.ComesOff || upstream.ComesInside)
                continue;

            // What is only looked at, or only tried, is looked at before anything is cleaned, and blanked when something is flushed.
            if (items[to] is { IsOnlyTriedInPlace: false, ComesInside: false } && !loops.GoesRoundThrough(from, to))
                graph.Order(here.Done, beyond!.FirstWork);
        }

        OrderBeyondFlushes();
    }

    /// <summary>
    /// Whether a part that is renewed, or cleaned elsewhere, is off until it comes back clean, so that what lies beyond need not wait for it; but what it carries
    /// is fitted to it.
    /// </summary>
    private bool ComesBackCleanTo(int from, int to)
    {
        for (int at = Carriers.CarrierOf(family, to); at >= 0; at = Carriers.CarrierOf(family, at))
        {
            if (at == from)
                return false;
        }

        return items[from] is { ComesOff: true } item && (item.GoesOut || item.Has(TreatmentKind.Replace));
    }

    /// <summary>
    /// A flush in place goes on through what is fitted beyond it. That does no harm to what is cleaned later where it stands. Whatever else it would come to
    /// is off by then, or is blanked: what is only looked at, what has been cleared, the carrier of what is flushed on the bench, and, so that no flush is
    /// followed through a whole engine, the next part where so many have been passed already.
    /// </summary>
    private void OrderBeyondFlushes()
    {
        ILookup<int, int> beyond = openJoints.ToLookup(joint => joint.From, joint => joint.To);
        var flushes = new HashSet<Job>();
        for (int index = 0; index < items.Length; index++)
        {
            if (items[index] is not { ComesOff: false, ComesInside: false } || jobsOf[index]!.Flush is not { } flush || !flushes.Add(flush))
                continue;
            int[] flushed = loops.Of(index) is var loop and >= 0 ? [.. loops.Loops[loop]] : [index];
            var passed = new HashSet<int>(flushed);
            var queue = new Queue<int>(flushed);
            var blank = new SortedSet<int>();
            while (queue.TryDequeue(out int at))
            {
                foreach (int to in beyond[at])
                {
                    // What the flush carries away cannot be seen any more.
                    graph.Order(jobsOf[to]?.Look, flush);
                    if (to == benchOf[index])
                    {
                        blank.Add(to);
                    }
                    else if (items[to] is { ComesOff: true } off)
                    {
                        graph.Order(jobsOf[to]!.Remove, flush);
                        // It may be fitted while this runs.
                        if (!off.Off.Covers(flush.Condition))
                            blank.Add(to);
                    }
                    else if (benchOf[to] != benchOf[index])
                    {
                        graph.Order(benchOf[to] == Carriers.Engine ? null : jobsOf[benchOf[to]]!.Remove, flush);
                        if ((benchOf[to] != Carriers.Engine && !items[benchOf[to]]!.Off.Covers(flush.Condition)) || (benchOf[index] != Carriers.Engine && !items[benchOf[index]]!.Off.Covers(flush.Condition)))
                            blank.Add(to);
                    }
                    else if (passed.Contains(to))
                    {
                        continue;
                    }
                    else if (items[to] is { IsCleaned: true, ComesInside: false } beyondIt && beyondIt.Cleaned.Covers(flush.Condition) && passed.Count < flushed.Length + MostPassedByFlush)
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
}
