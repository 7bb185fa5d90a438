namespace Contam.Reports.Layout;

/// <summary>
/// The height at which each vertex stands, its middle, such that long lines run straight and boxes stand amid their neighbours: the mean of the
/// middle two of four placings, each of which aligns vertices with a median neighbour and then packs. After Brandes and Köpf (2002), packed by
/// longest paths between aligned blocks. Cost: pieces × log of the most at one vertex.
/// </summary>
internal sealed class RowPlacement
{
    private readonly LayerGraph graph;
    private readonly Func<int, int, double> apart;
    private readonly HashSet<(int Left, int Right)> conflicts = [];

    private RowPlacement(LayerGraph graph, Func<int, int, double> apart)
    {
        this.graph = graph;
        this.apart = apart;
        for (int layer = 1; layer < graph.Layers.Length; layer++)
            FindConflicts(graph.Layers[layer - 1].Length, graph.Layers[layer]);
    }

    /// <summary>The middles, by vertex. Neighbours in a layer keep at least their distance.</summary>
    /// <param name="graph">The ordered graph.</param>
    /// <param name="apart">How far the middles of two neighbours in a layer must be apart.</param>
    public static double[] Of(LayerGraph graph, Func<int, int, double> apart)
    {
        var placement = new RowPlacement(graph, apart);
        double[][] placings =
        [
            placement.Place(fromRight: false, fromBelow: false),
            placement.Place(fromRight: false, fromBelow: true),
            placement.Place(fromRight: true, fromBelow: false),
            placement.Place(fromRight: true, fromBelow: true),
        ];
        double[] narrowest = placings.MinBy(placing => placing.Max() - placing.Min())!;
        (double low, double high) = (narrowest.Min(), narrowest.Max());
        for (int i = 0; i < placings.Length; i++)
        {
            double shift = i % 2 == 0 ? low - placings[i].Min() : high - placings[i].Max();
            placings[i] = [.. placings[i].Select(one => one + shift)];
        }

        double[] middles = new double[graph.LayerOf.Length];
        for (int vertex = 0; vertex < middles.Length; vertex++)
        {
            double[] four = [.. placings.Select(placing => placing[vertex]).Order()];
            middles[vertex] = (four[1] + four[2]) / 2;
        }

        return middles;
    }

    // A piece that crosses one between two bends gives way, so that long lines stay straight.
    private void FindConflicts(int before, int[] layer)
    {
        (int low, int scanned) = (0, 0);
        for (int i = 0; i < layer.Length; i++)
        {
            int inner = graph.IsBend(layer[i]) && graph.IsBend(graph.Back[layer[i]][0]) ? graph.Place[graph.Back[layer[i]][0]] : -1;
            if (inner < 0 && i < layer.Length - 1)
                continue;
            int high = inner < 0 ? before : inner;
            for (; scanned <= i; scanned++)
            {
                foreach (int from in graph.Back[layer[scanned]])
                {
                    bool isInner = graph.IsBend(from) && graph.IsBend(layer[scanned]);
                    if ((graph.Place[from] < low || graph.Place[from] > high) && !isInner)
                        conflicts.Add((from, layer[scanned]));
                }
            }

            low = high;
        }
    }

    private double[] Place(bool fromRight, bool fromBelow)
    {
        int[][] layers = [.. (fromRight ? graph.Layers.Reverse() : graph.Layers).Select(layer => fromBelow ? [.. layer.Reverse()] : layer)];
        int[] place = new int[graph.LayerOf.Length];
        foreach (int[] layer in layers)
        {
            for (int i = 0; i < layer.Length; i++)
                place[layer[i]] = i;
        }

        int[] root = Align(layers, place, fromRight);
        double[] packed = Pack(layers, root);
        return fromBelow ? [.. packed.Select(one => -one)] : packed;
    }

    private int[] Align(int[][] layers, int[] place, bool fromRight)
    {
        int[] root = [.. Enumerable.Range(0, place.Length)];
        bool[] isTaken = new bool[place.Length];
        foreach (int[] layer in layers)
        {
            int last = -1;
            foreach (int vertex in layer)
            {
                int[] around = [.. (fromRight ? graph.Onward : graph.Back)[vertex].OrderBy(one => place[one])];
                for (int i = (around.Length - 1) / 2; i <= around.Length / 2 && i < around.Length; i++)
                {
                    int other = around[i];
                    bool mayAlign = root[vertex] == vertex && !isTaken[other] && last < place[other] && !conflicts.Contains(fromRight ? (vertex, other) : (other, vertex));
                    if (!mayAlign)
                        continue;
                    isTaken[other] = true;
                    root[vertex] = root[other];
                    last = place[other];
                }
            }
        }

        return root;
    }

    private double[] Pack(int[][] layers, int[] root)
    {
        var onward = new List<(int To, double Apart)>[root.Length];
        int[] waits = new int[root.Length];
        for (int i = 0; i < root.Length; i++)
            onward[i] = [];
        foreach (int[] layer in layers)
        {
            for (int i = 1; i < layer.Length; i++)
            {
                onward[root[layer[i - 1]]].Add((root[layer[i]], apart(layer[i - 1], layer[i])));
                waits[root[layer[i]]]++;
            }
        }

        double[] at = new double[root.Length];
        var order = new List<int>(Enumerable.Range(0, root.Length).Where(vertex => root[vertex] == vertex && waits[vertex] == 0));
        for (int i = 0; i < order.Count; i++)
        {
            foreach ((int to, double gap) in onward[order[i]])
            {
                at[to] = Math.Max(at[to], at[order[i]] + gap);
                if (--waits[to] == 0)
                    order.Add(to);
            }
        }

        // Back from the far end: what has room moves up to its lower neighbours.
        for (int i = order.Count - 1; i >= 0; i--)
        {
            if (onward[order[i]].Count > 0)
                at[order[i]] = Math.Max(at[order[i]], onward[order[i]].Min(one => at[one.To] - one.Apart));
        }

        return [.. root.Select(one => at[one])];
    }
}
