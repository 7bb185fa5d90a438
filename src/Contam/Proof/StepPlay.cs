using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>One play of a plan's steps: the rules of what may be done when. See <see cref="StepSimulator"/>.</summary>
internal sealed class StepPlay
{
    private readonly Family family;
    private readonly ImmutableArray<PlayedStep> steps;
    private readonly Bench bench;
    private readonly LastTreatments last;
    private readonly ImmutableArray<Fault>.Builder faults = ImmutableArray.CreateBuilder<Fault>();
    private readonly HashSet<(int Step, int Part)> faulty = [];
    private readonly bool[] isSuspect;
    private readonly bool[] isOnlyLookedAt;
    private readonly bool[] comesOff;
    private readonly bool[] wasTakenOff;
    private readonly bool[] wasPutBack;
    private readonly int[] away;

    internal StepPlay(Family family, PlanDocument plan, bool remembers = true)
    {
        this.family = family;
        int count = family.Parts.Length;
        steps = [.. plan.Steps.OrEmpty().Select(step => PlayedStep.Of(step, family))];
        bench = new Bench(count, new OpenJoints(family, plan.Failed.OrEmpty().Select(id => new PartId(id)).ToHashSet()), remembers);
        isSuspect = new bool[count];
        isOnlyLookedAt = new bool[count];
        comesOff = new bool[count];
        wasTakenOff = new bool[count];
        wasPutBack = new bool[count];
        away = new int[count];
        foreach (PlanPart listed in plan.Parts.OrEmpty())
            Dirty(listed);
        foreach (PlayedStep step in steps.Where(step => step.Step.Action == StepAction.Remove))
        {
            foreach (int part in step.Parts)
                comesOff[part] = true;
        }

        last = new LastTreatments(count, steps.Where(step => step.HasTimes), part => isSuspect[part]);
    }

    internal Simulation Play()
    {
        StepOrder.Check(steps, faults);
        CheckNames();
        foreach ((PlayedStep step, bool isFinish) in StepOrder.Events(steps))
        {
            if (isFinish)
                Finish(step);
            else
                Start(step);
        }

        for (int part = 0; part < family.Parts.Length; part++)
            CheckEnd(part);
        return new Simulation(faults.ToImmutable());
    }

    private void Dirty(PlanPart listed)
    {
        int part = family.IndexOf(new PartId(listed.Id));
        if (part < 0 || listed.Exposure.OrEmpty().All(line => line.Grade == Grade.Cleared))
            return;
        ImmutableArray<TreatmentKind> treatment = listed.Treatment.OrEmpty();
        isOnlyLookedAt[part] = treatment is [TreatmentKind.Inspect];
        isSuspect[part] = treatment.Length > 0 && treatment.All(kind => kind is TreatmentKind.Inspect or TreatmentKind.Test);
        bench.Become(part, isSuspect[part] ? Condition.Suspect : Condition.Dirty);
    }

    private void CheckNames()
    {
        foreach (PlayedStep step in steps)
        {
            foreach (string id in PlayedStep.PartsOf(step.Step).Concat(step.Step.Blank.OrEmpty()).Where(id => family.IndexOf(new PartId(id)) < 0))
                faults.Add(new Fault(step.Step.Number, id, $"this engine has no part {id}"));
        }
    }

    private void Start(PlayedStep step)
    {
        if (step.Step.Phase == Phase.Prove && step.Step.Action != StepAction.Note)
            Prove(step);
        foreach (int part in step.Parts)
        {
            switch (step.Step.Action)
            {
                case StepAction.Remove when step.Step.Phase != Phase.Prove:
                    StartRemoving(step, part);
                    break;
                case StepAction.Refit when step.Step.Phase != Phase.Prove:
                    StartRefitting(step, part);
                    break;
                default:
                    StartTreating(step, part);
                    break;
            }
        }

        CheckSeals(step);
        Flush(step);
    }

