using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.Procedure;

/// <summary>
/// What a find at a guarded part would mean: a barrier has not held.
/// </summary>
internal sealed class GuardTexts
{
    private readonly ProcedureRequest request;
    private readonly HashSet<PartId> comesOff;
    private readonly HashSet<string> told = new(StringComparer.Ordinal);

    public GuardTexts(ProcedureRequest request, ProcedureDraft draft)
    {
        this.request = request;
        comesOff = [.. draft.Graph.Jobs.Where(job => job.Action == StepAction.Remove).SelectMany(job => job.At).Select(part => part.Id)];
    }

    /// <summary>
    /// The barrier (with those like it) that a find here would show to have failed, for the first look at or work on a guarded part behind it; <c>null</c>
    /// where there is none, or where it was said before: what it means holds for every guarded part further on.
    /// </summary>
    public ImmutableArray<Part>? BarrierAt(Job job)
    {
        if (job.ForAccess)
            return null;
        foreach (Part part in job.At.Where(part => IsFirstSight(job, part)))
        {
            foreach (DebrisSpread spread in request.Spreads)
            {
                if (spread.Find(part.Id) is { Grade: Grade.Guarded } && BarrierBefore(spread, part) is { } barrier && told.Add(barrier.RepeatOf ?? barrier.Id.Value))
                    return barrier.RepeatOf is null ? [barrier] : [.. request.Family.Parts.Where(one => one.RepeatOf == barrier.RepeatOf)];
            }
        }

        return null;
    }

    /// <summary>Taking it off, or, where it stays, the look or the test.</summary>
    private bool IsFirstSight(Job job, Part part) => comesOff.Contains(part.Id)
        ? job.Action == StepAction.Remove
        : job.About == LookAbout.Debris || job is { Action: StepAction.Test, Phase: < Phase.Prove };

    /// <summary>The last part before this one that holds the debris to what arrives here, or <c>null</c> where a joint does.</summary>
    private Part? BarrierBefore(DebrisSpread spread, Part part)
    {
        ParticleSize reach = spread.Find(part.Id)!.Reach;
        return spread.PathTo(part.Id).SkipLast(1).Reverse()
            .Select(id => request.Family[id])
            .FirstOrDefault(one => SpreadGraph.LetsOn(one, spread.Debris) <= reach);
    }
}
