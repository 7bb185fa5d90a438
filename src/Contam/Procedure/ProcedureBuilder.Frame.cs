using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What comes before the first part is touched and after the last is back.</summary>
internal sealed partial class ProcedureBuilder
{
    private const double QuickLookMinutes = 15;

    // General figures where a standard says none, in minutes; common practice, no source.
    private const double GeneralMinutes = 10;

    private const int MostPairs = 1_000_000;

    private readonly Dictionary<PartId, Job> confirmed = [];
    private readonly List<Job> safe = [];
    private readonly List<Job> failureLooks = [];
    private Job? orderNote;
    private Job? goOn;

    /// <summary>Order what takes longest, make safe, look at the failure and for its cause, and look at whatever would make the spread larger; then decide.</summary>
    private void AddFrameBefore()
    {
        Part[] worked = [.. Worked()];
        ImmutableArray<Circuit> opened = opening.Circuits;
        Part? slowest = worked.Where(part => IsRenewedAnyway(part) && part.Lead is not null).MaxBy(part => part.Lead!.Value);
        orderNote = AddFrameStep(Phase.MakeSafe, StepAction.Note, slowest is null ? FrameNames.Order : FrameNames.OrderSlowest, FrameSection.MakeSafe, slowest is null ? [] : [slowest]);
        Job stop = AddFrameStep(Phase.MakeSafe, StepAction.MakeSafe, FrameNames.Stop, FrameSection.MakeSafe, []);
        graph.Order(orderNote, stop);
        safe.Add(stop);
        foreach (FrameStep step in frame.All(FrameSection.MakeSafe, opened, worked))
        {
            if (step.Step == FrameNames.Circuit)
                safe.AddRange(opening.Always.Select(AddCircuit));
            else if (!FrameNames.All.Contains(step.Step))
                safe.Add(AddFrameStep(Phase.MakeSafe, StepAction.MakeSafe, step, [], frame.CircuitsOf(step, opened)));
        }

        foreach (Job made in safe.Skip(1))
            graph.Order(stop, made);

        var looks = new List<Job>();
        foreach (PartId failed in InFamilyOrder(request.Failed))
        {
            Job look = AddLook(family[failed]);
            confirmed.Add(failed, look);
            Job cause = AddFrameStep(Phase.Confirm, StepAction.Note, FrameNames.Cause, FrameSection.Confirm, [family[failed]]);
            graph.Order(look, cause);
            looks.Add(look);
            looks.Add(cause);
        }

        Part[] conditions = [.. InFamilyOrder(request.Spreads.SelectMany(spread => spread.Conditional).SelectMany(one => one.AlsoFailed.Prepend(one.IfFailed))).Select(id => family[id])];
        if (conditions.Length > 0)
        {
            Job conditionLook = AddFrameStep(
                Phase.Confirm,
                StepAction.Inspect,
                FrameNames.AlsoFailed,
                FrameSection.Confirm,
                conditions,
                conditions.Select(part => part.RepeatOf ?? part.Id.Value).Distinct(StringComparer.Ordinal).Count());
            // The failure itself first: what is seen there may answer the rest.
            foreach (Job look in looks)
                graph.Order(look, conditionLook);
            looks.Add(conditionLook);
        }

        // Where looks decide, the sheet names them by letter.
        Part[] places = request.Looks.IsEmpty ? [.. CleanPlaces.For(request).SelectMany(one => one.Places).Select(place => place.Place).Distinct()] : [];
        if (places.Length > 0)
        {
            Job note = AddFrameStep(Phase.Confirm, StepAction.Note, FrameNames.LookFirst, FrameSection.Confirm, places, 0);
            foreach (Job look in looks)
                graph.Order(look, note);
            looks.Add(note);
        }

        failureLooks.AddRange(looks);
        goOn = AddFrameStep(Phase.Confirm, StepAction.Note, FrameNames.Decide, FrameSection.Confirm, []);
        foreach (Job look in looks)
        {
            foreach (Job made in safe)
                graph.Order(made, look);
            graph.Order(look, goOn);
        }

        foreach (Job made in safe)
            graph.Order(made, goOn);
    }

