using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Which parts come off: those to be renewed or sent out, those that a look takes off, those whose kind comes off and that are flushed, cleaned or tested by
/// themselves, and whatever is in the way of any part that is worked on, and in the way of that. With a part comes off what stands on it, what it rides on,
/// and, where it is renewed, what rides on it. A look alone leaves the part where it is otherwise.
/// </summary>
internal static class WorkList
{
    /// <summary>Every part that is worked on, by its place in the family; <c>null</c> for the others.</summary>
    public static WorkItem?[] Of(Family family, ImmutableArray<PartTreatment> treatments) => Of(family, TreatmentConditions.Of(family, treatments), []);

    /// <summary>Every part that is worked on, by its place in the family; <c>null</c> for the others.</summary>
    /// <param name="family">The family.</param>
    /// <param name="conditions">When each part gets which treatment.</param>
    /// <param name="looks">The deciding looks.</param>
    public static WorkItem?[] Of(Family family, LookCondition?[]?[] conditions, ImmutableArray<PlannedLook> looks)
    {
        var lookAt = new Dictionary<PartId, int>();
        for (int look = 0; look < looks.Length; look++)
        {
            foreach (Part place in looks[look].Places)
                lookAt.Add(place.Id, look);
        }

        var items = new WorkItem?[family.Parts.Length];
        for (int index = 0; index < items.Length; index++)
        {
            Part part = family.Parts[index];
            if (conditions[index] is { } own)
                items[index] = ItemOf(part, own, ComesInside(part)) with { DecidingLook = lookAt.TryGetValue(part.Id, out int look) ? look : null };
        }

        return items;

        bool ComesInside(Part part) => part.Assembly is { } whole && conditions[family.IndexOf(whole)]?[(int)TreatmentKind.Replace] is not null;
    }

    private static WorkItem ItemOf(Part part, LookCondition?[] when, bool comesInside)
    {
        ImmutableArray<LookCondition?> conditions = [.. when];
        if (comesInside)
            return new WorkItem(part, [TreatmentKind.Replace], ComesOff: false, GoesOut: false) { When = conditions, ComesInside = true };
        ImmutableArray<TreatmentKind> treatments = [.. Enum.GetValues<TreatmentKind>().Where(kind => when[(int)kind] is not null)];
        bool isRenewed = treatments.Contains(TreatmentKind.Replace);
        bool isWorkedByItself = treatments.Any(one => IsWorkByItself(part, one));
        // What is not renewed whenever it is worked on goes out when it is not.
        bool goesOut = part.SendOut is not null && treatments.Any(one => one is not (TreatmentKind.Inspect or TreatmentKind.Replace) && !(isRenewed && when[(int)TreatmentKind.Replace]!.Covers(when[(int)one]!)));
        bool isTakenOffToLook = part.LookTakesOff && treatments.Contains(TreatmentKind.Inspect);
        bool comesOff = goesOut || isRenewed || isTakenOffToLook || (part.IsRemovable && isWorkedByItself);
        var item = new WorkItem(part, treatments, comesOff, goesOut) { When = conditions };
        return comesOff ? item with { Off = OwnOff(item) ?? item.Treated! } : item;
    }

    /// <summary>Whether a treatment is done at a part by itself, so that one that can come off does for it.</summary>
    private static bool IsWorkByItself(Part part, TreatmentKind treatment) =>
        treatment is not (TreatmentKind.Inspect or TreatmentKind.Test) || (treatment == TreatmentKind.Test && part.TestAt != TestAt.Fitted);

    /// <summary>When a part that comes off does so for what is done at it; <c>null</c> where all of that can be done where it stands.</summary>
    private static LookCondition? OwnOff(WorkItem item) => item.Any(one => IsWorkByItself(item.Part, one)
        || (item.GoesOut && one == TreatmentKind.Test) || (item.Part.LookTakesOff && one == TreatmentKind.Inspect));

