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

    /// <summary>Whether it comes new inside of a part that is renewed whole, so that nothing is done with it by itself.</summary>
    public bool ComesInside { get; init; }

    /// <summary>Whether something moves debris out of it, rather than only looking or measuring.</summary>
    public bool IsCleaned => Treatments.Any(one => one is TreatmentKind.Flush or TreatmentKind.Clean or TreatmentKind.Replace);

    /// <summary>What must be off for this work: for a part that stays and is only looked at, what is in the way of the look.</summary>
    public ImmutableArray<PartId> Access => !ComesOff && Treatments is [TreatmentKind.Inspect] && Part.Inspect?.Access is { } forTheLook ? forTheLook : Part.Access;

    /// <summary>What must be off for a look at it where it stands; empty where it is not looked at, or is looked at as it comes off.</summary>
    public ImmutableArray<PartId> LookAccess => Has(TreatmentKind.Inspect) ? Part.Inspect?.Access ?? Part.Access : [];

    /// <summary>Whether it is only tried where it stands, so that the test stands in for a look.</summary>
    public bool IsOnlyTriedInPlace => !ComesOff && Treatments is [TreatmentKind.Test];

    /// <summary>What must be off for any of this work: for a part that stays, for a look at it too.</summary>
    public IEnumerable<PartId> AllAccess => ComesInside ? [] : ComesOff ? Access : Access.Union(LookAccess);

    public bool Has(TreatmentKind treatment) => Treatments.Contains(treatment);
}

/// <summary>
/// Which parts come off: those to be renewed or sent out, those that a look takes off, those whose kind comes off and that are flushed, cleaned or tested by
/// themselves, and whatever is in the way of any part that is worked on, and in the way of that. With a part comes off what stands on it, what it rides on,
/// and, where it is renewed, what rides on it. A look alone leaves the part where it is otherwise.
/// </summary>
internal static class WorkList
{
    /// <summary>Every part that is worked on, by its place in the family; <c>null</c> for the others.</summary>
    public static WorkItem?[] Of(Family family, ImmutableArray<PartTreatment> treatments)
    {
        var together = new RenewedTogether(family, treatments.Where(treated => treated.Treatments.Contains(TreatmentKind.Replace)).Select(treated => treated.Part.Id));
        var items = new WorkItem?[family.Parts.Length];
        foreach (PartTreatment treated in treatments.Where(treated => !treated.Treatments.IsEmpty))
            items[family.IndexOf(treated.Part.Id)] = ItemOf(treated.Part, treated.Treatments, together.ComesInside(treated.Part));
        // Of a set also what debris never came to.
        for (int index = 0; index < items.Length; index++)
        {
            if (items[index] is null && together.IsRenewed(family.Parts[index]))
                items[index] = ItemOf(family.Parts[index], [TreatmentKind.Replace], together.ComesInside(family.Parts[index]));
        }

        return items;
    }

    private static WorkItem ItemOf(Part part, ImmutableArray<TreatmentKind> treatments, bool comesInside)
    {
        if (comesInside)
            return new WorkItem(part, treatments, ComesOff: false, GoesOut: false) { ComesInside = true };
        bool isRenewed = treatments.Contains(TreatmentKind.Replace);
        bool isWorkedByItself = treatments.Any(one => one is not (TreatmentKind.Inspect or TreatmentKind.Test) || (one == TreatmentKind.Test && part.TestAt != TestAt.Fitted));
        bool goesOut = part.SendOut is not null && !isRenewed && treatments.Any(one => one != TreatmentKind.Inspect);
        bool isTakenOffToLook = part.LookTakesOff && treatments.Contains(TreatmentKind.Inspect);
        return new WorkItem(part, treatments, goesOut || isRenewed || isTakenOffToLook || (part.IsRemovable && isWorkedByItself), goesOut);
    }

    /// <summary>The same work with everything off that must be for any of it, however many parts deep.</summary>
    public static WorkItem?[] WithAccess(Family family, WorkItem?[] work)
    {
        WorkItem?[] items = [.. work];
        ILookup<PartId, int> standing = Numbers(family).SelectMany(index => family.Parts[index].StandsOn.Select(below => (Below: below, Index: index))).ToLookup(pair => pair.Below, pair => pair.Index);
        ILookup<PartId, int> riding = Numbers(family).Where(index => family.Parts[index].RidesOn is not null).ToLookup(index => family.Parts[index].RidesOn!.Value);
        var queue = new Queue<int>(Numbers(family).Where(index => items[index] is not null));
        while (queue.TryDequeue(out int index))
        {
            WorkItem item = items[index]!;
            foreach (int other in item.AllAccess.Select(family.IndexOf).ToArray())
                TakeOff(other);
            if (!item.ComesOff && !item.ComesInside)
                continue;
            foreach (int other in standing[item.Part.Id])
                TakeOff(other);
            if (item.ComesOff && item.Part.RidesOn is { } carrier)
                TakeOff(family.IndexOf(carrier));
            foreach (int other in item.Has(TreatmentKind.Replace) ? riding[item.Part.Id] : [])
                TakeOff(other);
        }

        return items;

        void TakeOff(int index)
        {
            if (items[index] is { ComesOff: true } or { ComesInside: true })
                return;
            items[index] = items[index] is { } item ? item with { ComesOff = true } : new WorkItem(family.Parts[index], [], ComesOff: true, GoesOut: false);
            queue.Enqueue(index);
        }
    }

    private static IEnumerable<int> Numbers(Family family) => Enumerable.Range(0, family.Parts.Length);
}
