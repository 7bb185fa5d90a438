namespace Contam.Reports.Layout;

/// <summary>
/// Lines between two layers: each goes level, upright on a track of its own, and level again. Tracks are chosen so that two lines cross once
/// where their ends are the other way round, else never, and no two lie upon each other. Cost: the square of the lines that bend.
/// </summary>
internal sealed class ChannelTracks
{
    /// <summary>Closer than this, two level lines are taken for one.</summary>
    public const double Near = 3;

    private readonly double[] start;
    private readonly double[] end;
    private readonly int[] bent;

    /// <summary>Gives tracks. Where lines exchange their heights, one end is moved by a little; <see cref="Start"/> and <see cref="End"/> tell where to.</summary>
    /// <param name="start">The heights at the left, each different.</param>
    /// <param name="end">The heights at the right, each different.</param>
    public ChannelTracks(double[] start, double[] end)
    {
        this.start = start;
        this.end = end;
        Track = new int[start.Length];
        Array.Fill(Track, -1);
        // A straight line needs no track, and no other can end at its height.
        bent = [.. Enumerable.Range(0, start.Length).Where(i => Math.Abs(start[i] - end[i]) > 0.01)];
        Assign();
    }

    /// <summary>The heights at the left as they are now.</summary>
    public IReadOnlyList<double> Start => start;

    /// <summary>The heights at the right as they are now.</summary>
    public IReadOnlyList<double> End => end;

    /// <summary>The track of each line, from the left; -1 for a straight one.</summary>
    public int[] Track { get; }

    /// <summary>How many tracks.</summary>
    public int Count { get; private set; }

    private void Assign()
    {
        for (int tries = 0; ; tries++)
        {
            var before = new List<int>[bent.Length];
            for (int i = 0; i < bent.Length; i++)
                before[i] = [.. Enumerable.Range(0, bent.Length).Where(j => j != i && MustPrecede(bent[j], bent[i]))];
            List<int> order = Sorted(before);
            if (order.Count == bent.Length)
            {
                Fill(order, before);
                return;
            }

            // A ring of orders: one line that shares a height with another moves its right end by a little. After many tries lines may touch.
            bool[] isSorted = new bool[bent.Length];
            foreach (int one in order)
                isSorted[one] = true;
            int[] ring = [.. Enumerable.Range(0, bent.Length).Where(i => !isSorted[i])];
            if (tries >= 60 || !MoveApart(ring))
            {
                Fill([.. order, .. ring], before);
                return;
            }
        }
    }

    private bool MoveApart(int[] ring)
    {
        foreach (int i in ring)
        {
            foreach (int j in ring)
            {
                if (i == j || Math.Abs(start[bent[j]] - end[bent[i]]) >= Near)
                    continue;
                foreach (double step in (ReadOnlySpan<double>)[4, -4, 3, -3])
                {
                    double moved = end[bent[i]] + step;
                    bool isFree = Enumerable.Range(0, start.Length).All(k => k == bent[i] || (Math.Abs(end[k] - moved) >= Near && Math.Abs(start[k] - moved) >= Near));
                    if (!isFree)
                        continue;
                    end[bent[i]] = moved;
                    return true;
                }
            }
        }

        return false;
    }

    // Whether the first must have the track further left.
    private bool MustPrecede(int first, int second)
    {
        // The first leaves at the height at which the second arrives: it has to be gone by then.
        if (Math.Abs(start[first] - end[second]) < Near)
            return true;
        bool bothFall = end[first] > start[first] && end[second] > start[second];
        bool bothRise = end[first] < start[first] && end[second] < start[second];
        if (bothFall)
            return start[first] > start[second] && end[first] > end[second] && start[first] < end[second];
        return bothRise && start[first] < start[second] && end[first] < end[second] && start[first] > end[second];
    }

    private static List<int> Sorted(List<int>[] before)
    {
        int[] waits = [.. before.Select(list => list.Count)];
        var after = before.Select(_ => new List<int>()).ToArray();
        for (int i = 0; i < before.Length; i++)
        {
            foreach (int one in before[i])
                after[one].Add(i);
        }

        var order = new List<int>(Enumerable.Range(0, before.Length).Where(i => waits[i] == 0));
        for (int at = 0; at < order.Count; at++)
        {
            foreach (int next in after[order[at]])
            {
                if (--waits[next] == 0)
                    order.Add(next);
            }
        }

        return order;
    }

    private void Fill(List<int> order, List<int>[] before)
    {
        var tracks = new List<List<(double Top, double Bottom)>>();
        foreach (int i in order)
        {
            int line = bent[i];
            (double top, double bottom) = (Math.Min(start[line], end[line]) - Near, Math.Max(start[line], end[line]) + Near);
            int track = before[i].Count == 0 ? 0 : before[i].Max(one => Track[bent[one]]) + 1;
            while (track < tracks.Count && tracks[track].Exists(taken => taken.Top < bottom && top < taken.Bottom))
                track++;
            while (tracks.Count <= track)
                tracks.Add([]);
            tracks[track].Add((top, bottom));
            Track[line] = track;
        }

        Count = tracks.Count;
    }
}
