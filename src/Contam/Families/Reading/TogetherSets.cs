using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Contam.Families.Reading;

/// <summary>Joins what is renewed together to sets: where one part names another, either is renewed with the other, and with whatever that one is renewed with.</summary>
internal static class TogetherSets
{
    /// <summary>
    /// The parts, each with its whole set in the order of the family; all parts of a set share one list. Method: union by the part that stands first, with
    /// paths halved (Tarjan and van Leeuwen, "Worst-case analysis of set union algorithms", Journal of the ACM 31, 1984). Cost: nearly linear.
    /// </summary>
    public static ImmutableArray<Part> Joined(ImmutableArray<Part> parts)
    {
        if (parts.All(part => part.Together.IsEmpty))
            return parts;
        var indexOf = new Dictionary<PartId, int>(parts.Length);
        for (int part = 0; part < parts.Length; part++)
            indexOf[parts[part].Id] = part;
        int[] first = [.. Enumerable.Range(0, parts.Length)];
        for (int part = 0; part < parts.Length; part++)
        {
            foreach (PartId other in parts[part].Together)
            {
                // An id that was not found has had its problem.
                if (indexOf.TryGetValue(other, out int found))
                    Join(part, found);
            }
        }

        ILookup<int, int> setOf = Enumerable.Range(0, parts.Length).ToLookup(FirstOf);
        Part[] joined = [.. parts];
        foreach (IGrouping<int, int> set in setOf.Where(set => set.Skip(1).Any()))
        {
            ImmutableArray<PartId> together = [.. set.Select(part => parts[part].Id)];
            foreach (int part in set)
                joined[part] = parts[part] with { Together = together };
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(joined);

        int FirstOf(int part)
        {
            while (first[part] != part)
                part = first[part] = first[first[part]];
            return part;
        }

        void Join(int one, int other)
        {
            (int low, int high) = (FirstOf(one), FirstOf(other));
            first[Math.Max(low, high)] = Math.Min(low, high);
        }
    }
}
