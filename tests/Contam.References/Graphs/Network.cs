using Contam.Graphs;

namespace Contam.References.Graphs;

/// <summary>
/// A flow network with whole capacities. Its smallest cut is a smallest set of parts when every edge of capacity <c>c</c> is taken as <c>c</c> parts side by side, each joined to
/// every one that begins where it ends: what then has to hold are edges, as in a flow network, and not their ends.
/// </summary>
internal sealed record Network(string Source, string Target, string Text, int[] Capacities)
{
    /// <summary>Introduction to Algorithms, figure 26.1; from memory, sure.</summary>
    public static Network Clrs { get; } = Read("s", "t", "s1 16, s2 13, 13 12, 21 4, 32 9, 24 14, 43 7, 3t 20, 4t 4");

    /// <summary>The sample of the second DIMACS challenge, as max_flow.dat in the Boost Graph Library (repository boostorg/graph): 1 to 8.</summary>
    public static Network Dimacs { get; } = Read("1", "8", "17 3, 12 20, 13 20, 26 1, 21 20, 24 20, 35 4, 34 20, 31 20, 48 5, 43 20, 42 20, 56 20, 57 20, 65 20, 68 20, 78 20, 75 20, 87 20, 86 20");

    public Network With(string edges)
    {
        Network more = Read(Source, Target, edges);
        return this with { Text = Text + ";" + more.Text, Capacities = [.. Capacities, .. more.Capacities] };
    }

    /// <summary>The smallest cut: edges as <c>from+to</c>, each as often as its capacity.</summary>
    public string[] SmallestCut()
    {
        Net net = Net.Read(Text);
        int[] unitOf = [.. Enumerable.Range(0, Capacities.Length).SelectMany(edge => Enumerable.Repeat(edge, Capacities[edge]))];
        int source = unitOf.Length;
        int target = unitOf.Length + 1;
        var joints = new List<(int From, int To)>();
        for (int unit = 0; unit < unitOf.Length; unit++)
        {
            (int from, int to) = net.Edges[unitOf[unit]];
            if (from == net.At(Source))
                joints.Add((source, unit));
            if (to == net.At(Target))
                joints.Add((unit, target));
            for (int next = 0; next < unitOf.Length; next++)
            {
                if (net.Edges[unitOf[next]].From == to)
                    joints.Add((unit, next));
            }
        }

        PackedGraph packed = PackedGraph.Of(unitOf.Length + 2, [.. joints.Select(joint => joint.From)], [.. joints.Select(joint => joint.To)]);
        return [.. VertexCut.Smallest(packed, new HashSet<int> { source }, target).Vertices.Select(unit => net.Names[net.Edges[unitOf[unit]].From] + net.Names[net.Edges[unitOf[unit]].To])];
    }

    private static Network Read(string source, string target, string edges)
    {
        string[][] words = [.. edges.Split(", ").Select(edge => edge.Split(' '))];
        return new Network(
            source,
            target,
            string.Join(';', words.Select(edge => $"{edge[0][0]} > {edge[0][1]}")),
            [.. words.Select(edge => int.Parse(edge[1], System.Globalization.CultureInfo.InvariantCulture))]);
    }
}
