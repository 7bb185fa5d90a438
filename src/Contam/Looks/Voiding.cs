using System.Collections.Immutable;

namespace Contam.Looks;

/// <summary>
/// Which clean places a find further on speaks against, for one debris.
/// <para>
/// Definition: a find is explained when particles as large as the widest way from a failed part carries there, were nothing clean, come there past no clean
/// place. Where it is not, every clean place on any way from a failed part to it is void. A find to which no way leads from a failed part has a source of
/// its own and makes nothing void. What was found holds nothing, and explains no other find.
/// </para>
/// <para>Cost: linear for each size that something passes, and for each find.</para>
/// </summary>
internal static class Voiding
{
    /// <summary>The void places among the clean ones, rising.</summary>
    public static ImmutableArray<int> Of(DebrisWays ways, IReadOnlySet<int> clean, IReadOnlySet<int> found)
    {
        if (clean.Count == 0 || found.Count == 0 || ways.Failed.IsEmpty)
            return [];
        int[] widest = ways.WidestFromFailed(found);
        var isVoid = new SortedSet<int>();
        foreach (IGrouping<int, int> finds in found.Where(find => widest[find] >= 0).Order().GroupBy(find => widest[find]))
        {
            bool[] explained = ways.FromFailed(finds.Key, found, clean.Contains);
            foreach (int find in finds.Where(find => !explained[find]))
                isVoid.UnionWith(Between(ways, find, clean));
        }

        return [.. isVoid];
    }

    /// <summary>Those of these places that lie on some way from a failed part to a find.</summary>
    public static IEnumerable<int> Between(DebrisWays ways, int find, IEnumerable<int> places)
    {
        bool[] leadsThere = Spread.Reachable.From(ways.Reversed, [find]);
        bool[] fromFailed = ways.FromFailed(ways.AnySize, NoPlaces, static _ => false);
        return places.Where(place => place != find && leadsThere[place] && fromFailed[place]);
    }

    /// <summary>Nothing.</summary>
    public static IReadOnlySet<int> NoPlaces { get; } = new HashSet<int>();
}
