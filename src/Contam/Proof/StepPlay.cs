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
    private readonly bool[] isLookedAt;
    private readonly bool[] comesOff;
    private readonly bool[] wasTakenOff;
    private readonly bool[] wasPutBack;
    private readonly int[] away;
    private readonly PlayGround ground;

    /// <summary>A play of all steps of a plan.</summary>
    internal StepPlay(Family family, PlanDocument plan, bool remembers = true)
        : this(
            new PlayGround(family, new OpenJoints(family, plan.Failed.OrEmpty().Select(id => new PartId(id)).ToHashSet())),
            [.. plan.Steps.OrEmpty().Select(step => PlayedStep.Of(step, family))],
            DirtyOf(family, plan),
            remembers)
    {
    }

    /// <summary>A play of these steps.</summary>
    /// <param name="ground">The engine.</param>
    /// <param name="steps">The steps that are done.</param>
    /// <param name="dirty">What is not clean when they begin.</param>
    /// <param name="remembers">See <see cref="Bench"/>.</param>
    internal StepPlay(PlayGround ground, ImmutableArray<PlayedStep> steps, IEnumerable<DirtyPart> dirty, bool remembers = true)
    {
        this.ground = ground;
        this.steps = steps;
        family = ground.Family;
        int count = family.Parts.Length;
        bench = new Bench(count, ground, remembers);
        isSuspect = new bool[count];
        isLookedAt = new bool[count];
        comesOff = new bool[count];
        wasTakenOff = new bool[count];
        wasPutBack = new bool[count];
        away = new int[count];
        foreach (DirtyPart part in dirty)
        {
            isLookedAt[part.Part] = part.IsLookedAt;
            isSuspect[part.Part] = part.IsSuspect;
            bench.Become(part.Part, part.IsSuspect ? Condition.Suspect : Condition.Dirty);
        }

        foreach (PlayedStep step in steps.Where(step => step.Step.Action == StepAction.Remove))
        {
            foreach (int part in step.Parts)
                comesOff[part] = true;
        }

        last = new LastTreatments(count, steps.Where(step => step.HasTimes), part => !isSuspect[part] ? null : isLookedAt[part] ? StepAction.Inspect : StepAction.Test);
    }

    /// <summary>Plays, and checks too that the parts are there and that each step waits for what it says it waits for.</summary>
    internal Simulation Play()
    {
        StepOrder.Check(steps, faults);
        CheckNames(steps, family, faults);
        return PlayAlone();
    }

    /// <summary>Plays steps of which is known that they can be played.</summary>
    internal Simulation PlayAlone()
    {
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

    /// <summary>The first step that cannot be played as it stands, or <c>null</c>.</summary>
    internal static string? Misread(ImmutableArray<PlayedStep> steps, Family family)
    {
        ImmutableArray<Fault>.Builder faults = ImmutableArray.CreateBuilder<Fault>();
        StepOrder.Check(steps, faults);
        CheckNames(steps, family, faults);
        return faults is [Fault first, ..] ? first.ToString() : null;
    }

    /// <summary>What a plan says is not clean when its steps begin.</summary>
    internal static IEnumerable<DirtyPart> DirtyOf(Family family, PlanDocument plan) =>
        from listed in plan.Parts.OrEmpty()
        let part = family.IndexOf(new PartId(listed.Id))
        where part >= 0 && !listed.Exposure.OrEmpty().All(line => line.Grade == Grade.Cleared)
        select DirtyPart.Of(part, listed.Treatment.OrEmpty());

    private static void CheckNames(ImmutableArray<PlayedStep> steps, Family family, ImmutableArray<Fault>.Builder faults)
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
                    CheckCarriersOff(step, part);
                    bench.Move(part, Whereabouts.Off);
                    break;
                case StepAction.Refit when step.Step.Phase != Phase.Prove:
                    CheckRefit(step, part);
                    bench.Move(part, Whereabouts.On);
                    CheckPutBack(step, part);
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
        CheckCarriersOff(step, part);
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
        CheckPutBack(step, part);
    }

    private void CheckRefit(PlayedStep step, int part)
    {
        if (bench.ConditionOf(part) == Condition.Dirty)
            Report(step, part, $"{Name(part)} is put back dirty");
        else if (bench.ConditionOf(part) == Condition.Suspect)
            Report(step, part, $"{Name(part)} is put back before it has been looked at");
        CheckWays(step, part, "put back");
        CheckCarriersOn(step, part);
    }

    // When it is on, so that what it is fitted to, and what comes with it, is known.
    private void CheckPutBack(PlayedStep step, int part)
    {
        foreach (int one in bench.GoingWith(part).Prepend(part))
        {
            if (one != part && bench.ConditionOf(one) != Condition.Clean)
                Report(step, one, $"{Name(part)} is put back while {Name(one)}, which goes with it, {StillUnclean(one)}");
            if (bench.UncleanUpstreamOf(one, _ => false) is var upstream and >= 0)
                Report(step, one, $"{Name(one)} is put back while {Name(upstream)}, which leads into it, {StillUnclean(upstream)}", upstream);
        }
    }

    private void CheckCarriersOff(PlayedStep step, int part)
    {
        if (FirstOf(ground.Standing[part], other => bench.WhereaboutsOf(other) != Whereabouts.Off) is var above and >= 0)
            Report(step, part, $"{Name(part)} is taken off while {Name(above)}, which stands on it, is on");
        if (family.Parts[part].RidesOn is { } rides && family.IndexOf(rides) is var carrier and >= 0 && bench.WhereaboutsOf(carrier) != Whereabouts.Off && !IsInsideOfWhatIsOff(carrier))
            Report(step, part, $"{Name(part)} is taken off {Name(carrier)}, which it rides on, while that is on");
    }

    private void CheckCarriersOn(PlayedStep step, int part)
    {
        if (FirstOf(family.Parts[part].StandsOn.Select(family.IndexOf), other => other >= 0 && bench.WhereaboutsOf(other) != Whereabouts.On) is var below and >= 0)
            Report(step, part, $"{Name(part)} is put back before {Name(below)}, which it stands on, is on");
        if (FirstOf(ground.Riding[part], other => bench.WhereaboutsOf(other) != Whereabouts.On) is var rider and >= 0)
            Report(step, part, $"{Name(part)} is put back before {Name(rider)}, which rides on it, is built up");
        if (family.Parts[part].RidesOn is { } rides && family.IndexOf(rides) is var carrier and >= 0 && bench.ConditionOf(carrier) != Condition.Clean)
            Report(step, part, $"{Name(part)} is built onto {Name(carrier)}, which {StillUnclean(carrier)}", carrier);
    }

    private static int FirstOf(IEnumerable<int> parts, Func<int, bool> isMeant)
    {
        foreach (int part in parts)
        {
            if (isMeant(part))
                return part;
        }

        return -1;
    }

    private void StartTreating(PlayedStep step, int part)
    {
        if (!step.IsTreatment)
            return;
        CheckNotAway(step, part);
        bool isOff = bench.WhereaboutsOf(part) == Whereabouts.Off;
        if (step.Step.Action == StepAction.SendOut)
            away[part]++;
        if (step.Step.Action == StepAction.Replace && !isOff && !IsInsideOfWhatIsOff(part))
            Report(step, part, $"{Name(part)} is replaced while the old one is still on");
        if (step.Step.Action == StepAction.SendOut && !isOff)
            Report(step, part, $"{Name(part)} is sent out while it is still on");
        // Parts that all lie on the bench by themselves are flushed in a row; what is fitted to one thing is flushed in one go.
        if (step.Step.Action == StepAction.Flush && FirstOf(step.Parts, bench.IsFitted) is var fitted and >= 0 && bench.PlaceOf(part) != bench.PlaceOf(fitted))
            Report(step, part, $"{Name(part)} is off, so that nothing can be flushed through it and the others in one go");
        CheckLook(step, part);
        if (step.Step.Action is StepAction.Clean or StepAction.Flush or StepAction.Replace)
            bench.Wipe(part);
        CheckTreatment(step, part);
    }

    private bool IsInsideOfWhatIsOff(int part)
    {
        for (int at = part; family.Parts[at].Assembly is { } whole && family.IndexOf(whole) is var outer and >= 0; at = outer)
        {
            if (bench.WhereaboutsOf(outer) == Whereabouts.Off)
                return true;
        }

        return false;
    }

    private void FinishTreating(PlayedStep step, int part)
    {
        if (!step.IsTreatment)
            return;
        if (step.Step.Action == StepAction.SendOut)
            away[part]--;
        CheckLook(step, part);
        CheckTreatment(step, part);
    }

    private void CheckLook(PlayedStep step, int part)
    {
        if (PlayedStep.IsDebrisLook(step.Step) && bench.IsWiped(part))
            Report(step, part, $"{Name(part)} is looked at for debris after it was cleaned, flushed or renewed: what it had to show is gone");
    }

    private void CheckTreatment(PlayedStep step, int part)
    {
        // What is tested in its place has everything back on.
        if (!bench.IsFitted(part) || step.Step.Phase == Phase.Prove)
            return;
        // What comes new inside of a whole that is off goes with that: nothing need be out of its way.
        if (step.Step.Action == StepAction.Replace && IsInsideOfWhatIsOff(part))
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
        // A look may need less off than work.
        foreach (PartId access in PlayedStep.IsDebrisLook(step.Step) && family.Parts[part].Inspect?.Access is { } forTheLook ? forTheLook : family.Parts[part].Access)
        {
            int inTheWay = family.IndexOf(access);
            // What carries it, inside of a whole that is off, is off with that; it cannot be parted from what it carries any further.
            if (inTheWay >= 0 && family.Parts[part].RidesOn == access && IsInsideOfWhatIsOff(inTheWay))
                continue;
            if (inTheWay >= 0 && bench.WhereaboutsOf(inTheWay) != Whereabouts.Off && bench.PlaceOf(inTheWay) == bench.SeatOf(part))
            {
                Report(step, part, $"{Name(part)} is {done} while {access}, which is in the way, is on");
                return;
            }
        }
    }

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
            CheckSeals(step, "closed", part => !comesOff[part] && step.Step.Action != StepAction.Replace && last.IsLastTreatment(step, part));
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
