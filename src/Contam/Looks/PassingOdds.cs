using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// How likely debris that is at some parts has come to others: the greatest, over all ways between them, of the product of the shares that the first part of the
/// way and all strictly between pass on. 1 at the parts themselves, 0 where no way leads.
/// <para>
/// Whether what failed passes anything on at all is one chance for all ways from there: with what is left of its share nothing is found anywhere (<see cref="StaysPut"/>).
/// </para>
/// <para>
/// The chance that it came by any way at all is the reliability of a network, which takes time that grows beyond all bounds; the likeliest way alone is taken.
/// Method: Dijkstra's search with products for sums. Cost: joints × log of parts.
/// </para>
/// </summary>
internal static class PassingOdds
{
    /// <summary>The chance that nothing has left any source; 0 where something was found beforehand.</summary>
    public static double StaysPut(ImmutableArray<DebrisWays> ways, ImmutableArray<Part> parts, Func<Part, Debris, double> passesOn)
    {
        if (ways.Any(one => !one.Found.IsEmpty))
            return 0;
        double stays = 1;
        foreach (DebrisWays one in ways)
        {
            foreach (int source in one.Sources.Select(source => source.Vertex).Distinct())
                stays *= 1 - Math.Clamp(passesOn(parts[source], one.Debris), 0, 1);
        }

        return stays;
    }

    /// <summary>A chance of a find, given that something has left a source.</summary>
    public static double OnceLeft(double odds, double staysPut) => staysPut >= 1 ? 0 : Math.Min(1, odds / (1 - staysPut));

    public static double[] From(DebrisWays ways, IEnumerable<int> starts, ImmutableArray<Part> parts, Func<Part, Debris, double> passesOn)
    {
        var odds = new double[parts.Length];
        var isSettled = new bool[parts.Length];
        var waiting = new PriorityQueue<int, double>();
        foreach (int start in starts)
        {
            odds[start] = 1;
            waiting.Enqueue(start, -1);
        }

        while (waiting.TryDequeue(out int vertex, out _))
        {
            if (isSettled[vertex])
                continue;
            isSettled[vertex] = true;
            double on = odds[vertex] * Math.Clamp(passesOn(parts[vertex], ways.Debris), 0, 1);
            for (int place = ways.Joints.First[vertex]; place < ways.Joints.First[vertex + 1]; place++)
            {
                int next = ways.Joints.Target[place];
                if (on <= odds[next])
                    continue;
                odds[next] = on;
                waiting.Enqueue(next, -on);
            }
        }

        return odds;
    }
}
