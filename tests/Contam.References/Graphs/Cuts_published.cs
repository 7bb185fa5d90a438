using Contam.Graphs;

namespace Contam.References.Graphs;

public sealed class Cuts_published
{
    /// <summary>
    /// Worked out apart from this library on the graph of Lengauer and Tarjan, by Menger's theorem: how many parts, and one set that does it. Of several smallest sets ours is the one nearest to
    /// the source, which need not be the one named here; so both are shown to separate, and ours to be as small.
    /// </summary>
    [Theory]
    [InlineData("I", "C K")]
    [InlineData("H", "E L")]
    [InlineData("J", "G")]
    [InlineData("E", "B H")]
    public void Smallest_sets_of_the_Lengauer_and_Tarjan_graph(string target, string named)
    {
        Net net = Published.LengauerTarjan;
        int to = net.At(target);
        VertexCut cut = VertexCut.Smallest(net.Packed, new HashSet<int> { net.At("R") }, to);
        int[] theirs = [.. named.Split(' ').Select(net.At)];
        Assert.False(cut.IsDirect);
        Assert.Equal(theirs.Length, cut.Vertices.Length);
        Assert.False(Reachable.From(net.Packed, [net.At("R")], theirs.Contains)[to]);
        Assert.False(Reachable.From(net.Packed, [net.At("R")], cut.Vertices.Contains)[to]);
    }

    /// <summary>Three ways that share no vertex lead from any vertex of the Petersen graph to any other (its connectivity is 3; from memory, sure).</summary>
    [Fact]
    public void The_Petersen_graph_is_three_connected()
    {
        Net net = Published.Petersen;
        for (int from = 0; from < net.Count; from++)
        {
            for (int to = 0; to < net.Count; to++)
            {
                if (from == to)
                    continue;
                VertexCut cut = VertexCut.Smallest(net.Packed, new HashSet<int> { from }, to);
                Assert.Equal(net.Edges.Contains((from, to)), cut.IsDirect);
                Assert.Equal(3, cut.Vertices.Length + (cut.IsDirect ? 1 : 0));
            }
        }
    }

    /// <summary>The book: 23, across the cut {s, 1, 2, 4} | {3, t}.</summary>
    [Fact]
    public void The_flow_network_of_the_textbook_is_cut_by_23() =>
        Assert.Equal("13 x 12, 43 x 7, 4t x 4", Text(Network.Clrs.SmallestCut()));

    /// <summary>The second edition's network has one more edge, 1 to 2 of 10, and the same answer.</summary>
    [Fact]
    public void An_edge_from_1_to_2_of_10_changes_nothing() =>
        Assert.Equal("13 x 12, 43 x 7, 4t x 4", Text(Network.Clrs.With("12 10").SmallestCut()));

    /// <summary>The value printed with the sample is 13.</summary>
    [Fact]
    public void The_sample_of_the_challenge_is_cut_by_13() => Assert.Equal(13, Network.Dimacs.SmallestCut().Length);

    private static string Text(string[] cut) => string.Join(", ", cut.GroupBy(edge => edge, StringComparer.Ordinal).Select(edge => $"{edge.Key} x {edge.Count()}"));
}
