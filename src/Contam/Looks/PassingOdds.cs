using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// How likely debris that is at some parts has come to others: the greatest, over all ways between them, of the product of the shares that the first part of the
/// way and all strictly between pass on. 1 at the parts themselves, 0 where no way leads.
/// <para>
/// The chance that it came by any way at all is the reliability of a network, which takes time that grows beyond all bounds; the likeliest way alone is taken.
/// Method: Dijkstra's search with products for sums. Cost: joints × log of parts.
/// </para>
/// </summary>
internal static class PassingOdds
{
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