    /// <summary>
    /// The same work with everything off that must be for any of it, however many parts deep, and when. What has to be off for a deciding look is off by what
    /// is known when that look is made. Conditions only grow, so the turns end.
    /// </summary>
    public static WorkItem?[] WithAccess(Family family, WorkItem?[] work, ImmutableArray<PlannedLook> looks = default)
    {
        WorkItem?[] items = [.. work];
        ILookup<PartId, int> standing = Numbers(family).SelectMany(index => family.Parts[index].StandsOn.Select(below => (Below: below, Index: index))).ToLookup(pair => pair.Below, pair => pair.Index);
        ILookup<PartId, int> riding = Numbers(family).Where(index => family.Parts[index].RidesOn is not null).ToLookup(index => family.Parts[index].RidesOn!.Value);
        ILookup<int, int> carried = Numbers(family).Where(index => Carriers.CarrierOf(family, index) >= 0).ToLookup(index => Carriers.CarrierOf(family, index));
        var queue = new Queue<int>(Numbers(family).Where(index => items[index] is not null));
        do
        {
            Close();
            WidenForLooks();
        }
        while (queue.Count > 0);
        return items;

        void Close()
        {
            while (queue.TryDequeue(out int index))
            {
                WorkItem item = items[index]!;
                foreach ((PartId other, LookCondition when) in item.AllAccess.ToArray())
                {
                    TakeOutOfTheSameWhole(family.IndexOf(other), index);
                    TakeOff(family.IndexOf(other), when);
                }

                if (item is { ComesOff: true, Part.Kind.IsRenewedWhenOut: true })
                {
                    Renew(index, item.Off);
                    item = items[index]!;
                }

                if (!item.ComesOff)
                {
                    // What stays on a carrier is worked on while that is off, so it is off whenever there is work.
                    if (item is { IsCleaned: true, ComesInside: false } && OffCarrier(index) is var bench and >= 0)
                        TakeOff(bench, item.Cleaned);
                    if (!item.ComesInside)
                        continue;
                }

                foreach (int other in standing[item.Part.Id])
                    TakeOff(other, item.ComesOff ? item.Off : item.WhenDone(TreatmentKind.Replace));
                if (item.ComesOff && item.Part.RidesOn is { } carrier)
                    TakeOff(family.IndexOf(carrier), item.Off);
                foreach (int other in item.Has(TreatmentKind.Replace) ? riding[item.Part.Id] : [])
                    TakeOff(other, item.WhenDone(TreatmentKind.Replace));
                foreach (int rider in item.ComesOff ? OnIt(index).ToArray() : [])
                {
                    if (items[rider] is { IsCleaned: true, ComesOff: false, ComesInside: false } on)
                        TakeOff(index, on.Cleaned);
                }
            }
        }

        // What comes new inside of a whole, and is in the way of something that is moved over to the new one, is taken out by itself after all.
        void TakeOutOfTheSameWhole(int index, int reached)
        {
            if (items[index] is not { ComesInside: true } inside || !SitsOn(reached, family.IndexOf(inside.Part.Assembly!.Value)))
                return;
            items[index] = inside with { ComesInside = false, ComesOff = true, Off = inside.WhenDone(TreatmentKind.Replace) };
            queue.Enqueue(index);
        }

        bool SitsOn(int index, int whole)
        {
            for (int at = Carriers.CarrierOf(family, index); at >= 0; at = Carriers.CarrierOf(family, at))
            {
                if (at == whole)
                    return true;
            }

            return false;
        }

        void TakeOff(int index, LookCondition when)
        {
            if (items[index] is { ComesInside: true })
            {
                // It goes with what it is inside of.
                int whole = index;
                while (items[whole] is { ComesInside: true } inside)
                    whole = family.IndexOf(inside.Part.Assembly!.Value);
                index = whole;
            }

            WorkItem? item = items[index];
            LookCondition off = item is null ? when : item.ComesOff ? item.Off.Or(when) : OwnOff(item)?.Or(when) ?? when;
            if (item is { ComesOff: true } && item.Off.Equals(off))
                return;
            items[index] = item is null ? new WorkItem(family.Parts[index], [], ComesOff: true, GoesOut: false) { Off = off } : item with { ComesOff = true, Off = off };
            queue.Enqueue(index);
        }

        // What is not put back once it is out is renewed, and with it what makes a set with it.
        void Renew(int first, LookCondition when)
        {
            var waiting = new Queue<int>([first]);
            while (waiting.TryDequeue(out int index))
            {
                if (items[index] is { ComesInside: true } || (items[index] is { } known && known.Has(TreatmentKind.Replace) && known.WhenDone(TreatmentKind.Replace).Covers(when)))
                    continue;
                TakeOff(index, when);
                items[index] = items[index]!.Renewed(when);
                queue.Enqueue(index);
                foreach (PartId mate in family.Parts[index].Together)
                    waiting.Enqueue(family.IndexOf(mate));
            }
        }

        void WidenForLooks()
        {
            for (int look = 0; look < (looks.IsDefault ? 0 : looks.Length); look++)
            {
                foreach (int index in OffFor(family, items, looks[look]))
                {
                    WorkItem item = items[index]!;
                    LookCondition known = PlannedLooks.KnownBefore(looks, look, item.Off);
                    if (known.Equals(item.Off))
                        continue;
                    items[index] = item with { Off = known };
                    queue.Enqueue(index);
                }
            }
        }

        // The nearest carrier that comes off, or -1.
        int OffCarrier(int index)
        {
            for (int at = Carriers.CarrierOf(family, index); at >= 0; at = Carriers.CarrierOf(family, at))
            {
                if (items[at] is { ComesOff: true })
                    return at;
            }

            return -1;
        }

        // What stays on a carrier when that is off, or in it.
        IEnumerable<int> OnIt(int index)
        {
            var waiting = new Queue<int>(carried[index]);
            while (waiting.TryDequeue(out int other))
            {
                if (items[other] is { ComesOff: true })
                    continue;
                yield return other;
                foreach (int next in carried[other])
                    waiting.Enqueue(next);
            }
        }
    }

    /// <summary>
    /// What must be off for a look: what is in its way, and the place itself where the look takes it off; with what stands on that, what carries it, and what is
    /// in the way of that. Rising.
    /// </summary>
    public static SortedSet<int> OffFor(Family family, WorkItem?[] items, PlannedLook look)
    {
        var off = new SortedSet<int>();
        var waiting = new Queue<int>(look.Places.SelectMany(place => place.LookTakesOff ? [place.Id] : items[family.IndexOf(place.Id)]!.LookAccess.AsEnumerable()).Select(family.IndexOf));
        while (waiting.TryDequeue(out int index))
        {
            while (items[index] is { ComesInside: true } inside)
                index = family.IndexOf(inside.Part.Assembly!.Value);
            if (items[index] is not { ComesOff: true } || !off.Add(index))
                continue;
            Part part = family.Parts[index];
            IEnumerable<int> standing = Numbers(family).Where(other => family.Parts[other].StandsOn.Contains(part.Id));
            foreach (int next in part.Access.Select(family.IndexOf).Concat(standing).Concat(part.RidesOn is { } carrier ? [family.IndexOf(carrier)] : []))
                waiting.Enqueue(next);
        }

        return off;
    }

    private static IEnumerable<int> Numbers(Family family) => Enumerable.Range(0, family.Parts.Length);
}
