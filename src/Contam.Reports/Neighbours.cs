namespace Contam.Reports;

/// <summary>Groups of neighbours.</summary>
internal static class Neighbours
{
    /// <summary>Entries in their order, in groups of neighbours with the same key.</summary>
    public static IEnumerable<List<T>> GroupAdjacent<T, TKey>(this IEnumerable<T> entries, Func<T, TKey> keyOf)
    {
        var group = new List<T>();
        foreach (T entry in entries)
        {
            if (group.Count > 0 && !EqualityComparer<TKey>.Default.Equals(keyOf(group[^1]), keyOf(entry)))
            {
                yield return group;
                group = [];
            }

            group.Add(entry);
        }

        if (group.Count > 0)
            yield return group;
    }
}
