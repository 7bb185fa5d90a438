namespace Contam.Reports.Layout;

/// <summary>
/// Which layer each box stands in, from 0 at the left, such that no line joins two boxes of one layer. Loops are cut where a walk that begins
/// at the starts comes back to itself, so that a loop reads from its tank onwards. Cost: the walk is linear; moving boxes to shorten lines
/// takes at most <see cref="MostRounds"/> linear rounds.
/// </summary>
internal static class LayerAssignment
{
    private const int MostRounds = 40;

    /// <summary>The layer of each box. Lines from a box to itself are ignored.</summary>
    /// <param name="count">How many boxes.</param>
    /// <param name="edges">The lines.</param>
    /// <param name="starts">Where walks begin, the first first; the boxes that nothing leads to come next.</param>
    public static int[] Of(int count, IReadOnlyList<LayoutEdge> edges, IEnumerable<int> starts)
    {
        var onward = Lists(count);
        var back = Lists(count);
        AddLeading(count, edges, starts, onward, back);
        int[] layer = Longest(count, onward, back);
        foreach (LayoutEdge edge in edges.Where(edge => !edge.Leads && edge.From != edge.To))
        {
            (int left, int right) = layer[edge.From] <= layer[edge.To] ? (edge.From, edge.To) : (edge.To, edge.From);
            onward[left].Add(right);
            back[right].Add(left);
            Push(left, layer, onward);
        }

        Tighten(layer, onward, back);
        int least = count == 0 ? 0 : layer.Min();
        return [.. layer.Select(one => one - least)];
    }

    // Lines that lead, those that close a loop turned round.
    private static void AddLeading(int count, IReadOnlyList<LayoutEdge> edges, IEnumerable<int> starts, List<int>[] onward, List<int>[] back)
    {
        var leads = Lists(count);
        bool[] isEntered = new bool[count];
        foreach (LayoutEdge edge in edges.Where(edge => edge.Leads && edge.From != edge.To))
        {
            leads[edge.From].Add(edge.To);
            isEntered[edge.To] = true;
        }

        byte[] state = new byte[count];
        var walk = new Stack<(int Node, int Next)>();
        IEnumerable<int> all = Enumerable.Range(0, count);
        foreach (int start in starts.Concat(all.Where(node => !isEntered[node])).Concat(all))
        {
            if (state[start] != 0)
                continue;
            state[start] = 1;
            walk.Push((start, 0));
            while (walk.TryPop(out (int Node, int Next) here))
            {
                if (here.Next == leads[here.Node].Count)
                {
                    state[here.Node] = 2;
                    continue;
                }

                walk.Push((here.Node, here.Next + 1));
                int to = leads[here.Node][here.Next];
                (int left, int right) = state[to] == 1 ? (to, here.Node) : (here.Node, to);
                onward[left].Add(right);
                back[right].Add(left);
                if (state[to] != 0)
                    continue;
                state[to] = 1;
                walk.Push((to, 0));
            }
        }
    }

    private static int[] Longest(int count, List<int>[] onward, List<int>[] back)
    {
        int[] layer = new int[count];
        int[] waits = [.. back.Select(list => list.Count)];
        var ready = new Queue<int>(Enumerable.Range(0, count).Where(node => waits[node] == 0));
        while (ready.TryDequeue(out int node))
        {
            foreach (int to in onward[node])
            {
                layer[to] = Math.Max(layer[to], layer[node] + 1);
                if (--waits[to] == 0)
                    ready.Enqueue(to);
            }
        }

        return layer;
    }

    // A path from the right end back to the left one would have put them into different layers, so that this ends.
    private static void Push(int from, int[] layer, List<int>[] onward)
    {
        var moved = new Queue<int>([from]);
        while (moved.TryDequeue(out int node))
        {
            foreach (int to in onward[node])
            {
                if (layer[to] > layer[node])
                    continue;
                layer[to] = layer[node] + 1;
                moved.Enqueue(to);
            }
        }
    }

    // Each box goes to the end of its room where most of its lines are.
    private static void Tighten(int[] layer, List<int>[] onward, List<int>[] back)
    {
        int last = layer.Length == 0 ? 0 : layer.Max();
        for (int round = 0; round < MostRounds; round++)
        {
            bool isChanged = false;
            for (int i = 0; i < layer.Length; i++)
            {
                int node = round % 2 == 0 ? layer.Length - 1 - i : i;
                int low = back[node].Count == 0 ? 0 : back[node].Max(one => layer[one]) + 1;
                int high = onward[node].Count == 0 ? last : onward[node].Min(one => layer[one]) - 1;
                int wanted = Math.Sign(onward[node].Count - back[node].Count) switch { 1 => high, -1 => low, _ => layer[node] };
                isChanged |= wanted != layer[node];
                layer[node] = wanted;
            }

            if (!isChanged)
                return;
        }
    }

    private static List<int>[] Lists(int count) => [.. Enumerable.Range(0, count).Select(_ => new List<int>())];
}
