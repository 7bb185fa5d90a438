using Contam.Graphs;
using Contam.Procedure;

namespace Contam.References.Graphs;

public sealed class Loops_and_order_published
{
    [Fact]
    public void The_components_of_the_textbook_are_found() => Assert.Equal("a b e | c d | f g | h", Components(Published.ClrsComponents));

    [Fact]
    public void The_components_of_the_Boost_example_are_found() => Assert.Equal("a b h c i | f g | d e | j", Components(Published.BoostComponents));

    /// <summary>Boost, file_dependencies.expected: no cycle; and with bar.cpp > dax.h there is one.</summary>
    [Fact]
    public void The_files_have_no_loop_until_one_is_added()
    {
        Assert.Equal(Published.FileDependencies.Count, StronglyConnectedComponents.Of(Published.FileDependencies.Count, Published.FileDependencies.Edges).Component.Distinct().Count());
        Assert.Contains("dax.h bar.cpp yow.h", Components(Published.FileDependencies.With("bar.cpp", "dax.h")).Split(" | "));
    }

    /// <summary>The book prints one valid order, ours may be another: every garment must come before what goes over it.</summary>
    [Fact]
    public void The_clothes_of_the_textbook_are_put_in_an_order_that_can_be_worn()
    {
        Net net = Published.ClrsClothes;
        int[] order = GraphOf(net).InOrder();
        Assert.Equal(Enumerable.Range(0, net.Count), order.Order());
        Assert.All(net.Edges, edge => Assert.True(Array.IndexOf(order, edge.From) < Array.IndexOf(order, edge.To)));
    }

    /// <summary>Boost, file_dependencies.expected: the "time slots" of a parallel make, which are the longest ways from a file that waits for none.</summary>
    [Fact]
    public void The_files_have_the_printed_time_slots()
    {
        Net net = Published.FileDependencies;
        double[] slot = Chains.Of(GraphOf(net)).Head;
        Assert.Equal(
            "dax.h 0, boz.h 0, zow.h 0, yow.h 1, foo.cpp 1, zig.cpp 1, foo.o 2, bar.cpp 2, zig.o 2, zag.cpp 2, bar.o 3, zag.o 3, libfoobar.a 4, libzigzag.a 5, killerapp 6",
            string.Join(", ", "dax.h boz.h zow.h yow.h foo.cpp zig.cpp foo.o bar.cpp zig.o zag.cpp bar.o zag.o libfoobar.a libzigzag.a killerapp".Split(' ').Select(name => $"{name} {slot[net.At(name)]}")));
    }

    [Fact]
    public void A_circle_of_files_is_named()
    {
        Net net = Published.FileDependencies.With("bar.cpp", "dax.h");
        OrderCycleException circle = Assert.Throws<OrderCycleException>(() => GraphOf(net).InOrder());
        int[] named = [.. circle.Circle.Select(text => net.At(text.Split(' ')[1]))];
        Assert.InRange(named.Length, 2, 3);
        Assert.All(named, (file, place) => Assert.Contains((file, named[(place + 1) % named.Length]), net.Edges));
    }

    /// <summary>One job for each vertex, of a minute; the topic bears the vertex's name.</summary>
    internal static JobGraph GraphOf(Net net)
    {
        var graph = new JobGraph();
        foreach (string name in net.Names)
            graph.Add(id => new Job(id, Phase.CleanOut, StepAction.Clean) { Topic = name, Minutes = 1 });
        foreach ((int from, int to) in net.Edges)
            graph.Order(graph.Jobs[from], graph.Jobs[to]);
        return graph;
    }

    private static string Components(Net net)
    {
        int[] component = StronglyConnectedComponents.Of(net.Count, net.Edges).Component;
        return string.Join(" | ", Enumerable.Range(0, net.Count).GroupBy(vertex => component[vertex]).Select(members => net.Text(members)));
    }
}
