using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>What may hang on which of the deciding looks.</summary>
internal static class PlannedLooks
{
    /// <summary>
    /// The same condition with no letter too many: a look that is due only where others of the condition count as found adds nothing, as no find of it can
    /// stand without theirs. Met in just the same histories. Quadratic in the looks, which are few.
    /// </summary>
    /// <param name="due">When each look is made, by number; each on earlier looks only.</param>
    /// <param name="when">The condition.</param>
    public static LookCondition Simplest(IReadOnlyList<LookCondition> due, LookCondition when)
    {
        var named = new HashSet<int>(when.OnlyIf);
        foreach (int look in when.OnlyIf.OrderDescending())
        {
            named.Remove(look);
            if (!IsImplied(look))
                named.Add(look);
        }

        return named.Count == when.OnlyIf.Length ? when : new LookCondition { OnlyIf = [.. named], Unless = when.Unless };

        // Whether a find at this look stands only together with one at a look that is named.
        bool IsImplied(int look) => !due[look].OnlyIf.IsEmpty && due[look].OnlyIf.All(earlier => named.Contains(earlier) || IsImplied(earlier));
    }

    /// <summary>
    /// The narrowest condition that is met wherever this one is and that names only looks before this one: a find at a later look needs that look due, so what
    /// hangs on it may be done whenever that is. The looks hang on earlier ones only, so it ends.
    /// </summary>
    public static LookCondition KnownBefore(ImmutableArray<PlannedLook> looks, int look, LookCondition when)
    {
        if (when.Looks.All(one => one < look))
            return when;
        var known = new SortedSet<int>();
        var waiting = new Queue<int>(when.OnlyIf);
        var seen = new HashSet<int>();
        while (waiting.TryDequeue(out int one))
        {
            if (one < look)
            {
                known.Add(one);
                continue;
            }

            if (looks[one].Due.OnlyIf.IsEmpty)
                return new LookCondition { Unless = [.. when.Unless.Where(other => other < look)] };
            foreach (int earlier in looks[one].Due.OnlyIf.Where(seen.Add))
                waiting.Enqueue(earlier);
        }

        return new LookCondition { OnlyIf = [.. known], Unless = [.. when.Unless.Where(other => other < look)] };
    }
}