    // What hangs on a look is ordered after it.
    private bool IsRenewedAnyway(Part part) => items[family.IndexOf(part.Id)] is { } item && item.Has(TreatmentKind.Replace) && item.WhenDone(TreatmentKind.Replace).IsAlways;

    private Job AddCircuit(Circuit circuit) => AddCircuit(
        circuit,
        [.. opening.Drained[opening.Circuits.IndexOf(circuit)].Where(one => one.When.IsAlways && !IsDrainedByItsLook(one.Part)).Select(one => one.Part)],
        Phase.MakeSafe,
        LookCondition.Always);

    private Job AddCircuit(Circuit circuit, ImmutableArray<Part> drains, Phase phase, LookCondition when)
    {
        FrameStep? step = frame.Find(FrameSection.MakeSafe, FrameNames.Circuit, [circuit], [.. Worked()]);
        return graph.Add(id => new Job(id, phase, StepAction.MakeSafe)
        {
            Condition = when,
            Topic = circuit.Name,
            Frame = step,
            Circuit = circuit.Name,
            Circuits = [circuit],
            Drains = drains,
            Minutes = step?.Minutes ?? GeneralMinutes,
        });
    }

    /// <summary>A step of the frame that has a meaning of its own; where the standard has no words for it, its name stands.</summary>
    private Job AddFrameStep(Phase phase, StepAction action, string name, FrameSection section, Part[] parts, int times = 1)
    {
        FrameStep step = frame.Find(section, name, opening.Circuits, parts) ?? new FrameStep(section, name, BearsOn.Everything, name.Replace('-', ' '), "", "", new SourceSpan("contam", 1, 1));
        return AddFrameStep(phase, action, step, parts, [], times);
    }

    private Job AddFrameStep(Phase phase, StepAction action, FrameStep step, Part[] parts, IEnumerable<Circuit> circuits, int times = 1, double? due = null, LookCondition? when = null) => graph.Add(id => new Job(id, phase, action)
    {
        Condition = when ?? LookCondition.Always,
        Part = parts is [var only] && action == StepAction.Note ? only : null,
        Parts = parts is [_] && action == StepAction.Note ? [] : [.. parts],
        Topic = step.Step,
        Frame = step,
        Circuits = [.. circuits],
        Minutes = times * (step.Minutes ?? GeneralMinutes),
        DueAfterRunningHours = due,
    });

    /// <summary>The look whether a part has failed as said. Where that part is to be looked at for debris before stripping anyway, it is one look.</summary>
    private Job AddLook(Part part)
    {
        bool isForDebris = items[family.IndexOf(part.Id)] is { } item && item.Has(TreatmentKind.Inspect) && item.WhenDone(TreatmentKind.Inspect).IsAlways && LookRules.IsBeforeStripping(item);
        return graph.Add(id => new Job(id, Phase.Confirm, StepAction.Inspect)
        {
            Part = part,
            About = isForDebris ? LookAbout.Debris : null,
            Drains = isForDebris && IsDrainedByItsLook(part) ? [part] : [],
            Seals = isForDebris && ClosesInPlace(items[family.IndexOf(part.Id)]!, StepAction.Inspect, LookAbout.Debris) ? part.Seals : [],
            Minutes = times.Of(part, StepAction.Inspect),
        });
    }

    /// <summary>
    /// Whether draining a reservoir and looking at what comes out is one: the look is before stripping, nothing comes off before it, and it is made whenever the
    /// reservoir is drained.
    /// </summary>
    private bool IsDrainedByItsLook(Part part) => items[family.IndexOf(part.Id)] is { } item && item.Has(TreatmentKind.Inspect) && IsDrained(part) is { } drained
        && !(item.DecidingLook is { } look && looks.IsAfterARemoval(look)) && PhaseOfLook(item) == Phase.Confirm && item.WhenDone(TreatmentKind.Inspect).Covers(drained);

