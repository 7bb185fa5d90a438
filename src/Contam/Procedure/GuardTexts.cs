using Contam.Families;
using Contam.Spread;

namespace Contam.Procedure;

/// <summary>
/// What a find at a guarded part would mean: a barrier has not held, and which parts then count as exposed.
/// </summary>
internal sealed class GuardTexts
{
    private const int MostNamed = 6;

    private readonly ProcedureRequest request;
    private readonly ILookup<PartId, PartId> openFrom;
    private readonly HashSet<PartId> comesOff;

    public GuardTexts(ProcedureRequest request, ProcedureDraft draft)
    {
        this.request = request;
        comesOff = [.. draft.Graph.Jobs.Where(job => job.Action == StepAction.Remove).Select(job => job.Part!.Id)];
        var failed = request.Failed.ToHashSet();
        openFrom = request.Family.Joints.Where(joint => SpreadGraph.IsOpen(request.Family, joint, failed)).ToLookup(joint => joint.From, joint => joint.To);
    }

    /// <summary>A sentence with a leading space for the first look at, or work on, a guarded part; else empty.</summary>
    public string Write(Job job)
    {
        if (job.Part is not { } part || job.ForAccess || !IsFirstSight(job, part))
            return "";
        foreach (DebrisSpread spread in request.Spreads)
        {
            if (spread.Find(part.Id) is not { Grade: Grade.Guarded } || BarrierBefore(spread, part) is not { } barrier)
                continue;
            IReadOnlyList<string> then = Sentences.FoldedNames(GuardedFrom(spread, part.Id).Select(id => request.Family[id]));
            return $" If {spread.Debris.Name} is found here, {Sentences.InSentence(barrier.Name)} has not held it: stop, record the find and plan again; then {Sentences.ListUpTo(MostNamed, then)} count{(then.Count == 1 ? "s" : "")} as exposed.";
        }

        return "";
    }

    /// <summary>Taking it off, or, where it stays, the look or the test.</summary>
    private bool IsFirstSight(Job job, Part part) => comesOff.Contains(part.Id)
        ? job.Action == StepAction.Remove
        : job.Phase is Phase.CleanOut or Phase.Test && job.Action is StepAction.Inspect or StepAction.Test;

    /// <summary>The last part before this one that holds the debris to what arrives here, or <c>null</c> where a joint does.</summary>
    private Part? BarrierBefore(DebrisSpread spread, Part part)
    {
        ParticleSize reach = spread.Find(part.Id)!.Reach;
        return spread.PathTo(part.Id).SkipLast(1).Reverse()
            .Select(id => request.Family[id])
            .FirstOrDefault(one => SpreadGraph.LetsOn(one, spread.Debris) <= reach);
    }

    /// <summary>This part and the guarded parts that could be reached from it, nearest first.</summary>
    private List<PartId> GuardedFrom(DebrisSpread spread, PartId start)
    {
        var reached = new HashSet<PartId> { start };
        var inOrder = new List<PartId> { start };
        for (int next = 0; next < inOrder.Count && inOrder.Count < 100; next++)
        {
            foreach (PartId to in openFrom[inOrder[next]])
            {
                if (spread.Find(to) is { Grade: Grade.Guarded } && reached.Add(to))
                    inOrder.Add(to);
            }
        }

        return inOrder;
    }
}
