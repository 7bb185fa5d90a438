using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>
/// The smallest sets of suspects that together account for every find.
/// <para>
/// Definition: a set <em>covers</em> the finds when each find is accounted for by one of the set at least; a smallest one has the fewest members. (The
/// minimum set cover, or seen from the finds the minimum hitting set, as in R. Reiter, "A theory of diagnosis from first principles", Artificial
/// Intelligence 32, 1987.)
/// </para>
/// <para>
/// Method: exact, by rising size. The find with the fewest accounts left is branched on; a suspect tried at a branch is shut out of the later ones, so that
/// every set comes once. Bound: <see cref="MostTries"/> branches and <see cref="MostFinds"/> finds with different accounts. Beyond it one set is given,
/// made by taking the suspect that accounts for most of what is left, and it is not said to be smallest.
/// </para>
/// </summary>
internal sealed class SmallestSets
{
    /// <summary>How many sets are listed at most.</summary>
    public const int MostSets = 20;

    /// <summary>How many branches the exact search may take.</summary>
    public const int MostTries = 200_000;

    /// <summary>How many finds with different accounts the exact search takes in.</summary>
    public const int MostFinds = 64;

    private readonly ulong[] covers;
    private readonly int[][] accounts;
    private readonly int most;
    private readonly List<int[]> found = [];
    private readonly bool[] isShut;
    private int tries;
    private bool isCutShort;

    private SmallestSets(bool[][] explains, ImmutableArray<double> priors)
    {
        // The likelier suspect is tried first, so that where the list is cut the likelier sets are in it; the sort keeps file order otherwise.
        int[] order = [.. Enumerable.Range(0, priors.Length).OrderByDescending(source => priors[source])];
        accounts = [.. explains.Select(row => order.Where(source => row[source]).ToArray())];
        covers = new ulong[priors.Length];
        for (int find = 0; find < explains.Length; find++)
        {
            foreach (int source in accounts[find])
                covers[source] |= 1ul << find;
        }

        most = covers.Max(BitOperations.PopCount);
        isShut = new bool[priors.Length];
    }

    private SmallestSets(ImmutableArray<ImmutableArray<PartId>> sets, bool isComplete, bool isSmallest)
    {
        Sets = sets;
        IsComplete = isComplete;
        IsSmallest = isSmallest;
        covers = [];
        accounts = [];
        isShut = [];
    }

    /// <summary>No set is needed.</summary>
    public static SmallestSets None { get; } = new([], isComplete: true, isSmallest: true);

    /// <summary>The sets; empty where one suspect is enough, or nothing was found.</summary>
    public ImmutableArray<ImmutableArray<PartId>> Sets { get; } = [];

    /// <summary>Whether all sets of that size are there.</summary>
    public bool IsComplete { get; }

    /// <summary>Whether no smaller set covers.</summary>
    public bool IsSmallest { get; }

    /// <summary>The sets for these finds.</summary>
    /// <param name="explains">For each find whether each suspect accounts for it; at least one does.</param>
    /// <param name="priors">The prior of each suspect.</param>
    /// <param name="ids">The id of each suspect.</param>
    public static SmallestSets Covering(bool[][] explains, ImmutableArray<double> priors, ImmutableArray<PartId> ids)
    {
        // In an order that does not hang on that of the findings, so that neither does the answer, also where it is cut.
        bool[][] distinct = [.. explains.DistinctBy(Written, StringComparer.Ordinal).OrderBy(Written, StringComparer.Ordinal)];
        if (distinct.Length == 0 || Enumerable.Range(0, priors.Length).Any(source => distinct.All(row => row[source])))
            return None;
        if (distinct.Length > MostFinds)
            return new SmallestSets([Named(Greedy(distinct, priors.Length), ids)], isComplete: false, isSmallest: false);

        var search = new SmallestSets(distinct, priors);
        ulong all = distinct.Length == 64 ? ulong.MaxValue : (1ul << distinct.Length) - 1;
        for (int size = 2; search.found.Count == 0 && !search.isCutShort; size++)
            search.Extend(all, size, []);
        if (search.found.Count == 0)
            return new SmallestSets([Named(Greedy(distinct, priors.Length), ids)], isComplete: false, isSmallest: false);
        return new SmallestSets(
            [.. search.found.OrderByDescending(set => set.Aggregate(1.0, (product, source) => product * priors[source])).ThenBy(set => set, InFileOrder).Take(MostSets).Select(set => Named(set, ids))],
            isComplete: !search.isCutShort && search.found.Count <= MostSets,
            isSmallest: true);
    }

    private void Extend(ulong left, int size, ImmutableArray<int> chosen)
    {
        if (left == 0)
        {
            found.Add([.. chosen.Order()]);
            return;
        }

        // No suspect covers more than the best one does, so that a set this small cannot be finished.
        if (size == 0 || BitOperations.PopCount(left) > (long)size * most)
            return;
        if (++tries > MostTries || found.Count > MostSets)
        {
            isCutShort = true;
            return;
        }

        int find = Narrowest(left);
        var shut = new List<int>();
        foreach (int source in accounts[find])
        {
            if (isShut[source])
                continue;
            Extend(left & ~covers[source], size - 1, chosen.Add(source));
            isShut[source] = true;
            shut.Add(source);
        }

        foreach (int source in shut)
            isShut[source] = false;
    }

    private int Narrowest(ulong left)
    {
        int narrowest = -1;
        for (int find = 0; find < accounts.Length; find++)
        {
            if ((left >> find & 1) != 0 && (narrowest < 0 || accounts[find].Length < accounts[narrowest].Length))
                narrowest = find;
        }

        return narrowest;
    }

    private static int[] Greedy(bool[][] explains, int sources)
    {
        var left = explains.ToList();
        var chosen = new List<int>();
        while (left.Count > 0)
        {
            int best = Enumerable.Range(0, sources).MaxBy(source => left.Count(row => row[source]));
            chosen.Add(best);
            left.RemoveAll(row => row[best]);
        }

        return [.. chosen.Order()];
    }

    private static string Written(bool[] row) => string.Concat(row.Select(one => one ? '1' : '0'));

    private static readonly Comparer<int[]> InFileOrder = Comparer<int[]>.Create((left, right) =>
    {
        // All sets are of one size.
        int at = left.AsSpan().CommonPrefixLength(right);
        return at == left.Length ? 0 : left[at].CompareTo(right[at]);
    });

    private static ImmutableArray<PartId> Named(int[] set, ImmutableArray<PartId> ids) => [.. set.Select(source => ids[source])];
}
