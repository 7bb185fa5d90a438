using Contam.Families;

namespace Contam.Procedure;

/// <summary>What hangs on deciding looks comes after them, and what they need before hangs on none that is made later.</summary>
internal sealed partial class ProcedureBuilder
{
    private readonly List<Job> conditionalCircuits = [];

    /// <summary>
    /// Looks in their order; what a look waits for, however far back, is done by what is known when it is made; then everything after the looks that it hangs
    /// on. As what a look waits for hangs on earlier looks only, this goes round in no circle.
    /// </summary>
    private void OrderByLooks()
    {
        for (int look = 1; look < looks.Jobs.Length; look++)
            graph.Order(looks.Jobs[look - 1], looks.Jobs[look]);
        for (int look = 0; look < looks.Jobs.Length; look++)
        {
            foreach (Job before in Before(looks.Jobs[look]!))
                before.Condition = PlannedLooks.KnownBefore(request.Looks, look, before.Condition);
        }

        // What comes off goes back on.
        foreach (PartJobs jobs in jobsOf.OfType<PartJobs>())
        {
            if (jobs is { Remove: { } remove, Refit: { } refit })
                refit.Condition = remove.Condition;
        }

        foreach (Job job in graph.Jobs)
        {
            foreach (int look in job.Condition.Looks.Where(look => look != job.DecidingLook))
                graph.Order(looks.Jobs[look], job);
        }
    }

    private LookCondition Simplest(LookCondition when) => PlannedLooks.Simplest([.. request.Looks.Select(look => look.Due)], when);

    /// <summary>Fewer letters in the margin, and more work that is alike.</summary>
    private void SimplifyConditions()
    {
        foreach (Job job in graph.Jobs)
            job.Condition = Simplest(job.Condition);
    }

    /// <summary>When a circuit is made safe or drained, so that it is to be filled and tried: known once it is known what has to be done before which look.</summary>
    private LookCondition WhenMadeSafe(Circuit circuit) => conditionalCircuits.Where(job => job.Circuit == circuit.Name).Select(job => job.Condition)
        .Aggregate(opening.When[opening.Circuits.IndexOf(circuit)], (any, one) => any.Or(one));

    private IEnumerable<Job> Before(Job job)
    {
        var seen = new HashSet<int>();
        var waiting = new Queue<int>([job.Id]);
        while (waiting.TryDequeue(out int next))
        {
            foreach (int first in graph.Before(next))
            {
                if (!seen.Add(first))
                    continue;
                waiting.Enqueue(first);
                yield return graph.Jobs[first];
            }
        }
    }

    /// <summary>
    /// A circuit that only conditional work opens is made safe right before that, and so is a reservoir drained that only conditional work has drained.
    /// </summary>
    private void AddConditionalCircuits()
    {
        for (int place = 0; place < opening.Circuits.Length; place++)
        {
            Circuit circuit = opening.Circuits[place];
            bool isOpenedAnyway = opening.When[place].IsAlways;
            (Part Part, LookCondition When)[] drains = [.. opening.Drained[place].Where(one => !IsDrainedByItsLook(one.Part) && !(isOpenedAnyway && one.When.IsAlways))];
            if (isOpenedAnyway && drains.Length == 0)
                continue;
            var openers = new List<Job>();
            for (int index = 0; index < items.Length; index++)
            {
                if (items[index] is not { } item || opening.OpenedBy(item, circuit) is null)
                    continue;
                PartJobs jobs = jobsOf[index]!;
                bool looksInto = item.IsLookedAtInPlace && (item.Part.LookOpens || item.Part.Kind.IsReservoir);
                openers.AddRange(new[] { jobs.Remove, looksInto ? jobs.Look : null, jobs.Remove is null ? jobs.FirstWork : null, jobs.Remove is null ? jobs.Flush : null }
                    .OfType<Job>().Where(job => !(isOpenedAnyway && job.Condition.IsAlways)).Distinct());
            }

            foreach (IGrouping<bool, Job> together in openers.GroupBy(job => job.Phase == Phase.Confirm))
            {
                LookCondition when = together.Select(job => job.Condition).Aggregate((any, one) => any.Or(one));
                Phase phase = together.Key ? Phase.Confirm : looks.NotBefore(when, Phase.Strip);
                Job safely = AddCircuit(circuit, [.. drains.Select(one => one.Part)], phase, when);
                conditionalCircuits.Add(safely);
                foreach (Job job in together)
                    graph.Order(safely, job);
                foreach (Job made in safe)
                    graph.Order(made, safely);
                graph.Order(phase == Phase.Confirm ? null : goOn, safely);
            }
        }
    }
}
