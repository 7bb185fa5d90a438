using System.Globalization;

namespace Contam.Reports;

/// <summary>
/// Folds entries that differ only in the number of a repeated part into one: <c>Injector 1</c>, <c>Injector 2</c>, <c>Injector 3</c> become <c>Injector 1–3</c>.
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

    /// <summary>
    /// As <see cref="Fold"/>, but entries that are worked in turns at one repeated part (off 1, away 1, off 2, away 2) are brought together first
    /// (off 1–2, away 1–2), unless one waits for another that would then stand behind it. What is not folded keeps its place.
    /// </summary>
    /// <param name="entries">The entries.</param>
    /// <param name="repeatOf">What is repeated; empty for an entry that is never folded.</param>
    /// <param name="numberOf">Its number.</param>
    /// <param name="keyOf">What must be the same.</param>
    /// <param name="waitsFor">Whether the first entry waits for the second.</param>
    public static List<List<T>> FoldTurns<T>(IEnumerable<T> entries, Func<T, string> repeatOf, Func<T, int> numberOf, Func<T, string> keyOf, Func<T, T, bool> waitsFor)
    {
        var groups = new List<List<T>>();
        var turn = new List<T>();
        foreach (T entry in entries)
        {
            if (turn.Count > 0 && (repeatOf(entry).Length == 0 || !string.Equals(repeatOf(turn[0]), repeatOf(entry), StringComparison.Ordinal)))
                CloseTurn();
            turn.Add(entry);
        }

        CloseTurn();
        return groups;

        void CloseTurn()
        {
            // Most turns are of one entry, of which nothing need be known.
            if (turn.Count < 2)
            {
                if (turn.Count == 1)
                    groups.Add([turn[0]]);
                turn.Clear();
                return;
            }

            var places = turn.Select((entry, place) => (entry, place)).ToLookup(one => keyOf(one.entry), one => one.place, StringComparer.Ordinal);
            List<int>[] together = [.. places.SelectMany(alike => Fold(alike, place => numberOf(turn[place]), _ => alike.Key)).OrderBy(group => group[0])];
            T[] inOrder = [.. together.SelectMany(group => group).Select(place => turn[place])];
            groups.AddRange(KeepsOrder(inOrder) ? together.Select(group => group.ConvertAll(place => turn[place])) : Fold(turn, numberOf, keyOf));
            turn.Clear();
        }

        bool KeepsOrder(T[] inOrder)
        {
            for (int first = 0; first < inOrder.Length; first++)
            {
                for (int behind = first + 1; behind < inOrder.Length; behind++)
                {
                    if (waitsFor(inOrder[first], inOrder[behind]))
                        return false;
                }
            }

            return true;
        }
    }

    /// <summary>A number range: <c>3</c>, or <c>3–7</c>.</summary>
    public static string Range(int first, int last) =>
        first == last ? first.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{first}–{last}");
}
