using Contam.Families;
using Contam.Spread;

namespace Contam.Procedure;

/// <summary>Which parts may have broken a failed part: those upstream of it that shed the debris; where no debris was shed, those that shed any.</summary>
internal sealed class Upstream
{
    private readonly ProcedureRequest request;
    private readonly HashSet<PartId> failed;
    private readonly ILookup<PartId, PartId> into;

    public Upstream(ProcedureRequest request)
    {
        this.request = request;
        failed = [.. request.Failed];
        into = request.Family.Joints.Where(joint => SpreadGraph.IsOpen(request.Family, joint, failed)).ToLookup(joint => joint.To, joint => joint.From);
    }

    /// <summary>The names of parts from which this one can be reached and that shed the debris, in the order of the family; <c>none</c> where there are none.</summary>
    public IReadOnlyList<string> ThatSheds(Part part)
    {
        var upstream = new HashSet<PartId> { part.Id };
        var queue = new Queue<PartId>(upstream);
        while (queue.TryDequeue(out PartId id))
        {
            foreach (PartId from in into[id])
            {
                if (upstream.Add(from))
                    queue.Enqueue(from);
            }
        }

        IReadOnlyList<string> names = Sentences.FoldedNames(request.Family.Parts.Where(one =>
            !failed.Contains(one.Id) && upstream.Contains(one.Id) && (request.Spreads.IsEmpty ? !one.Sheds.IsEmpty : request.Spreads.Any(spread => one.ShedOf(spread.Debris) is not null))));
        return names.Count > 0 ? names : ["none"];
    }
}
