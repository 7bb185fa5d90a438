using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What is done with one part, apart from the order.</summary>
/// <param name="Part">The part.</param>
/// <param name="Treatments">Its treatments; empty for a part that is only in the way.</param>
/// <param name="ComesOff">Whether it is taken off; else it is treated where it stands.</param>
/// <param name="GoesOut">Whether its treatments are done at an outside workshop.</param>
internal sealed record WorkItem(Part Part, ImmutableArray<TreatmentKind> Treatments, bool ComesOff, bool GoesOut)
{
    public bool IsOnlyInTheWay => Treatments.IsEmpty;

    /// <summary>Whether something moves debris out of it, rather than only looking or measuring.</summary>
    public bool IsCleaned => Treatments.Any(one => one is TreatmentKind.Flush or TreatmentKind.Clean or TreatmentKind.Replace);

    /// <summary>What must be off for this work: for a part that stays and is only looked at, what is in the way of the look.</summary>
    public ImmutableArray<PartId> Access => !ComesOff && Treatments is [TreatmentKind.Inspect] && Part.Inspect?.Access is { } forTheLook ? forTheLook : Part.Access;

    public bool Has(TreatmentKind treatment) => Treatments.Contains(treatment);
}

/// <summary>
/// Which parts come off: those to be renewed or sent out, those whose kind comes off and that are flushed, cleaned or tested, and whatever is in the way of
/// any part that is worked on, and in the way of that. A look alone leaves the part where it is.
/// </summary>
internal static class WorkList
{
    /// <summary>Every part that is worked on, by its place in the family; <c>null</c> for the others.</summary>
    public static WorkItem?[] Of(Family family, ImmutableArray<PartTreatment> treatments)
    {
        var items = new WorkItem?[family.Parts.Length];
        foreach (PartTreatment treated in treatments.Where(treated => !treated.Treatments.IsEmpty))
        {
            Part part = treated.Part;
            bool isMoreThanLookedAt = treated.Treatments.Any(one => one != TreatmentKind.Inspect);
            bool isRenewed = treated.Treatments.Contains(TreatmentKind.Replace);
            bool goesOut = part.SendOut is not null && !isRenewed && isMoreThanLookedAt;
            items[family.IndexOf(part.Id)] = new WorkItem(part, treated.Treatments, goesOut || isRenewed || part.IsRemovable && isMoreThanLookedAt, goesOut);
        }

        return items;
    }

    /// <summary>The same work with everything off that is in the way of any of it, however many parts deep.</summary>
    public static WorkItem?[] WithAccess(Family family, WorkItem?[] work)
    {
        WorkItem?[] items = [.. work];
        var queue = new Queue<int>(Enumerable.Range(0, items.Length).Where(index => items[index] is not null));
        while (queue.TryDequeue(out int index))
        {
            foreach (int other in items[index]!.Access.Select(family.IndexOf))
            {
                if (items[other] is { ComesOff: true })
                    continue;
                items[other] = items[other] is { } item ? item with { ComesOff = true } : new WorkItem(family.Parts[other], [], ComesOff: true, GoesOut: false);
                queue.Enqueue(other);
            }
        }

        return items;
    }
}