    /// <summary>Looks before stripping before it is decided to go on, and all else after that.</summary>
    private void OrderFrameBefore()
    {
        AddConditionalCircuits();
        Job[] drainingLooks = [.. graph.Jobs.Where(job => job.Phase == Phase.Confirm && !job.Drains.IsEmpty && job.Action == StepAction.Inspect)];
        foreach (PartJobs jobs in jobsOf.OfType<PartJobs>())
        {
            if (jobs.Look is { Phase: Phase.Confirm } look && !failureLooks.Contains(look))
                OrderDecidingLook(look);
            if (jobs.Remove is { Phase: Phase.Confirm } remove)
            {
                OrderDecidingLook(remove);
                foreach (Job drain in drainingLooks)
                    graph.Order(drain, remove);
            }

            graph.Order(goOn, jobs.InOrder.FirstOrDefault(job => job.Phase > Phase.Confirm));
            if (jobs.Remove is null)
                graph.Order(goOn, jobs.Flush);
        }
    }

    /// <summary>The proof: what the standard has for this machine and the circuits that were opened; each after the one before, all after everything else.</summary>
    private void AddFrameAfter()
    {
        Job[] fitted = [.. jobsOf.Select(jobs => jobs?.Test).OfType<Job>().Where(test => test.Phase == Phase.Prove)];
        Job[] finished = [.. graph.Jobs.Where(job => job.Phase < Phase.Prove && graph.After(job.Id).All(next => graph.Jobs[next].Phase == Phase.Prove))];
        // One after the other where every pair would be more than anybody reads.
        bool isInARow = (long)fitted.Length * finished.Length > MostPairs;
        for (int place = 0; place < fitted.Length; place++)
        {
            foreach (Job one in isInARow && place > 0 ? [fitted[place - 1]] : finished)
                graph.Order(one, fitted[place]);
        }

        Job[] last = [.. graph.Jobs.Where(job => graph.After(job.Id).Count == 0)];
        Job? before = null;
        foreach (Job job in ProofJobs())
        {
            if (before is null)
            {
                foreach (Job one in last)
                    graph.Order(one, job);
            }

            graph.Order(before, job);
            before = job;
        }
    }

    private IEnumerable<Job> ProofJobs()
    {
        Part[] worked = [.. Worked()];
        ImmutableArray<Circuit> opened = opening.Circuits;
        double? due = null;
        foreach (FrameStep step in frame.All(FrameSection.Prove, opened, worked))
        {
            due = step.Due switch
            {
                FrameDue.FirstRun => due ?? 0,
                FrameDue.RunningHours => (request.Standard.FirstRunningHours ?? TimeSpan.FromHours(5)).TotalHours,
                _ => due,
            };
            switch (step.Step)
            {
                case FrameNames.HoldGas:
                    break;
                case FrameNames.Hold:
                    foreach (WorkItem held in HeldParts())
                        yield return AddFrameStep(Phase.Prove, StepAction.Prove, HoldOf(step, held.Part), [held.Part], [], due: due, when: WhenOpened(held));
                    break;
                case FrameNames.SecondFilters:
                    foreach (IGrouping<LookCondition, WorkItem> filters in items.OfType<WorkItem>().Where(item => item.Treated is not null && item.Part.Kind.IsFilter).GroupBy(item => item.Treated!))
                        yield return AddTimed(step, [.. filters.Select(item => item.Part)], filters.Sum(item => times.Of(item.Part, StepAction.Remove) + times.Of(item.Part, StepAction.Refit)), due, filters.Key);
                    break;
                case FrameNames.SecondLook:
                    foreach ((Part[] places, LookCondition when) in PlacesForSecondLook())
                        yield return AddTimed(step, places, places.Sum(part => times.Of(part, StepAction.Inspect)), due, when);
                    break;
                default:
                    foreach ((Circuit[] circuits, LookCondition when) in CircuitsToProve(step, worked))
                        yield return AddFrameStep(Phase.Prove, StepAction.Prove, step, [], circuits, due: due, when: when);
                    break;
            }
        }
    }

    /// <summary>
    /// The circuits that a step of the proof names, those that are opened whatever is seen apart from those that hang on looks; with when. A step that bears on
    /// no circuit is done whenever anything that it bears on is.
    /// </summary>
    private IEnumerable<(Circuit[] Circuits, LookCondition When)> CircuitsToProve(FrameStep step, Part[] worked)
    {
        Circuit[] about = [.. frame.CircuitsOf(step, opening.Circuits)];
        if (about.Length > 0)
        {
            foreach (IGrouping<LookCondition, Circuit> group in about.GroupBy(circuit => opening.When[opening.Circuits.IndexOf(circuit)]).OrderBy(group => group.Key.IsAlways ? 0 : 1))
                yield return ([.. group], group.Key);
            yield break;
        }

        // By the kind of a part: whenever such a part is treated. Machine and debris are the same whatever is seen.
        LookCondition when = step.For.Kind is not { } kind ? LookCondition.Always
            : items.OfType<WorkItem>().Where(item => item.Part.Kind.Name == kind).Select(item => item.Treated).OfType<LookCondition>().DefaultIfEmpty(LookCondition.Always).Aggregate((any, one) => any.Or(one));
        yield return ([], when);
    }

