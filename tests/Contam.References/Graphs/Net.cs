using Contam.Graphs;

namespace Contam.References.Graphs;

/// <summary>A directed graph as a book prints it, as this library's packed graph.</summary>
internal sealed class Net
{
    private readonly List<string> names = [];
    private readonly Dictionary<string, int> indexOf = new(StringComparer.Ordinal);
    private readonly List<(int From, int To)> edges = [];

    /// <summary>The vertices, in the order of first mention.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>The edges, in the order given.</summary>
    public IReadOnlyList<(int From, int To)> Edges => edges;

    public int Count => names.Count;

    public PackedGraph Packed => PackedGraph.Of(Count, [.. edges.Select(edge => edge.From)], [.. edges.Select(edge => edge.To)]);

    /// <summary>Reads <c>a > b, c; b > c; d</c>.</summary>
    public static Net Read(string text)
    {
        var net = new Net();
        foreach (string line in text.Split([';', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string[] sides = line.Split('>', StringSplitOptions.TrimEntries);
            int from = net.Mention(sides[0]);
            foreach (string to in sides.Skip(1).SelectMany(side => side.Split(',', StringSplitOptions.TrimEntries)))
                net.edges.Add((from, net.Mention(to)));
        }

        return net;
    }

    /// <summary>Reads pairs of one-letter names, <c>ab bc</c>.</summary>
    public static Net ReadPairs(string text) => Read(string.Join(';', text.Split(' ').Select(pair => $"{pair[0]} > {pair[1]}")));

    /// <summary>The same with one more edge between vertices that are there.</summary>
    public Net With(string from, string to)
    {
        var net = new Net();
        foreach (string name in names)
            net.Mention(name);
        net.edges.AddRange(edges);
        net.edges.Add((At(from), At(to)));
        return net;
    }

    public int At(string name) => indexOf[name];

    /// <summary>The names of these vertices, in the order of first mention.</summary>
    public string Text(IEnumerable<int> vertices) => string.Join(' ', vertices.Order().Select(vertex => names[vertex]));

    /// <summary>The names of the marked vertices, in the order of first mention.</summary>
    public string Text(bool[] isMarked) => Text(Enumerable.Range(0, Count).Where(vertex => isMarked[vertex]));

    private int Mention(string name)
    {
        if (indexOf.TryGetValue(name, out int index))
            return index;
        names.Add(name);
        return indexOf[name] = names.Count - 1;
    }
}