    private void Finish(PlayedStep step)
    {
        Flush(step);
        foreach (int part in step.Parts)
        {
            switch (step.Step.Action)
            {
                case StepAction.Remove when step.Step.Phase != Phase.Prove:
                    CheckWays(step, part, "taken off");
                    bench.Move(part, Whereabouts.Off);
                    break;
                case StepAction.Refit when step.Step.Phase != Phase.Prove:
                    CheckRefit(step, part);
                    bench.Move(part, Whereabouts.On);
                    break;
                default:
                    FinishTreating(step, part);
                    break;
            }
        }

        // Only now are all of them clean, so that a loop flushed as one does not stand in its own way.
        foreach (int part in step.Parts.Where(part => last.IsLastCleaning(step, part) && (!isSuspect[part] || bench.ConditionOf(part) == Condition.Suspect)))
            bench.Become(part, Condition.Clean);
    }

    private void StartRemoving(PlayedStep step, int part)
    {
        CheckNotAway(step, part);
        if (wasTakenOff[part])
            Report(step, part, $"{Name(part)} is taken off a second time");
        wasTakenOff[part] = true;
        CheckWays(step, part, "taken off");
        bench.Move(part, Whereabouts.ComingOff);
    }

    private void StartRefitting(PlayedStep step, int part)
    {
        CheckNotAway(step, part);
        if (!wasTakenOff[part])
            Report(step, part, $"{Name(part)} is put back although it was never taken off");
        else if (wasPutBack[part])
            Report(step, part, $"{Name(part)} is put back a second time");
        else if (bench.WhereaboutsOf(part) != Whereabouts.Off)
            Report(step, part, $"{Name(part)} is put back before it is off");
        wasPutBack[part] = true;
        CheckRefit(step, part);
        bench.Move(part, Whereabouts.GoingOn);
    }

    private void CheckRefit(PlayedStep step, int part)
    {
        if (bench.ConditionOf(part) == Condition.Dirty)
            Report(step, part, $"{Name(part)} is put back dirty");
        else if (bench.ConditionOf(part) == Condition.Suspect)
            Report(step, part, $"{Name(part)} is put back before it has been looked at");
        CheckWays(step, part, "put back");
        if (bench.UncleanUpstreamOf(part, _ => false) is var upstream and >= 0)
            Report(step, part, $"{Name(part)} is put back while {Name(upstream)}, which leads into it, {StillUnclean(upstream)}", upstream);
    }

    private void StartTreating(PlayedStep step, int part)
    {
        if (!step.IsTreatment)
            return;
        CheckNotAway(step, part);
        bool isOff = bench.WhereaboutsOf(part) == Whereabouts.Off;
        if (step.Step.Action == StepAction.SendOut)
            away[part]++;
        if (step.Step.Action == StepAction.Replace && !isOff)
            Report(step, part, $"{Name(part)} is replaced while the old one is still on");
        if (step.Step.Action == StepAction.SendOut && !isOff)
            Report(step, part, $"{Name(part)} is sent out while it is still on");
        if (step.Step.Action == StepAction.Flush && step.Parts.Length > 1 && isOff)
            Report(step, part, $"{Name(part)} is off, so that nothing can be flushed through it and the others in one go");
        CheckTreatment(step, part);
    }

    private void FinishTreating(PlayedStep step, int part)
    {
        if (!step.IsTreatment)
            return;
        if (step.Step.Action == StepAction.SendOut)
            away[part]--;
        CheckTreatment(step, part);
    }

    private void CheckTreatment(PlayedStep step, int part)
    {
        if (!bench.IsFitted(part))
            return;
        CheckWays(step, part, "worked on");
        if (step.Step.Action is not (StepAction.Flush or StepAction.Clean) || !last.IsLastCleaning(step, part))
            return;

        // What is flushed in the same step is done with it, unless it is cleaned again later and so is left dirty now.
        int upstream = bench.UncleanUpstreamOf(part, other => last.IsLastCleaning(step, other));
        if (upstream >= 0)
            Report(step, part, $"{Name(part)} is cleaned while {Name(upstream)}, which leads into it, {StillUnclean(upstream)}", upstream);
    }

    private void Flush(PlayedStep step)
    {
        int[] fitted = step.Step.Action == StepAction.Flush ? [.. step.Parts.Where(bench.IsFitted)] : [];
        if (fitted.Length == 0)
            return;
        foreach (int part in bench.Carry(fitted, step.Blank.ToHashSet().Contains))
            Report(step, part, $"{Name(part)} is dirtied again by what is flushed out of {Name(fitted[0])}", fitted[0]);
    }

