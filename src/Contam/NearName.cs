namespace Contam;

/// <summary>Finds the name that was likely meant where a name is unknown.</summary>
internal static class NearName
{
    /// <summary>Names longer than this are not looked at: nobody mistypes so much.</summary>
    private const int LongestName = 64;

    /// <summary>
    /// The candidate that is fewest slips away (a letter too many, too few, wrong, or two letters swapped), at most one slip for every three
    /// letters and never more than three; of several as near the first; <c>null</c> where none is.
    /// Cost: the product of the two lengths for each candidate of about the same length.
    /// </summary>
    public static string? Of(string name, IEnumerable<string> candidates)
    {
        if (name.Length is 0 or > LongestName)
            return null;
        int allowed = Math.Min(name.Length / 3, 3);
        string? nearest = null;
        if (allowed == 0)
            return null;
        foreach (string candidate in candidates)
        {
            if (Math.Abs(candidate.Length - name.Length) > allowed || candidate.Length > LongestName)
                continue;
            int slips = Slips(name, candidate, allowed);
            // A name made anew in every letter is no slip, however short it is.
            if (slips > allowed || slips >= Math.Max(name.Length, candidate.Length) || slips == 0)
                continue;
            nearest = candidate;
            allowed = slips - 1;
            if (allowed == 0)
                break;
        }

        return nearest;
    }

    /// <summary>The only candidate that begins with these letters, of which there are at least three; else <c>null</c>.</summary>
    internal static string? Beginning(string letters, IEnumerable<string> candidates)
    {
        string[] all = letters.Length < 3 ? [] : [.. candidates.Where(candidate => candidate.StartsWith(letters, StringComparison.OrdinalIgnoreCase)).Take(2)];
        return all is [var only] ? only : null;
    }

    /// <summary>
    /// Up to <paramref name="most"/> candidates that may have been meant, the nearest first: by slips, or because one name holds the other.
    /// </summary>
    internal static IEnumerable<string> AllOf(string name, IEnumerable<string> candidates, int most)
    {
        if (name.Length is 0 or > LongestName)
            return [];
        int allowed = Math.Clamp(name.Length / 3, 1, 4);
        return candidates
            .Where(candidate => candidate.Length <= LongestName)
            .Select(candidate => (Candidate: candidate, Slips: Slips(name, candidate), Holds: name.Length >= 3 && candidate.Contains(name, StringComparison.Ordinal)))
            .Where(one => one.Slips <= allowed || one.Holds)
            .OrderBy(one => one.Slips)
            .Take(most)
            .Select(one => one.Candidate);
    }

    /// <summary>
    /// The optimal string alignment distance: the fewest insertions, deletions, substitutions and swaps of neighbours, no letter touched twice.
    /// Both texts are short.
    /// </summary>
    /// <param name="from">One text.</param>
    /// <param name="to">The other.</param>
    /// <param name="most">Where there are more, the answer is any number above this.</param>
    internal static int Slips(string from, string to, int most = int.MaxValue)
    {
        Span<int> twoBack = stackalloc int[to.Length + 1];
        Span<int> oneBack = stackalloc int[to.Length + 1];
        Span<int> current = stackalloc int[to.Length + 1];
        for (int column = 0; column <= to.Length; column++)
            oneBack[column] = column;
        for (int row = 1; row <= from.Length; row++)
        {
            current[0] = row;
            int least = row;
            for (int column = 1; column <= to.Length; column++)
            {
                int same = from[row - 1] == to[column - 1] ? 0 : 1;
                int best = Math.Min(Math.Min(current[column - 1], oneBack[column]) + 1, oneBack[column - 1] + same);
                if (row > 1 && column > 1 && from[row - 1] == to[column - 2] && from[row - 2] == to[column - 1])
                    best = Math.Min(best, twoBack[column - 2] + 1);
                current[column] = best;
                least = Math.Min(least, best);
            }

            // A swap reaches two rows back, so that only a row two slips above the most settles it.
            if (least - 1 > most)
                return least;
            Span<int> free = twoBack;
            twoBack = oneBack;
            oneBack = current;
            current = free;
        }

        return oneBack[to.Length];
    }
}
