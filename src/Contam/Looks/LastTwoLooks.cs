namespace Contam.Looks;

/// <summary>
/// Which looks spare a part that takes two clean places on every way to it: those of the last two places of every way; its own place is the last one.
/// Where some way passes fewer than two, nothing spares it.
/// <para>
/// Method: a search against the flow that has passed no place or one. A way that comes by one place twice is never the one with fewest, so the
/// search need not know which place it passed. Cost: linear for each part.
/// </para>
/// </summary>
internal static class LastTwoLooks
{
    /// <summary>The looks by which the part is treated; 0 where nothing gets there.</summary>
    public static int Of(int part, DebrisWays ways, LookFlow flow)
    {
        if (!ways.IsReached[part])
            return 0;
        if (ways.IsSource(part))
            return LookMask.Always;
        int looks = 0;
        var isKnown = new bool[2, ways.Joints.VertexCount];
        var queue = new Queue<(int Vertex, int Passed)>();
        int own = flow.IsStop(part) ? 1 : 0;
        if (own == 1)
            looks |= flow.OpenedBy(part);
        Enter(part, own);
        while (queue.TryDequeue(out (int Vertex, int Passed) at))
        {
            for (int place = ways.Reversed.First[at.Vertex]; place < ways.Reversed.First[at.Vertex + 1]; place++)
            {
                int before = ways.Reversed.Target[place];
                if (!ways.IsReached[before])
                    continue;
                if (ways.IsSource(before))
                    return LookMask.Always;
                if (!flow.IsStop(before))
                {
                    Enter(before, at.Passed);
                    continue;
                }

                looks |= flow.OpenedBy(before);
                if (at.Passed == 0)
                    Enter(before, 1);
            }
        }

        return looks;

        void Enter(int vertex, int passed)
        {
            if (isKnown[passed, vertex])
                return;
            isKnown[passed, vertex] = true;
            queue.Enqueue((vertex, passed));
        }
    }
}
