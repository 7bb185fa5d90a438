using System.Globalization;

namespace Contam.Reports;

/// <summary>
/// Folds neighbours that differ only in the number of a repeated part into one: <c>Injector 1</c>, <c>Injector 2</c>, <c>Injector 3</c> become <c>Injector 1–3</c>.
/// </summary>
internal static class RepeatFolding
{
    /// <summary>
    /// The entries in their order, neighbours folded where <paramref name="keyOf"/> gives the same key and the numbers rise by one.
    /// </summary>
    /// <param name="entries">The entries.</param>
    /// <param name="numberOf">The number of a repeated part; 0 for an entry that is never folded.</param>
    /// <param name="keyOf">What must be the same.</param>
    public static List<List<T>> Fold<T>(IEnumerable<T> entries, Func<T, int> numberOf, Func<T, string> keyOf)
    {
        var groups = new List<List<T>>();
        foreach (T entry in entries)
        {
            int number = numberOf(entry);
            bool joins = number > 0
                && groups.Count > 0
                && numberOf(groups[^1][^1]) == number - 1
                && string.Equals(keyOf(groups[^1][^1]), keyOf(entry), StringComparison.Ordinal);
            if (joins)
                groups[^1].Add(entry);
            else
                groups.Add([entry]);
        }

        return groups;
    }

    /// <summary>A number range: <c>3</c>, or <c>3–7</c>.</summary>
    public static string Range(int first, int last) =>
        first == last ? first.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{first}–{last}");

    /// <summary>The number at the end of an id such as <c>injector-3</c>, or 0.</summary>
    public static int NumberAtEnd(string id)
    {
        int dash = id.LastIndexOf('-');
        return dash > 0 && int.TryParse(id.AsSpan(dash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 0;
    }
}