    private void Prove(PlayedStep step)
    {
        int notOn = bench.NotOn == 0 ? -1 : FirstPart(part => bench.WhereaboutsOf(part) != Whereabouts.On);
        if (notOn >= 0)
            Report(step, notOn, $"the engine is tried while {Name(notOn)} is off");
        int[] unclean = bench.NotClean == 0 ? [] : [.. Enumerable.Range(0, family.Parts.Length).Where(part => bench.ConditionOf(part) != Condition.Clean)];
        if (unclean.Length == 0)
            return;
        Report(step, unclean[0], $"the engine is tried while {Name(unclean[0])} {StillUnclean(unclean[0])}");
        foreach (int part in bench.Carry(unclean, _ => false))
            Report(step, part, $"{Name(part)} is dirtied again by what the engine carries on");
    }

    private void CheckWays(PlayedStep step, int part, string done)
    {
        foreach (PartId access in InTheWayOf(part))
        {
            int inTheWay = family.IndexOf(access);
            if (inTheWay >= 0 && bench.WhereaboutsOf(inTheWay) != Whereabouts.Off)
            {
                Report(step, part, $"{Name(part)} is {done} while {access}, which is in the way, is on");
                return;
            }
        }
    }

    // A part that stays on and is only looked at may say what must be off for the look alone.
    private ImmutableArray<PartId> InTheWayOf(int part) =>
        isOnlyLookedAt[part] && !comesOff[part] && family.Parts[part].Inspect?.Access is { } forTheLook ? forTheLook : family.Parts[part].Access;

    private void CheckNotAway(PlayedStep step, int part)
    {
        if (away[part] > 0)
            Report(step, part, $"{Name(part)} is worked on while it is away");
    }

    private void CheckSeals(PlayedStep step)
    {
        if (step.Step.Action == StepAction.Refit && step.Step.Phase != Phase.Prove)
            CheckSeals(step, "put back", _ => true);
        else if (step.IsTreatment)
            CheckSeals(step, "closed", part => !comesOff[part] && last.IsLastTreatment(step, part));
    }

    // One step may close several parts, and then lists the seals of all of them.
    private void CheckSeals(PlayedStep step, string done, Func<int, bool> isClosed)
    {
        var fitted = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (string seal in step.Step.Seals.OrEmpty())
            fitted[seal] = fitted.GetValueOrDefault(seal) + 1;
        foreach (int part in step.Parts.Where(isClosed))
        {
            foreach (string seal in family.Parts[part].Seals)
            {
                int left = fitted.GetValueOrDefault(seal);
                if (left == 0)
                    Report(step, part, $"{Name(part)} is {done} without a new {seal}");
                fitted[seal] = Math.Max(0, left - 1);
            }
        }
    }

    private void CheckEnd(int part)
    {
        if (bench.WhereaboutsOf(part) != Whereabouts.On)
            faults.Add(new Fault(null, Name(part), $"{Name(part)} is never put back"));
        if (bench.ConditionOf(part) == Condition.Dirty)
            faults.Add(new Fault(null, Name(part), $"{Name(part)} is left dirty") { IsUncleanAtEnd = true });
        if (bench.ConditionOf(part) == Condition.Suspect)
            faults.Add(new Fault(null, Name(part), $"{Name(part)} has never been looked at") { IsUncleanAtEnd = true });
    }

    // A step is at fault at a part once: what is wrong when it starts is not reported again when it finishes.
    private void Report(PlayedStep step, int part, string what, int from = -1)
    {
        if (faulty.Add((step.Step.Number, part)))
            faults.Add(new Fault(step.Step.Number, Name(part), what) { DirtiedFrom = from < 0 || bench.ConditionOf(from) == Condition.Suspect ? null : Name(from) });
    }

    private int FirstPart(Func<int, bool> isMeant) => Enumerable.Range(0, family.Parts.Length).First(isMeant);

    private string StillUnclean(int part) => bench.ConditionOf(part) == Condition.Dirty ? "is still dirty" : "has not been looked at";

    private string Name(int part) => family.Parts[part].Id.Value;
}
