using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>What comes off and goes back on, and what carries what.</summary>
internal sealed partial class StepPlay
{
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
}
