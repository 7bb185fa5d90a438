using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What comes before the first part is touched.</summary>
internal sealed partial class ProcedureBuilder
{
    // General figures where a standard says none, in minutes; common practice, no source.
    private const double GeneralMinutes = 10;

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
        bool isDrainedByLook = drains.IsEmpty && opening.Drained[opening.Circuits.IndexOf(circuit)].Any(one => IsDrainedByItsLook(one.Part));
        FrameStep? step = (isDrainedByLook ? frame.Find(FrameSection.MakeSafe, FrameNames.CircuitLook, [circuit], [.. Worked()]) : null)
            ?? frame.Find(FrameSection.MakeSafe, FrameNames.Circuit, [circuit], [.. Worked()]);
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
    /// Whether draining a reservoir and looking at what comes out is one: the look is before stripping, nothing comes off before it, it is made whenever the
    /// reservoir is drained, and no look at a failed part opens the circuit before it can be made.
    /// </summary>
    private bool IsDrainedByItsLook(Part part) => items[family.IndexOf(part.Id)] is { } item && item.Has(TreatmentKind.Inspect) && IsDrained(part) is { } drained
        && !(item.DecidingLook is { } look && looks.IsAfterARemoval(look)) && PhaseOfLook(item) == Phase.Confirm && item.WhenDone(TreatmentKind.Inspect).Covers(drained)
        && (MayComeFirst(item) || !request.Failed.Any(failed => failed != part.Id && OpensCircuitOf(family[failed], part)));

    /// <summary>Whether a look can be made before the failure itself is looked at: it waits for no other look.</summary>
    private static bool MayComeFirst(WorkItem item) => item.DecidingLook is null or 0 && item.WhenDone(TreatmentKind.Inspect).IsAlways;

    private bool OpensCircuitOf(Part look, Part reservoir) =>
        look.LookOpens && family.Circuits.Any(circuit => circuit.Parts.Contains(look.Id) && circuit.Parts.Contains(reservoir.Id));

    /// <summary>Looks before stripping before it is decided to go on, and all else after that.</summary>
    private void OrderFrameBefore()
    {
        AddConditionalCircuits();
        Job[] looksBefore = [.. graph.Jobs.Where(job => job.Phase == Phase.Confirm && job.Action == StepAction.Inspect)];
        Job[] drainingLooks = [.. looksBefore.Where(job => !job.Drains.IsEmpty)];
        foreach (Job look in looksBefore)
        {
            foreach (Job drain in drainingLooks.Where(drain => (failureLooks.Contains(drain) || !failureLooks.Contains(look)) && IsDrainedBefore(drain, look)))
                graph.Order(drain, look);
        }

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

    /// <summary>
    /// A look that decides before anything is stripped: after the failure itself was looked at, and before it is decided to go on. A look that drains what a
    /// look at the failure opens is made before that: else what stands there runs out of the opening.
    /// </summary>
    private void OrderDecidingLook(Job look)
    {
        bool isFirst = look.DecidingLook is null or 0 && look.Condition.IsAlways && failureLooks.Exists(failure => IsDrainedBefore(look, failure));
        foreach (Job before in safe)
            graph.Order(before, look);
        foreach (Job failure in failureLooks)
            graph.Order(isFirst ? look : failure, isFirst ? failure : look);
        graph.Order(look, goOn);
    }

    /// <summary>Whether a look that opens a circuit waits until the reservoir of it is drained: else what stands there runs out of the opening. Looks keep their letters.</summary>
    private bool IsDrainedBefore(Job drain, Job look) =>
        look.Drains.IsEmpty && look.At.Any(part => drain.Drains.Any(reservoir => OpensCircuitOf(part, reservoir)))
        && !(drain.DecidingLook > look.DecidingLook);

    /// <summary>The parts that are treated, in the order of the family.</summary>
    private IEnumerable<Part> Worked() => items.OfType<WorkItem>().Where(item => !item.IsOnlyInTheWay).Select(item => item.Part);

    private IEnumerable<PartId> InFamilyOrder(IEnumerable<PartId> parts) => parts.Distinct().OrderBy(family.IndexOf);
}