    /// <summary>When something at a part is opened.</summary>
    private static LookCondition WhenOpened(WorkItem item) => item.ComesOff ? item.Worked?.Or(item.Off) ?? item.Off : item.Worked!;

    private Job AddTimed(FrameStep step, Part[] parts, double minutes, double? due, LookCondition when) => graph.Add(id => new Job(id, Phase.Prove, StepAction.Prove)
    {
        Condition = when,
        Parts = [.. parts],
        Topic = step.Step,
        Frame = step,
        Minutes = minutes,
        DueAfterRunningHours = due,
    });

    /// <summary>A hold on liquid, unless every pressure of the part is low enough for gas.</summary>
    private FrameStep HoldOf(FrameStep onLiquid, Part part)
    {
        bool isLow = !GasTest.IsTooHigh(request, part);
        return isLow && frame.Find(FrameSection.Prove, FrameNames.HoldGas, opening.Circuits, [part]) is { } onGas ? onGas
            : frame.Find(FrameSection.Prove, FrameNames.Hold, opening.Circuits, [part]) ?? onLiquid;
    }

    /// <summary>A look that decides before anything is stripped: after the failure itself was looked at, and before it is decided to go on.</summary>
    private void OrderDecidingLook(Job look)
    {
        foreach (Job before in safe.Concat(failureLooks))
            graph.Order(before, look);
        graph.Order(look, goOn);
    }

    /// <summary>Parts with a limit for a pressure or vacuum hold that were opened: they are tried when everything is back.</summary>
    private IEnumerable<WorkItem> HeldParts()
    {
        // What is tested in its place has a step of its own.
        var opened = items.OfType<WorkItem>().Where(item => Opening.IsOpened(item) && jobsOf[family.IndexOf(item.Part.Id)]?.Test is not { Phase: Phase.Prove }).ToDictionary(item => item.Part.Id);
        return family.Limits
            .Where(limit => limit.Measures is Measure.PressureDrop or Measure.VacuumDrop && opened.ContainsKey(limit.Part))
            .Select(limit => limit.Part)
            .Distinct()
            .OrderBy(family.IndexOf)
            .Select(part => opened[part]);
    }

    /// <summary>
    /// Of the places to look at parts that were treated those that show well and quickly; where there are none, all of them. Where more was done because a
    /// deciding look found debris, the places of these looks.
    /// </summary>
    private IEnumerable<(Part[] Places, LookCondition When)> PlacesForSecondLook()
    {
        yield return (Quick(items.OfType<WorkItem>().Where(item => (item.DecidingLook is null ? item.Treated : item.Worked) is { IsAlways: true })), LookCondition.Always);
        Part[] found = Quick(items.OfType<WorkItem>().Where(item => item.DecidingLook is not null && item.Worked is not { IsAlways: true }));
        if (found.Length > 0)
            yield return (found, new LookCondition { OnlyIf = [.. Enumerable.Range(0, looks.Jobs.Length)] });
    }

    private Part[] Quick(IEnumerable<WorkItem> treated)
    {
        Part[] places = [.. treated.Select(item => item.Part).Where(part => part.Inspect is not null)];
        Part[] quick = [.. places.Where(part => part.Inspect!.Shows == Shows.Good && times.Of(part, StepAction.Inspect) <= QuickLookMinutes)];
        return quick.Length > 0 ? quick : places;
    }

    /// <summary>The parts that are treated, in the order of the family.</summary>
    private IEnumerable<Part> Worked() => items.OfType<WorkItem>().Where(item => !item.IsOnlyInTheWay).Select(item => item.Part);

    private IEnumerable<PartId> InFamilyOrder(IEnumerable<PartId> parts) => parts.Distinct().OrderBy(family.IndexOf);
}
