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

    public GuardTexts(ProcedureRequest request)
    {
        this.request = request;
        var failed = request.Failed.ToHashSet();
        openFrom = request.Family.Joints.Where(joint => SpreadGraph.IsOpen(request.Family, joint, failed)).ToLookup(joint => joint.From, joint => joint.To);
    }

    /// <summary>A sentence with a leading space for the first look at, or work on, a guarded part; else empty.</summary>
    public string Write(Job job)
    {
        if (job.Part is not { } part || job.ForAccess || job.Phase is not (Phase.Strip or Phase.CleanOut or Phase.Test) || job.Action is not (StepAction.Inspect or StepAction.Remove or StepAction.Test))
            return "";
        foreach (DebrisSpread spread in request.Spreads)
        {
            if (spread.Find(part.Id) is not { Grade: Grade.Guarded } || BarrierBefore(spread, part) is not { } barrier)
                continue;
            string[] then = [.. GuardedFrom(spread, part.Id).Select(id => Sentences.InSentence(request.Family[id].Name))];
            return $" If {spread.Debris.Name} is found here, {Sentences.InSentence(barrier.Name)} has not held it: stop, record the find and plan again; then {Sentences.ListUpTo(MostNamed, then)} count{(then.Length == 1 ? "s" : "")} as exposed.";
        }

        return "";
    }

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
