using Contam.Families;

namespace Contam.Treatment;

/// <summary>
/// What is renewed with what: one part of a set (<see cref="Part.Together"/>) renewed renews all of it, and a part renewed whole renews what is inside of it
/// (<see cref="Part.Assembly"/>).
/// </summary>
internal sealed class RenewedTogether
{
    private readonly HashSet<PartId> renewed;

    /// <param name="family">The family.</param>
    /// <param name="asked">The parts that are renewed for a reason of their own.</param>
    public RenewedTogether(Family family, IEnumerable<PartId> asked)
    {
        renewed = [.. asked];
        ILookup<PartId, PartId> inside = family.Parts.Where(part => part.Assembly is not null).ToLookup(part => part.Assembly!.Value, part => part.Id);
        var queue = new Queue<PartId>(renewed);
        while (queue.TryDequeue(out PartId id))
        {
            foreach (PartId other in family[id].Together.Concat(inside[id]))
            {
                if (renewed.Add(other))
                    queue.Enqueue(other);
            }
        }
    }

    /// <summary>Whether a part is renewed, for a reason of its own or with another.</summary>
    public bool IsRenewed(Part part) => renewed.Contains(part.Id);

    /// <summary>Whether a part comes new inside of one that is renewed whole.</summary>
    public bool ComesInside(Part part) => part.Assembly is { } whole && renewed.Contains(whole);
}
