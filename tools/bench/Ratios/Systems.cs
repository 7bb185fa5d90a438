using System.Globalization;
using System.Text;
using Contam.Families;
using QuikGraph;

namespace Contam.Bench.Ratios;

/// <summary>Made-up systems, the same every time.</summary>
internal static class Systems
{
    /// <summary>
    /// Chains of parts with short joints forward and a fifth of the third ones leading anywhere, the last part back to the first; every twentieth part lets
    /// on a size of its own. Three joints a part.
    /// </summary>
    public static Family Chains(int count)
    {
        var random = new Random(1);
        return Joined(count, join =>
        {
            for (int i = 0; i < count; i++)
            {
                join(i, (i + 1) % count);
                join(i, Math.Min(count - 1, i + 1 + random.Next(20)));
                join(i, random.Next(5) == 0 ? random.Next(count) : Math.Min(count - 1, i + 1 + random.Next(20)));
            }
        });
    }

    /// <summary>Parts in loops of twenty, five joints to two parts, loops joined forwards at random: an engine room of many circuits.</summary>
    public static Family Loops(int count)
    {
        var random = new Random(1);
        return Joined(count, join =>
        {
            for (int i = 0; i < count; i++)
            {
                int first = i / 20 * 20;
                join(i, i + 1 < Math.Min(first + 20, count) ? i + 1 : first);
                if (i % 2 == 0)
                    join(i, first + random.Next(Math.Min(20, count - first)));
            }

            for (int i = 0; i < count; i++)
                join(i, Math.Min(count - 1, i + random.Next(200)));
        });
    }

    /// <summary>A family file with so many parts: runs of ten, each led into the next.</summary>
    public static string File(int parts)
    {
        var text = new StringBuilder("format: 1\nfamily: made-up\ntitle: A made-up engine of many parts\nfluids:\n  oil: {density: 890 kg/m3}\nparts:\n");
        for (int part = 0; part < parts; part++)
            text.Append(CultureInfo.InvariantCulture, $"  part-{part}: {{name: Part number {part}, kind: pipe, bore: 8 mm, inspect: {{minutes: 5, shows: good}}}}\n");
        text.Append("circuits:\n  oil:\n    fluid: oil\n    runs:\n");
        for (int first = 0; first < parts; first += 10)
            text.Append(CultureInfo.InvariantCulture, $"      - [{string.Join(", ", Enumerable.Range(first, Math.Min(11, parts - first)).Select(part => $"part-{part}"))}]\n");
        return text.ToString();
    }

    /// <summary>The same joints as a graph of the graph library's own.</summary>
    public static AdjacencyGraph<int, SEdge<int>> OfTheLibrary(Family family)
    {
        var graph = new AdjacencyGraph<int, SEdge<int>>(allowParallelEdges: true, family.Parts.Length, 3);
        graph.AddVertexRange(Enumerable.Range(0, family.Parts.Length));
        for (int joint = 0; joint < family.Joints.Length; joint++)
            graph.AddEdge(new SEdge<int>(family.JointFrom[joint], family.JointTo[joint]));
        return graph;
    }

    private static Family Joined(int count, Action<Action<int, int>> joining)
    {
        var kind = new Kind("part", new SourceSpan("bench", 1, 1));
        Part[] parts = [.. Enumerable.Range(0, count).Select(i => new Part(new PartId(string.Create(CultureInfo.InvariantCulture, $"p{i}")), kind, kind.Place)
        {
            Passage = i % 20 == 7 ? ParticleSize.FromMicrometres(1 + (i % 997)) : null,
        })];
        var joints = new List<Joint>();
        joining((from, to) => joints.Add(new Joint(joints.Count, parts[from].Id, parts[to].Id, "oil", kind.Place)));
        return new Family("bench", [.. parts], [new Circuit("oil", kind.Place)], [.. joints]);
    }
}
