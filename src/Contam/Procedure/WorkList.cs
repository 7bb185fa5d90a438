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

    /// <summary>Whether it is only looked at, and the family says how: then nothing need come off for it.</summary>
    public bool IsLookedAtAsItIs => !ComesOff && Part.Inspect is not null && Treatments is [TreatmentKind.Inspect];

    public bool Has(TreatmentKind treatment) => Treatments.Contains(treatment);
}

/// <summary>
/// Which parts come off: those to be renewed or sent out, those whose kind comes off and that are flushed, cleaned or tested, and whatever is in the way of
/// any part that is worked on, and in the way of that. A look alone takes the part itself not off, and nothing else where the family says how the look is done.
/// </summary>
internal static class WorkList
{
    /// <summary>Every part that is worked on, by its place in the family; <c>null</c> for the others.</summary>
    public static WorkItem?[] Of(Family family, ImmutableArray<PartTreatment> treatments)
    {
        var items = new WorkItem?[family.Parts.Length];
        var queue = new Queue<int>();
        foreach (PartTreatment treated in treatments)
        {
            if (treated.Treatments.IsEmpty)
                continue;
            int index = family.IndexOf(treated.Part.Id);
            bool goesOut = treated.Part.SendOut is not null
                && !treated.Treatments.Contains(TreatmentKind.Replace)
                && treated.Treatments.Any(one => one != TreatmentKind.Inspect);
            bool comesOff = goesOut
                || treated.Treatments.Contains(TreatmentKind.Replace)
                || treated.Part.IsRemovable && treated.Treatments.Any(one => one != TreatmentKind.Inspect);
            items[index] = new WorkItem(treated.Part, treated.Treatments, comesOff, goesOut);
            queue.Enqueue(index);
        }

        while (queue.TryDequeue(out int index))
        {
            if (items[index]!.IsLookedAtAsItIs)
                continue;
            foreach (PartId inTheWay in family.Parts[index].Access)
            {
                int other = family.IndexOf(inTheWay);
                if (items[other] is { ComesOff: true })
                    continue;
                bool mustBeReached = items[other] is null or { IsLookedAtAsItIs: true };
                items[other] = items[other] is { } item
                    ? item with { ComesOff = true }
                    : new WorkItem(family.Parts[other], [], ComesOff: true, GoesOut: false);
                if (mustBeReached)
                    queue.Enqueue(other);
            }
        }

        return items;
    }
}
