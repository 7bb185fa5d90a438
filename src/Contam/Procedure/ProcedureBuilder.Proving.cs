using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What comes after the last part is back: the engine is filled, tried and looked at again.</summary>
internal sealed partial class ProcedureBuilder
{
    private const double QuickLookMinutes = 15;
    private const int MostPairs = 1_000_000;

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
                    foreach ((Part held, LookCondition when) in HeldParts().Where(one => !IsHeldRunning(one.Part)))
                        yield return AddFrameStep(Phase.Prove, StepAction.Prove, HoldOf(step, held), [held], [], due: due, when: when);
                    break;
                case FrameNames.HoldRunning:
                    foreach ((Part held, LookCondition when) in HeldParts().Where(one => IsHeldRunning(one.Part)))
                        yield return AddFrameStep(Phase.Prove, StepAction.Prove, step, [held], [], due: due, when: when);
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
            foreach (IGrouping<LookCondition, Circuit> group in about.GroupBy(WhenMadeSafe).OrderBy(group => group.Key.IsAlways ? 0 : 1))
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

    /// <summary>
    /// Whether a hold is made when the machine has run: nobody fills a fitted compressor or what it delivers to with liquid, and gas from a bottle at that
    /// pressure bursts what it is tried on. Common practice, no source.
    /// </summary>
    private bool IsHeldRunning(Part part) => GasTest.IsTooHigh(request, part) && frame.Find(FrameSection.Prove, FrameNames.HoldRunning, opening.Circuits, [part]) is not null
        && family.Circuits.Where(circuit => circuit.Parts.Contains(part.Id)).ToArray() is var circuits
        && circuits.Any(circuit => FluidSort.Fits(FluidSort.Air, family, circuit) && circuit.Parts.Any(id => family[id].Kind.Name == "compressor"));

    /// <summary>
    /// Parts with a limit for a pressure or vacuum hold that were opened, and when: they are tried when everything is back. A part is opened too when
    /// something that stands on it, and in its fluid, comes off: a carrier with its lips opens the case.
    /// </summary>
    private IEnumerable<(Part Part, LookCondition When)> HeldParts()
    {
        foreach (Part part in family.Limits.Where(limit => limit.Measures is Measure.PressureDrop or Measure.VacuumDrop).Select(limit => limit.Part).Distinct().OrderBy(family.IndexOf).Select(id => family[id]))
        {
            // What is tested in its place has a step of its own.
            if (jobsOf[family.IndexOf(part.Id)]?.Test is { Phase: Phase.Prove })
                continue;
            LookCondition[] opened = [.. OpenedAt(part)];
            if (opened.Length > 0)
                yield return (part, opened.Aggregate((any, one) => any.Or(one)));
        }
    }

    private IEnumerable<LookCondition> OpenedAt(Part part)
    {
        if (items[family.IndexOf(part.Id)] is { } own && Opening.IsOpened(own))
            yield return WhenOpened(own);
        Circuit[] wet = [.. family.Circuits.Where(circuit => circuit.Fluid is not null && circuit.Parts.Contains(part.Id))];
        foreach (WorkItem on in items.OfType<WorkItem>().Where(item => item.ComesOff && item.Part.StandsOn.Contains(part.Id) && Array.Exists(wet, circuit => circuit.Parts.Contains(item.Part.Id))))
            yield return on.Off;
    }

    /// <summary>
    /// Of the places to look at parts that were treated those that show well and quickly; where there are none, all of them. Where more was done because a
    /// deciding look found debris, the places of these looks.
    /// </summary>
    private IEnumerable<(Part[] Places, LookCondition When)> PlacesForSecondLook()
    {
        Part[] always = Quick(items.OfType<WorkItem>().Where(item => (item.DecidingLook is null ? item.Treated : item.Worked) is { IsAlways: true }));
        yield return ([.. always.Where(place => !IsToldBy(always, place))], LookCondition.Always);
        Part[] found = [.. Quick(items.OfType<WorkItem>().Where(item => item.DecidingLook is not null && item.Worked is not { IsAlways: true })).Where(place => !IsToldBy(always, place))];
        if (found.Length > 0)
            yield return (found, new LookCondition { OnlyIf = [.. Enumerable.Range(0, looks.Jobs.Length)] });
    }

    /// <summary>
    /// Whether what a place would show is seen at another that is looked at, so that nobody opens again what has just been closed and proved: something must be
    /// off for the place, and its circuit has a plug, filter, screen or bath among the others that shows well with nothing off.
    /// </summary>
    private bool IsToldBy(Part[] looked, Part place) => !NeedsNothingOff(place)
        && family.Circuits.Any(circuit => circuit.Parts.Contains(place.Id)
            && looked.Any(one => LookRules.Gathers(one) && one.Inspect!.Shows == Shows.Good && NeedsNothingOff(one) && circuit.Parts.Contains(one.Id)));

    private static bool NeedsNothingOff(Part part) => (part.Inspect!.Access ?? part.Access).IsEmpty;

    private Part[] Quick(IEnumerable<WorkItem> treated)
    {
        Part[] places = [.. treated.Select(item => item.Part).Where(part => part.Inspect is not null)];
        Part[] quick = [.. places.Where(part => part.Inspect!.Shows == Shows.Good && times.Of(part, StepAction.Inspect) <= QuickLookMinutes)];
        return quick.Length > 0 ? quick : places;
    }
}
