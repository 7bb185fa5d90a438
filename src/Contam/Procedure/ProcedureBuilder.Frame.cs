using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Procedure;

/// <summary>What comes before the first part is touched and after the last is back.</summary>
internal sealed partial class ProcedureBuilder
{
    // General figures for the frame of a procedure, in minutes; common practice, no source.
    private const double OrderMinutes = 15;
    private const double MakeSafeMinutes = 10;
    private const double CauseMinutes = 15;
    private const double ConditionMinutes = 5;
    private const double QuickLookMinutes = 15;
    private const double GoOnMinutes = 5;
    private const double HoldMinutes = 20;
    private const double PrimeMinutes = 20;
    private const double CrankMinutes = 10;
    private const double LeakCheckMinutes = 15;
    private const double FirstRunMinutes = 30;

    private Job? orderNote;
    private Job? goOn;

    /// <summary>Order what takes longest, make safe, look at the failure and for its cause, and look at whatever would make the spread larger; then decide.</summary>
    private void AddFrameBefore()
    {
        orderNote = graph.Add(id => new Job(id, Phase.MakeSafe, StepAction.Note) { Topic = JobTopics.Order, Minutes = OrderMinutes });
        Job engine = graph.Add(id => new Job(id, Phase.MakeSafe, StepAction.MakeSafe) { Topic = JobTopics.Engine, Minutes = MakeSafeMinutes });
        graph.Order(orderNote, engine);
        var safe = new List<Job> { engine };
        foreach (Circuit circuit in OpenedCircuits())
        {
            Job job = graph.Add(id => new Job(id, Phase.MakeSafe, StepAction.MakeSafe) { Topic = circuit.Name, Minutes = MakeSafeMinutes });
            graph.Order(engine, job);
            safe.Add(job);
        }

        var looks = new List<Job>();
        foreach (PartId failed in InFamilyOrder(request.Failed))
        {
            Job look = AddLook(family[failed]);
            Job cause = graph.Add(id => new Job(id, Phase.Confirm, StepAction.Note) { Part = family[failed], Topic = JobTopics.Cause, Minutes = CauseMinutes });
            graph.Order(look, cause);
            looks.Add(look);
            looks.Add(cause);
        }

        Part[] conditions = [.. InFamilyOrder(request.Spreads.SelectMany(spread => spread.Conditional).SelectMany(one => one.AlsoFailed.Prepend(one.IfFailed))).Select(id => family[id])];
        if (conditions.Length > 0)
        {
            Job conditionLook = AddConditionLook(conditions);
            // The failure itself first: what is seen there may answer the rest.
            foreach (Job look in looks)
                graph.Order(look, conditionLook);
            looks.Add(conditionLook);
        }

        foreach (CleanPlaces places in CleanPlaces.For(request))
        {
            Job note = graph.Add(id => new Job(id, Phase.Confirm, StepAction.Note) { Topic = JobTopics.CleanPlaces, CleanPlaces = places, Minutes = 0 });
            foreach (Job look in looks)
                graph.Order(look, note);
            looks.Add(note);
        }

        goOn = graph.Add(id => new Job(id, Phase.Confirm, StepAction.Note) { Topic = JobTopics.GoOn, Minutes = GoOnMinutes });
        foreach (Job look in looks)
        {
            foreach (Job made in safe)
                graph.Order(made, look);
            graph.Order(look, goOn);
        }

        foreach (Job made in safe)
            graph.Order(made, goOn);
    }

    private Job AddLook(Part part) => graph.Add(id => new Job(id, Phase.Confirm, StepAction.Inspect) { Part = part, Minutes = times.Of(part, StepAction.Inspect) });

    /// <summary>One look for signs, as far as can be seen before anything is opened, however many parts could have failed too.</summary>
    private Job AddConditionLook(Part[] conditions) => graph.Add(id => new Job(id, Phase.Confirm, StepAction.Inspect)
    {
        Parts = [.. conditions],
        Topic = JobTopics.Condition,
        Minutes = ConditionMinutes * conditions.Select(part => part.RepeatOf ?? part.Id.Value).Distinct(StringComparer.Ordinal).Count(),
    });

    /// <summary>Prime, turn over, leak check, run, and look again after the first running hours; each after the one before, all after everything else.</summary>
    private void AddFrameAfter()
    {
        foreach (PartJobs jobs in jobsOf.OfType<PartJobs>())
        {
            Job? first = jobs.InOrder.FirstOrDefault();
            graph.Order(goOn, first);
            if (jobs.Remove is null)
                graph.Order(goOn, jobs.Flush);
        }

        Job[] last = [.. graph.Jobs.Where(job => graph.After(job.Id).Count == 0)];
        Part[] holds = [.. HeldParts()];
        Part[] filters = [.. Worked().Where(part => part.Kind.IsFilter)];
        Part[] places = PlacesForSecondLook();
        Job? before = null;
        foreach ((string topic, double minutes, Part[] parts) in new (string, double, Part[])[]
        {
            (JobTopics.Holds, HoldMinutes * holds.Length, holds),
            (JobTopics.Prime, PrimeMinutes, []),
            (JobTopics.Crank, CrankMinutes, []),
            (JobTopics.LeakCheck, LeakCheckMinutes, []),
            (JobTopics.FirstRun, FirstRunMinutes, []),
            (JobTopics.SecondFilters, filters.Sum(part => times.Of(part, StepAction.Remove) + times.Of(part, StepAction.Refit)), filters),
            (JobTopics.SecondLook, places.Sum(part => times.Of(part, StepAction.Inspect)), places),
        })
        {
            if (parts.Length == 0 && topic is JobTopics.SecondFilters or JobTopics.Holds)
                continue;
            Job job = graph.Add(id => new Job(id, Phase.Prove, StepAction.Prove) { Topic = topic, Minutes = minutes, Parts = [.. parts] });
            if (before is null)
            {
                foreach (Job one in last)
                    graph.Order(one, job);
            }

            graph.Order(before, job);
            before = job;
        }
    }

    /// <summary>Parts with a limit for a pressure or vacuum hold, in circuits that were opened: they are tried when everything is back.</summary>
    private IEnumerable<Part> HeldParts()
    {
        var opened = OpenedCircuits().SelectMany(circuit => circuit.Parts).ToHashSet();
        return family.Limits
            .Where(limit => limit.Measures is Measure.PressureDrop or Measure.VacuumDrop && opened.Contains(limit.Part))
            .Select(limit => limit.Part)
            .Distinct()
            .OrderBy(family.IndexOf)
            .Select(part => family[part]);
    }

    /// <summary>Of the places to look at parts that were treated those that show well and quickly; where there are none, all of them.</summary>
    private Part[] PlacesForSecondLook()
    {
        Part[] places = [.. Worked().Where(part => part.Inspect is not null)];
        Part[] quick = [.. places.Where(part => part.Inspect!.Shows == Shows.Good && times.Of(part, StepAction.Inspect) <= QuickLookMinutes)];
        return quick.Length > 0 ? quick : places;
    }

    /// <summary>The parts that are treated, in the order of the family.</summary>
    private IEnumerable<Part> Worked() => items.OfType<WorkItem>().Where(item => !item.IsOnlyInTheWay).Select(item => item.Part);

    private ImmutableArray<Circuit> OpenedCircuits()
    {
        var worked = items.OfType<WorkItem>().Select(item => item.Part.Id).ToHashSet();
        return [.. family.Circuits.Where(circuit => circuit.Parts.Any(worked.Contains))];
    }

    private IEnumerable<PartId> InFamilyOrder(IEnumerable<PartId> parts) => parts.Distinct().OrderBy(family.IndexOf);
}
