namespace Contam.Reports.Layout;

/// <summary>
/// Orders every layer so that few lines cross: sweeps to and fro that sort a layer by the mean or the median place of its neighbours, then swaps
/// of neighbours while that helps, from several beginnings; the best is kept. After Sugiyama, Tagawa and Toda (1981) and Gansner, Koutsofios,
/// North and Vo (1993). Cost of a sweep: pieces × log of the layer's size; of a round of swaps: the sum over neighbouring vertices of their pieces.
/// The beginnings are fixed, so that the answer is always the same.
/// </summary>
internal sealed class LayerOrdering
{
    private readonly LayerGraph graph;
    private int[][] best;
    private long bestCount;

    private LayerOrdering(LayerGraph graph)
    {
        this.graph = graph;
        best = Copy();
        bestCount = Crossings(graph);
    }

    /// <summary>Puts the layers of this graph into a good order.</summary>
    public static void Improve(LayerGraph graph)
    {
        var ordering = new LayerOrdering(graph);
        int size = graph.LayerOf.Length;
        (int starts, int sweeps) = size switch { < 400 => (48, 24), < 1_500 => (24, 16), < 3_000 => (8, 12), < 6_000 => (2, 10), _ => (1, 6) };
        uint seed = 1;
        for (int start = 0; start < starts && ordering.bestCount > 0; start++)
        {
            ordering.Begin(start, ref seed);
            ordering.Run(sweeps, byMedian: start % 2 == 1);
        }

        for (int layer = 0; layer < graph.Layers.Length; layer++)
            graph.SetLayer(layer, ordering.best[layer]);
    }

    /// <summary>How often pieces of lines cross, two that meet in a vertex never.</summary>
    public static long Crossings(LayerGraph graph)
    {
        long count = 0;
        for (int layer = 0; layer + 1 < graph.Layers.Length; layer++)
        {
            int[] tree = new int[graph.Layers[layer + 1].Length + 1];
            int seen = 0;
            foreach (int vertex in graph.Layers[layer])
            {
                foreach (int to in graph.Onward[vertex])
                {
                    int notAbove = 0;
                    for (int i = graph.Place[to] + 1; i > 0; i -= i & -i)
                        notAbove += tree[i];
                    count += seen - notAbove;
                }

                foreach (int to in graph.Onward[vertex])
                {
                    seen++;
                    for (int i = graph.Place[to] + 1; i < tree.Length; i += i & -i)
                        tree[i]++;
                }
            }
        }

        return count;
    }

    // The first two beginnings walk along the lines, depth first; the others are shuffles by a fixed row of numbers.
    private void Begin(int start, ref uint seed)
    {
        if (start < 2)
        {
            Walk(backwards: start == 1);
            return;
        }

        for (int layer = 0; layer < graph.Layers.Length; layer++)
        {
            int[] order = [.. graph.Layers[layer]];
            for (int i = order.Length - 1; i > 0; i--)
            {
                // A linear congruential row; its constants are those of Numerical Recipes, from memory.
                seed = unchecked((seed * 1_664_525) + 1_013_904_223);
                int other = (int)((seed >> 8) % (uint)(i + 1));
                (order[i], order[other]) = (order[other], order[i]);
            }

            graph.SetLayer(layer, order);
        }
    }

    private void Walk(bool backwards)
    {
        var layers = graph.Layers.Select(_ => new List<int>()).ToArray();
        bool[] isSeen = new bool[graph.LayerOf.Length];
        var open = new Stack<int>();
        for (int i = 0; i < isSeen.Length; i++)
        {
            open.Push(backwards ? isSeen.Length - 1 - i : i);
            while (open.TryPop(out int vertex))
            {
                if (isSeen[vertex])
                    continue;
                isSeen[vertex] = true;
                layers[graph.LayerOf[vertex]].Add(vertex);
                foreach (int next in graph.Back[vertex].Concat(graph.Onward[vertex]))
                    open.Push(next);
            }
        }

        for (int layer = 0; layer < layers.Length; layer++)
            graph.SetLayer(layer, [.. layers[layer]]);
    }

    private void Run(int sweeps, bool byMedian)
    {
        int idle = 0;
        for (int sweep = 0; sweep < sweeps && idle < 6; sweep++)
        {
            bool isForward = sweep % 2 == 0;
            for (int i = 1; i < graph.Layers.Length; i++)
                Sort(isForward ? i : graph.Layers.Length - 1 - i, isForward ? graph.Back : graph.Onward, byMedian);
            Swap(isEven: sweep % 4 >= 2);
            long count = Crossings(graph);
            idle = count < bestCount ? 0 : idle + 1;
            if (count >= bestCount)
                continue;
            bestCount = count;
            best = Copy();
        }
    }

    private void Sort(int layer, List<int>[] neighbours, bool byMedian)
    {
        int[] order = [.. graph.Layers[layer]];
        double[] keys = new double[order.Length];
        for (int i = 0; i < order.Length; i++)
        {
            List<int> around = neighbours[order[i]];
            keys[i] = around.Count == 0 ? i : byMedian ? Median(around) : around.Average(one => (double)graph.Place[one]);
        }

        int[] places = [.. Enumerable.Range(0, order.Length).OrderBy(i => keys[i]).ThenBy(i => i)];
        graph.SetLayer(layer, [.. places.Select(i => order[i])]);
    }

    // The weighted median of Gansner and others: of an even number, the middle two leaning to the denser side.
    private double Median(List<int> around)
    {
        int[] places = [.. around.Select(one => graph.Place[one]).Order()];
        int middle = places.Length / 2;
        if (places.Length % 2 == 1)
            return places[middle];
        if (places.Length == 2)
            return (places[0] + places[1]) / 2.0;
        double left = places[middle - 1] - places[0];
        double right = places[^1] - places[middle];
        return left + right == 0 ? places[middle] : ((places[middle - 1] * right) + (places[middle] * left)) / (left + right);
    }

    private void Swap(bool isEven)
    {
        bool isBetter = true;
        for (int round = 0; round < 12 && isBetter; round++)
        {
            isBetter = false;
            for (int layer = 0; layer < graph.Layers.Length; layer++)
            {
                int[] order = graph.Layers[layer];
                for (int i = 0; i + 1 < order.Length; i++)
                {
                    int gain = Gain(graph.Back, order[i], order[i + 1]) + Gain(graph.Onward, order[i], order[i + 1]);
                    // An even swap opens ways that a strict one never finds; only the first round takes them.
                    if (gain < 0 || (gain == 0 && !(isEven && round == 0)))
                        continue;
                    isBetter |= gain > 0;
                    (order[i], order[i + 1]) = (order[i + 1], order[i]);
                    (graph.Place[order[i]], graph.Place[order[i + 1]]) = (i, i + 1);
                }
            }
        }
    }

    // How many crossings fewer there are with the lower vertex above the upper one.
    private int Gain(List<int>[] neighbours, int upper, int lower)
    {
        int gain = 0;
        foreach (int one in neighbours[upper])
        {
            foreach (int other in neighbours[lower])
                gain += Math.Sign(graph.Place[one] - graph.Place[other]);
        }

        return gain;
    }

    private int[][] Copy() => [.. graph.Layers.Select(layer => (int[])layer.Clone())];
}
