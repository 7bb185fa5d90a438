using System.Collections.Immutable;

namespace Contam.Looks;

/// <summary>How particles of one debris, at least so large, get from unit to unit.</summary>
/// <param name="Debris">Which debris.</param>
/// <param name="IsOfAnySize">Whether it is about any size at all, so that it says when looks are due.</param>
/// <param name="Before">For each unit the units, and the source, that are last before it.</param>
/// <param name="Passes">Whether a unit that is not chosen passes them on.</param>
internal sealed record ChoiceFlow(int Debris, bool IsOfAnySize, ulong[] Before, bool[] Passes);

/// <summary>
/// The flows drawn together to units: a unit is last before a part, or before another unit, when it can be reached from a place of it past no place of any unit
/// and no place on record as clean, over what passes the size. What was found holds nothing.
/// </summary>
internal sealed class ChoiceFlows
{
    private const ulong Source = 1UL << 63;

    private readonly ImmutableArray<DebrisWays> ways;
    private readonly ImmutableArray<ImmutableArray<int>> units;
    private readonly int[] unitAt;
    private readonly List<ulong[]> last = [];
    private readonly Dictionary<(int Debris, int Level), int> known = [];
    private readonly ImmutableArray<ChoiceFlow>.Builder all = ImmutableArray.CreateBuilder<ChoiceFlow>();

    public ChoiceFlows(ImmutableArray<DebrisWays> ways, ImmutableArray<ImmutableArray<int>> units)
    {
        this.ways = ways;
        this.units = units;
        unitAt = new int[ways[0].Joints.VertexCount];
        Array.Fill(unitAt, -1);
        for (int unit = 0; unit < units.Length; unit++)
        {
            foreach (int place in units[unit])
                unitAt[place] = unit;
        }

        for (int debris = 0; debris < ways.Length; debris++)
            FlowOf(debris, ways[debris].AnySize);
    }

    public ImmutableArray<ChoiceFlow> All => all.ToImmutable();

    /// <summary>The flow of a debris in this level's size, and the units, and the source, that are last before a part in it; a place hangs on its unit.</summary>
    public (int Flow, ulong Mask) At(int debris, int level, int vertex)
    {
        int flow = FlowOf(debris, level);
        return (flow, !ways[debris].IsReached[vertex] ? 0 : unitAt[vertex] >= 0 ? 1UL << unitAt[vertex] : last[flow][vertex]);
    }

    private int FlowOf(int debris, int level)
    {
        if (known.TryGetValue((debris, level), out int flow))
            return flow;
        DebrisWays one = ways[debris];
        ulong[] lastBefore = Last(one, level);
        last.Add(lastBefore);
        all.Add(new ChoiceFlow(
            debris,
            level == one.AnySize,
            [.. units.Select(unit => unit.Where(place => one.IsReached[place]).Aggregate(0UL, (mask, place) => Or(mask, lastBefore[place])))],
            [.. units.Select(unit => unit.Any(place => one.Passes(place, level)))]));
        return known[(debris, level)] = all.Count - 1;
    }

    private ulong[] Last(DebrisWays one, int level)
    {
        var lastBefore = new ulong[one.Joints.VertexCount];
        var isStop = new bool[lastBefore.Length];
        foreach (int place in units.SelectMany(unit => unit).Concat(one.OnRecord))
            isStop[place] = one.IsReached[place];
        var queue = new Queue<int>();
        foreach ((int vertex, int shedLevel) in one.Sources)
        {
            if (shedLevel <= level)
                Come(vertex, Source);
        }

        for (int unit = 0; unit < units.Length; unit++)
        {
            foreach (int place in units[unit].Where(place => one.IsReached[place]))
                PassOn(place, 1UL << unit);
        }

        while (queue.TryDequeue(out int vertex))
        {
            if (one.Passes(vertex, level))
                PassOn(vertex, lastBefore[vertex]);
        }

        return lastBefore;

        void PassOn(int vertex, ulong mask)
        {
            for (int place = one.Joints.First[vertex]; place < one.Joints.First[vertex + 1]; place++)
            {
                if (one.PassesJoint(place, level))
                    Come(one.Joints.Target[place], mask);
            }
        }

        void Come(int vertex, ulong mask)
        {
            ulong more = Or(lastBefore[vertex], mask);
            if (more == lastBefore[vertex])
                return;
            lastBefore[vertex] = more;
            if (!isStop[vertex])
                queue.Enqueue(vertex);
        }
    }

    private static ulong Or(ulong one, ulong other) => ((one | other) & Source) != 0 ? Source : one | other;
}
