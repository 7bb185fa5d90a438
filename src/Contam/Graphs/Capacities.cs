using System.Collections.Immutable;

namespace Contam.Graphs;

/// <summary>
/// What each vertex and joint of a packed graph lets on of one debris, and what the sources shed, as levels (see <see cref="Levels"/>).
/// </summary>
/// <param name="Levels">The sizes behind the levels.</param>
/// <param name="VertexLevel">What each vertex lets on; 0 (unlimited) for a source, which holds nothing.</param>
/// <param name="PlaceLevel">What each joint lets on, by its place in the graph.</param>
/// <param name="MayHold">False where a vertex and all joints out of it let on everything, so that a search need not ask them.</param>
/// <param name="Sources">Each source with the level of the largest particle it sheds, in the order of the vertices; one that sheds two sizes stands twice.</param>
internal sealed record Capacities(Levels Levels, int[] VertexLevel, int[] PlaceLevel, bool[] MayHold, ImmutableArray<(int Vertex, int ShedLevel)> Sources)
{
    /// <summary>The capacities of a graph. Cost: linear.</summary>
    public static Capacities Of(PackedGraph graph, Levels levels, int[] vertexLevel, int[] jointLevel, ImmutableArray<(int Vertex, int ShedLevel)> sources)
    {
        int[] placeLevel = graph.ByPlace(jointLevel);
        var mayHold = new bool[graph.VertexCount];
        for (int vertex = 0; vertex < mayHold.Length; vertex++)
            mayHold[vertex] = vertexLevel[vertex] > 0 || placeLevel.AsSpan(graph.First[vertex]..graph.First[vertex + 1]).ContainsAnyExcept(0);
        return new Capacities(levels, vertexLevel, placeLevel, mayHold, sources);
    }

    /// <summary>The level that every source sheds; <c>null</c> where they shed several.</summary>
    public int? OnlyShedLevel => Sources is [var first, ..] && Sources.All(source => source.ShedLevel == first.ShedLevel) ? first.ShedLevel : null;

    /// <summary>These, with nothing let on by some vertices, none of which is a source. Cost: linear in all vertices.</summary>
    public Capacities Stopping(IReadOnlyCollection<int> vertices)
    {
        int[] vertexLevel = [.. VertexLevel];
        bool[] mayHold = [.. MayHold];
        foreach (int vertex in vertices)
        {
            vertexLevel[vertex] = Levels.Of(0);
            mayHold[vertex] = true;
        }

        return this with { VertexLevel = vertexLevel, MayHold = mayHold };
    }
}
