namespace Contam.Reports.Layout;

/// <summary>
/// Boxes in layers, and bends: a line that skips layers has a bend in each, so that every piece of a line joins neighbouring layers.
/// Vertices are the boxes first, by their place, then the bends.
/// </summary>
internal sealed class LayerGraph
{
    /// <summary>Layers these boxes and cuts these lines. Cost: linear in boxes and pieces.</summary>
    public LayerGraph(int boxes, IReadOnlyList<LayoutEdge> edges, int[] layer)
    {
        Boxes = boxes;
        var layerOf = new List<int>(layer);
        var chains = new int[edges.Count][];
        for (int i = 0; i < edges.Count; i++)
        {
            LayoutEdge edge = edges[i];
            if (edge.From == edge.To)
            {
                chains[i] = [edge.From];
                continue;
            }

            (int left, int right) = layer[edge.From] < layer[edge.To] ? (edge.From, edge.To) : (edge.To, edge.From);
            var chain = new List<int> { left };
            for (int between = layer[left] + 1; between < layer[right]; between++)
            {
                chain.Add(layerOf.Count);
                layerOf.Add(between);
            }

            chain.Add(right);
            chains[i] = [.. chain];
        }

        Chains = chains;
        LayerOf = [.. layerOf];
        Back = [.. LayerOf.Select(_ => new List<int>())];
        Onward = [.. LayerOf.Select(_ => new List<int>())];
        foreach (int[] chain in chains)
        {
            for (int at = 1; at < chain.Length; at++)
            {
                Onward[chain[at - 1]].Add(chain[at]);
                Back[chain[at]].Add(chain[at - 1]);
            }
        }

        Layers = [.. Enumerable.Range(0, LayerOf.Length == 0 ? 0 : LayerOf.Max() + 1).Select(_ => Array.Empty<int>())];
        Place = new int[LayerOf.Length];
        foreach (IGrouping<int, int> group in Enumerable.Range(0, LayerOf.Length).GroupBy(vertex => LayerOf[vertex]))
            SetLayer(group.Key, [.. group]);
    }

    /// <summary>How many vertices are boxes.</summary>
    public int Boxes { get; }

    /// <summary>The layer of each vertex.</summary>
    public int[] LayerOf { get; }

    /// <summary>The vertices of each line, from left to right, whichever way it leads.</summary>
    public int[][] Chains { get; }

    /// <summary>The neighbours of each vertex in the layer to its right, one entry a piece.</summary>
    public List<int>[] Onward { get; }

    /// <summary>The neighbours of each vertex in the layer to its left, one entry a piece.</summary>
    public List<int>[] Back { get; }

    /// <summary>The vertices of each layer from top to bottom.</summary>
    public int[][] Layers { get; }

    /// <summary>The place of each vertex in its layer, from the top.</summary>
    public int[] Place { get; }

    /// <summary>Whether this vertex is a bend of a line.</summary>
    public bool IsBend(int vertex) => vertex >= Boxes;

    /// <summary>Puts a layer into this order.</summary>
    public void SetLayer(int layer, int[] order)
    {
        Layers[layer] = order;
        for (int i = 0; i < order.Length; i++)
            Place[order[i]] = i;
    }
}
