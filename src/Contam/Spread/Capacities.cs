using System.Collections.Immutable;

namespace Contam.Spread;

/// <summary>
/// What each vertex and joint of a packed graph lets on of one debris, and what the sources shed, as levels (see <see cref="Levels"/>).
/// </summary>
/// <param name="Levels">The sizes behind the levels.</param>
/// <param name="VertexLevel">What each vertex lets on; 0 (unlimited) for a source, which holds nothing.</param>
/// <param name="PlaceLevel">What each joint lets on, by its place in the graph.</param>
/// <param name="Sources">Each source with the level of the largest particle it sheds, in the order of the vertices; one that sheds two sizes stands twice.</param>
internal sealed record Capacities(Levels Levels, int[] VertexLevel, int[] PlaceLevel, ImmutableArray<(int Vertex, int ShedLevel)> Sources)
{
    /// <summary>The level that every source sheds; <c>null</c> where they shed several.</summary>
    public int? OnlyShedLevel => Sources is [var first, ..] && Sources.All(source => source.ShedLevel == first.ShedLevel) ? first.ShedLevel : null;
}
