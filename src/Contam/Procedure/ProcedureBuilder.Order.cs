using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Procedure;

/// <summary>The rules of order between parts.</summary>
internal sealed partial class ProcedureBuilder
{
    /// <summary>Within a part: off, look, away, clean, flush, look at it clean, renew, test, on. A loop's flush comes after the hand cleaning of each of its parts.</summary>
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
            if (jobsOf[index] is not { } jobs || items[index]!.ComesInside)
                continue;
            if (items[index]!.IsLookedAtInPlace)
            {
                foreach (PartId inTheWay in items[index]!.LookAccess)
                    Between(JobsWith(inTheWay), jobs.Look, jobs.Look);
            }

            foreach (PartId inTheWay in items[index]!.Access)
            {
                PartJobs other = JobsWith(inTheWay);
                Between(other, jobs.Remove ?? jobs.FirstWork, jobs.Refit ?? jobs.LastTreatment);
                // The flush may be that of a loop, which other parts' jobs precede and follow.
                if (jobs.Remove is null)
                    Between(other, jobs.Flush, jobs.Flush);
            }
        }

        void Between(PartJobs inTheWay, Job? first, Job? last)
        {
            graph.Order(inTheWay.Remove, first);
            graph.Order(last, inTheWay.Refit);
        }
    }

    /// <summary>The jobs at a part that is worked on; for one that comes new inside of another, the jobs at that, as it goes with it.</summary>
    private PartJobs JobsWith(PartId part) =>
        family.IndexOf(part) is var place && items[place]!.ComesInside ? jobsOf[family.IndexOf(WholeOf(family.Parts[place]).Id)]! : jobsOf[place]!;

    /// <summary>
    /// What stands on a part comes off before it and goes on after it. What rides on a part comes off after it, on the bench, and is built up before it goes on,
    /// when the carrier is clean; what stays on a carrier is worked on while that is off.
    /// </summary>
    private void OrderCarriers()
    {
        for (int index = 0; index < items.Length; index++)
        {
            if (jobsOf[index] is not { } jobs || items[index]!.ComesInside)
                continue;
            if (jobs.Remove is null)
            {
                if (benchOf[index] != Carriers.Engine)
                    OrderOnCarrier(items[index]!, jobs, items[benchOf[index]]!, jobsOf[benchOf[index]]!);
                continue;
            }

            // What is inside of another may be taken out on the engine or on the bench, but not while that goes back.
            for (int at = Carriers.CarrierOf(family, index); at >= 0; at = Carriers.CarrierOf(family, at))
                graph.Order(jobs.Remove, jobsOf[at]?.Refit);

            foreach (PartId below in items[index]!.Part.StandsOn)
            {
                PartJobs? other = items[family.IndexOf(below)] is null ? null : JobsWith(below);
                graph.Order(other?.Remove is null ? null : jobs.Remove, other?.Remove);
                graph.Order(other?.Refit, jobs.Refit);
            }

            if (items[index]!.Part.RidesOn is not { } rides || items[family.IndexOf(rides)] is null)
                continue;
            PartJobs carrier = JobsWith(rides);
            graph.Order(carrier.Remove, jobs.Remove);
            graph.Order(jobs.Remove, carrier.SendOut);
            graph.Order(jobs.Remove, carrier.Replace);
            graph.Order(carrier.Done, jobs.Refit);
            if (carrier.Test is { Phase: Phase.Refit } && family[rides].TestAt == TestAt.BuiltUp)
                graph.Order(jobs.Refit, carrier.Test);
            graph.Order(jobs.Refit, carrier.Refit);
        }
    }

    private void OrderOnCarrier(WorkItem item, PartJobs jobs, WorkItem carrying, PartJobs carrier)
    {
        // Where the carrier may stay on when the look is made, it is made before.
        bool isOffByThen = item.DecidingLook is { } look ? carrying.Off.IsAlways || looks.IsOffFor(carrying.Part, look) : !item.Has(TreatmentKind.Inspect) || carrying.Off.Covers(item.WhenDone(TreatmentKind.Inspect));
        if (jobs.Look is { Phase: Phase.Confirm } || !isOffByThen)
            graph.Order(isOffByThen ? null : jobs.Look, carrier.Remove);
        else
            graph.Order(carrier.Remove, jobs.Look);
        graph.Order(jobs.Look, carrier.SendOut);
        foreach (Job? job in new[] { jobs.FirstWork, jobs.Flush })
        {
            graph.Order(carrier.Remove, job);
            if (job is { Phase: Phase.Strip })
                graph.Order(job, carrier.SendOut);
            else
                graph.Order(carrier.Done, job);
        }

        graph.Order(jobs.LastTreatment, carrier.Refit);
        graph.Order(jobs.Flush, carrier.Refit);
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
            waitForFilters.UnionWith(filters.Select(index => jobsOf[index]!.Refit!.Id));
            Job gate = graph.Add(id => new Job(id, Phase.Refit, StepAction.Note)
            {
                Topic = FrameNames.FiltersNext,
                Frame = frame.Find(FrameSection.Refit, FrameNames.FiltersNext, [circuit], []),
                Circuits = [circuit],
                Minutes = 0,
                Condition = filters.Select(index => items[index]!.Off).Aggregate((any, one) => any.Or(one)),
            });
            foreach (int index in others)
            {
                PartJobs jobs = jobsOf[index]!;
                PartJobs with = JobsWith(family.Parts[index].Id);
                graph.Order(with.Replace ?? with.Done, gate);
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
