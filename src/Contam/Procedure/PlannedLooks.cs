using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>What may hang on which of the deciding looks.</summary>
internal static class PlannedLooks
{
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
