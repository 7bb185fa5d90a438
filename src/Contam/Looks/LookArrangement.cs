using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// From groups of like places to looks in order of work. The places of a group are one look as far as they are due together. A look that hangs on another comes
/// after it; else what needs no stripping comes first, then what is fewer joints away from a source, then what stands first in the family.
/// </summary>
internal static class LookArrangement
{
    /// <summary>The looks; <c>null</c> where they are more than <paramref name="most"/>.</summary>
    public static FixedLooks? Of(LookQuestion question, ImmutableArray<DebrisWays> ways, IEnumerable<ImmutableArray<int>> groups, BenchWork work, int most)
    {
        Family family = question.Family;
        int[] distance = Distances(ways);
        ImmutableArray<ImmutableArray<int>> looks = InFirstOrder(groups);
        while (true)
        {
            if (looks.Length > most)
                return null;
            FixedLooks held = Held(looks);
            var reckoning = Reckoning.Of(held);
            ImmutableArray<ImmutableArray<int>> split = [.. looks.SelectMany(look => look.GroupBy(place => Dueness.Place(held, reckoning, place)).Select(group => group.ToImmutableArray()))];
            if (split.Length == looks.Length)
                return Held(InOrder(held, reckoning));
            looks = InFirstOrder(split);
        }

        FixedLooks Held(ImmutableArray<ImmutableArray<int>> those) => FixedLooks.Of(question, ways, [.. those.Select(look => look.Select(place => family.Parts[place].Id).ToImmutableArray())]);

        ImmutableArray<ImmutableArray<int>> InFirstOrder(IEnumerable<ImmutableArray<int>> those) =>
            [.. those.OrderBy(look => look.Any(work.NeedsStripping)).ThenBy(look => look.Min(place => distance[place])).ThenBy(look => look[0])];

        ImmutableArray<ImmutableArray<int>> InOrder(FixedLooks held, Reckoning reckoning)
        {
            int[] hangsOn = [.. held.Places.Select(look => Dueness.Place(held, reckoning, look[0]))];
            var order = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
            int placed = 0;
            while (order.Count < held.Count)
            {
                int[] left = [.. Enumerable.Range(0, held.Count).Where(look => (placed & LookMask.Of(look)) == 0)];
                // In a ring of looks that hang on each other none can wait for all: then the nearest to a source is made first.
                int next = left.Append(-1).First(look => look < 0 || (hangsOn[look] & ~LookMask.Always & ~LookMask.Of(look) & ~placed) == 0);
                if (next < 0)
                    next = left.MinBy(look => held.Places[look].Min(place => distance[place]));
                placed |= LookMask.Of(next);
                order.Add(held.Places[next]);
            }

            return order.ToImmutable();
        }
    }

    /// <summary>Places grouped by the part that they are numbers of; others stand alone. In the order of the family.</summary>
    public static IEnumerable<ImmutableArray<int>> Like(IEnumerable<int> places, Family family) =>
        places.Distinct().Order().GroupBy(place => family.Parts[place].RepeatOf ?? $"={family.Parts[place].Id.Value}").Select(group => group.ToImmutableArray());

    /// <summary>The fewest joints from a source of any debris; a large number where none leads.</summary>
    public static int[] Distances(ImmutableArray<DebrisWays> ways)
    {
        var distance = new int[ways[0].Joints.VertexCount];
        Array.Fill(distance, int.MaxValue);
        var queue = new Queue<int>();
        foreach ((int vertex, _) in ways.SelectMany(one => one.Sources))
        {
            if (distance[vertex] == 0)
                continue;
            distance[vertex] = 0;
            queue.Enqueue(vertex);
        }

        while (queue.TryDequeue(out int vertex))
        {
            for (int place = ways[0].Joints.First[vertex]; place < ways[0].Joints.First[vertex + 1]; place++)
            {
                int next = ways[0].Joints.Target[place];
                if (distance[next] != int.MaxValue)
                    continue;
                distance[next] = distance[vertex] + 1;
                queue.Enqueue(next);
            }
        }

        return distance;
    }
}
