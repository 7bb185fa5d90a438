using System.Collections.Immutable;
using Contam.Graphs;

namespace Contam.Looks;

/// <summary>
/// Which clean places a find further on speaks against, for one debris.
/// <para>
/// Definition: a find is explained when particles as large as the widest way from a failed part carries there, were nothing clean, come there past no clean
/// place. Where it is not, every clean place on any way from a failed part to it is void. A find to which no way leads from a failed part has a source of
/// its own and makes nothing void. Other finds explain nothing.
/// </para>
/// <para>Cost: linear for each find.</para>
/// </summary>
internal static class Voiding
{
    /// <summary>The void places among the clean ones, rising.</summary>
    public static ImmutableArray<int> Of(DebrisWays ways, IReadOnlySet<int> clean, IReadOnlySet<int> found)
    {
        if (clean.Count == 0 || ways.FromFailed.AreNone)
            return [];
        var isVoid = new SortedSet<int>();
        foreach (IGrouping<int, int> finds in found.Where(ways.FromFailed.LeadTo).Order().GroupBy(ways.FromFailed.WidestTo))
        {
            bool[] explained = ways.FromFailed.Reach(finds.Key, clean.Contains);
            foreach (int find in finds.Where(find => !explained[find]))
                isVoid.UnionWith(Between(ways, find, clean));
        }

        return [.. isVoid];
    }

    /// <summary>Those of these places that lie on some way from a failed part to a find.</summary>
    public static IEnumerable<int> Between(DebrisWays ways, int find, IEnumerable<int> places)
    {
        bool[] leadsThere = Reachable.From(ways.Reversed, [find]);
        return places.Where(place => place != find && leadsThere[place] && ways.FromFailed.LeadTo(place));
    }
}
