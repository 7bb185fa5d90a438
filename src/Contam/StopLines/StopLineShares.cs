namespace Contam.StopLines;

/// <summary>
/// Which look spares what. A part that is spared has at least one look before it on every way; where the last look on every way is the same one, that look spares it by itself.
/// <para>Method: each look marks what lies beyond it up to the next look; a part that two looks mark belongs to both, and so does what lies beyond it. Every part changes its mark twice at most, so the cost is linear.</para>
/// </summary>
internal sealed class StopLineShares
{
    private const int Nobody = -1;
    private const int Several = -2;

    private readonly int[] mark;

    private StopLineShares(int[] mark) => this.mark = mark;

    public static StopLineShares Of(StopLineToday today, IReadOnlySet<int> looks, bool[] stillOpen)
    {
        var mark = new int[stillOpen.Length];
        Array.Fill(mark, Nobody);
        var queue = new Queue<int>();
        foreach (int look in looks.Order())
        {
            mark[look] = look;
            // Where the record differs from debris to debris, what lies beyond may owe something to it: then a look is credited with its own place alone.
            if (today.RecordIsTheSameForAll)
                queue.Enqueue(look);
        }

        while (queue.TryDequeue(out int vertex))
        {
            for (int place = today.Joints.First[vertex]; place < today.Joints.First[vertex + 1]; place++)
            {
                int next = today.Joints.Target[place];
                if (!today.Carries(vertex, next) || stillOpen[next] || looks.Contains(next) || mark[next] == mark[vertex] || mark[next] == Several)
                    continue;
                mark[next] = mark[next] == Nobody ? mark[vertex] : Several;
                queue.Enqueue(next);
            }
        }

        return new StopLineShares(mark);
    }

    /// <summary>The look that spares this part by itself; negative where it takes several.</summary>
    public int OnlyLook(int vertex) => mark[vertex];
}
