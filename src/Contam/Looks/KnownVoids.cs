using System.Collections.Immutable;

namespace Contam.Looks;

/// <summary>
/// Which clean looks finds make void, as <see cref="Voiding"/> says, for many histories of the same looks: what a clean set leaves open, and what lies between
/// the failed parts and a find, is searched once.
/// </summary>
internal sealed class KnownVoids
{
    private readonly FixedLooks looks;
    private readonly ImmutableArray<ImmutableArray<Find>>[] ofLook;
    private readonly ImmutableArray<Find>[] foundBefore;
    private readonly Dictionary<(int Debris, int Level, int Clean), bool[]> open = [];
    private readonly Dictionary<(int Clean, int Found), int> known = [];

    public KnownVoids(FixedLooks looks)
    {
        this.looks = looks;
        ofLook = [.. looks.Ways.Select(ways => looks.Places.Select(places => FindsAt(ways, places)).ToImmutableArray())];
        foundBefore = [.. looks.Ways.Select(ways => FindsAt(ways, ways.Found))];
    }

    /// <summary>The clean looks, as bits, that these finds, and those made beforehand, make void for some debris.</summary>
    public int Of(int clean, int found)
    {
        if (known.TryGetValue((clean, found), out int isVoid))
            return isVoid;
        for (int debris = 0; debris < ofLook.Length; debris++)
        {
            foreach (Find find in foundBefore[debris].Concat(LookMask.Looks(found).SelectMany(look => ofLook[debris][look])))
            {
                if ((find.Between & clean & ~isVoid) != 0 && !Open(debris, find.Level, clean)[find.Place])
                    isVoid |= find.Between & clean;
            }
        }

        return known[(clean, found)] = isVoid;
    }

    /// <summary>
    /// The same for all outcomes: a find makes these looks void where all of those are clean. Of each find the smallest sets of clean looks past which it is not
    /// explained, fewest looks first; on which <see cref="Of"/> is the union over what was found of the rules whose looks are clean, since finds explain nothing.
    /// </summary>
    /// <remarks>Cost: for each find past which nothing is left open, one search for each set of the looks on its ways, at most 65,536; most finds have none.</remarks>
    public ImmutableArray<VoidRule> Rules()
    {
        var rules = new SortedDictionary<(int Found, int Size, int Clean), int>();
        for (int debris = 0; debris < ofLook.Length; debris++)
        {
            foreach (Find find in foundBefore[debris])
                Add(debris, find, 0);
            for (int look = 0; look < looks.Count; look++)
            {
                foreach (Find find in ofLook[debris][look])
                    Add(debris, find, LookMask.Of(look));
            }
        }

        return [.. rules.Select(rule => new VoidRule(rule.Key.Found, rule.Key.Clean, rule.Value))];

        void Add(int debris, Find find, int look)
        {
            int between = find.Between & ~look;
            foreach (int clean in SmallestCuts(between, clean => !Open(debris, find.Level, clean)[find.Place]))
            {
                (int, int, int) key = (look, System.Numerics.BitOperations.PopCount((uint)clean), clean);
                rules[key] = rules.GetValueOrDefault(key) | between;
            }
        }
    }

    /// <summary>The smallest sets of these looks for which it is so; where it is for a set, it is for every larger one.</summary>
    private static List<int> SmallestCuts(int among, Func<int, bool> isCut)
    {
        var cuts = new List<int>();
        if (among == 0 || !isCut(among))
            return cuts;
        IEnumerable<int> sets = Enumerable.Range(0, among + 1).Where(set => (set & ~among) == 0).OrderBy(set => System.Numerics.BitOperations.PopCount((uint)set)).ThenBy(set => set);
        foreach (int set in sets)
        {
            if (!cuts.Exists(cut => (set & cut) == cut) && isCut(set))
                cuts.Add(set);
        }

        return cuts;
    }

    private bool[] Open(int debris, int level, int clean)
    {
        if (!open.TryGetValue((debris, level, clean), out bool[]? reached))
        {
            DebrisWays ways = looks.Ways[debris];
            open[(debris, level, clean)] = reached = ways.FromFailed.Reach(level, vertex => (looks.IsPlace(vertex) && (clean & LookMask.Of(looks.LookAt(vertex))) != 0) || ways.SaidClean.Contains(vertex));
        }

        return reached;
    }

    private ImmutableArray<Find> FindsAt(DebrisWays ways, ImmutableArray<int> places) =>
    [
        .. places.Where(place => ways.IsReached[place] && ways.FromFailed.LeadTo(place)).Select(place => new Find(
            place,
            ways.FromFailed.WidestTo(place),
            Voiding.Between(ways, place, looks.Places.SelectMany(look => look)).Aggregate(0, (mask, between) => mask | LookMask.Of(looks.LookAt(between))))),
    ];

    /// <summary>A place of a find, the level of the widest way there, and the looks that lie on some way there.</summary>
    private sealed record Find(int Place, int Level, int Between);
}

/// <summary>A find at a look makes clean looks void, for all that each is bits.</summary>
/// <param name="Found">The look of the find; 0 for what was found beforehand.</param>
/// <param name="Clean">Where all of these are clean</param>
/// <param name="Void">those of these that are clean are void.</param>
internal sealed record VoidRule(int Found, int Clean, int Void);
