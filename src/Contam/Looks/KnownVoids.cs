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
