using Contam.Graphs;

namespace Contam.References.Graphs;

/// <summary>Immediate dominators as the sources beside each graph in <see cref="Published"/> print them. The root has none, nor has what is not reached.</summary>
public sealed class Dominators_published
{
    [Fact]
    public void Lengauer_and_Tarjan_figure_1() => Check(Published.LengauerTarjan, "R", "A R, B R, C R, D R, F C, G C, L D, H R, I R, J G, K R, E R");

    [Fact]
    public void Appel_figure_19_4() => Check(Published.Appel, "0", "1 0, 2 1, 3 1, 4 2, 5 2, 6 2");

    [Fact]
    public void Muchnick_figure_8_21() => Check(Published.Muchnick21, "0", "1 0, 2 1, 3 2, 4 2, 5 4, 6 4, 7 4");

    [Fact]
    public void Muchnick_figure_8_18_with_a_vertex_that_is_not_reached() => Check(Published.Muchnick18, "0", "1 0, 2 0, 3 2, 4 2, 5 -, 6 1, 7 0");

    [Fact]
    public void The_graph_without_a_name() => Check(Published.BoostUnnamed, "0", "1 0, 2 1, 3 1, 4 3, 5 4, 6 4, 7 1");

    private static void Check(Net net, string root, string expected)
    {
        int[] immediate = Dominators.Immediate(net.Packed, [net.At(root)]);
        Assert.Equal(Sorted(expected + $", {root} -"), Sorted(string.Join(", ", net.Names.Select((name, vertex) => $"{name} {(immediate[vertex] < 0 ? "-" : net.Names[immediate[vertex]])}"))));
    }

    private static string Sorted(string list) => string.Join(", ", list.Split(", ").Order(StringComparer.Ordinal));
}
