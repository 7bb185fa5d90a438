using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Proof;

/// <summary>What is done at a part: looked at, cleaned, flushed, renewed, tried.</summary>
internal sealed partial class StepPlay
{
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
}
