using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using Contam.Support;

namespace Contam.References.Graphs;

public sealed class Reach_published
{
    private const string ChangedByYow = "bar.cpp yow.h zag.cpp libfoobar.a bar.o libzigzag.a zag.o killerapp";

    /// <summary>Boost, file_dependencies.expected: "A change to yow.h will cause what to be re-made?"</summary>
    [Fact]
    public void A_search_from_yow_finds_what_the_example_prints()
    {
        Net net = Published.FileDependencies;
        Assert.Equal(Sorted(ChangedByYow), Sorted(net.Text(Reachable.From(net.Packed, [net.At("yow.h")]))));
    }

    /// <summary>The same by the whole way of a question: a family of these parts and joints, yow.h failed.</summary>
    [Fact]
    public void A_spread_from_yow_lists_what_the_example_prints()
    {
        DebrisSpread spread = Spreading.Of(new SpreadQuestion(FamilyOf(Published.FileDependencies, _ => null), [new PartId("yow.h")], Debris.Metal));
        Assert.Equal(Sorted(ChangedByYow), Sorted(string.Join(' ', spread.Parts.Select(part => part.Part.Value))));
    }

    /// <summary>
    /// Introduction to Algorithms, figure 26.1 (a network with capacities; from memory, sure), its capacities taken as the widest particle that each joint lets on. The widest ways were worked out
    /// apart from this library: 16 to 1, 13 to 2, 12 to 3, 13 to 4, 12 to t.
    /// </summary>
    [Fact]
    public void The_widest_particles_of_the_flow_network_are_those_of_its_widest_paths()
    {
        Network network = Network.Clrs;
        Family family = FamilyOf(Net.Read(network.Text), edge => network.Capacities[edge]);
        DebrisSpread spread = Spreading.Of(new SpreadQuestion(family, [new PartId("s")], Debris.Metal));
        Assert.Equal("1 16, 2 13, 3 12, 4 13, t 12", string.Join(", ", spread.Parts.Where(part => part.Part.Value != "s").OrderBy(part => part.Part).Select(part => $"{part.Part} {part.Reach.Micrometres}")));
    }

    private static string Sorted(string names) => string.Join(' ', names.Split(' ').Order(StringComparer.Ordinal));

    private static Family FamilyOf(Net net, Func<int, double?> passageOf) => SystemBuilder.Build(
        net.Names.Select(name => new Part(new PartId(name), ShopFloor.Part, ShopFloor.Written(1))),
        net.Edges.Select((edge, number) => new Joint(number, new PartId(net.Names[edge.From]), new PartId(net.Names[edge.To]), "flow", ShopFloor.Written(1))
        {
            Passage = passageOf(number) is { } passage ? ParticleSize.FromMicrometres(passage) : null,
        }));
}
