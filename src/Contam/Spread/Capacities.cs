namespace Contam.Spread;

/// <summary>
/// What each vertex and joint lets on of one debris, and what the sources shed, as levels (see <see cref="Levels"/>).
/// </summary>
/// <param name="Levels">The sizes behind the levels.</param>
/// <param name="VertexLevel">What each vertex lets on; 0 (unlimited) for a source, which holds nothing.</param>
/// <param name="JointLevel">What each joint lets on, by its number.</param>
/// <param name="Sources">Each source with the level of the largest particle it sheds, in the order of the vertices; one that sheds two sizes stands twice.</param>
internal sealed record Capacities(Levels Levels, int[] VertexLevel, int[] JointLevel, IReadOnlyList<(int Vertex, int ShedLevel)> Sources);
