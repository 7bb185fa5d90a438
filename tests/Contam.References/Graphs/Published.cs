using Contam.Support;

namespace Contam.References.Graphs;

/// <summary>Graphs whose answers are published, each with where.</summary>
internal static class Published
{
    /// <summary>Boost Graph Library, example/file_dependencies.cpp, answers in file_dependencies.expected (repository boostorg/graph).</summary>
    public static Net FileDependencies { get; } = Net.Read(
        """
        dax.h > foo.cpp, bar.cpp, yow.h
        yow.h > bar.cpp, zag.cpp
        boz.h > bar.cpp, zig.cpp, zag.cpp
        zow.h > foo.cpp
        foo.cpp > foo.o
        foo.o > libfoobar.a
        bar.cpp > bar.o
        bar.o > libfoobar.a
        libfoobar.a > libzigzag.a
        zig.cpp > zig.o
        zig.o > libzigzag.a
        zag.cpp > zag.o
        zag.o > libzigzag.a
        libzigzag.a > killerapp
        """);

    /// <summary>Cormen, Leiserson, Rivest and Stein, "Introduction to Algorithms", figure 22.9 (strongly connected components); from memory, sure.</summary>
    public static Net ClrsComponents { get; } = Net.ReadPairs("ab bc be bf cd cg dc dh ea ef fg gf gh hh");

    /// <summary>Boost Graph Library, example/strong_components.cpp, answers in strong_components.expected.</summary>
    public static Net BoostComponents { get; } = Net.Read("a > b, f, h; b > c, a; c > d, b; d > e; e > d; f > g; g > f, d; h > i; i > h, j, e, c; j");

    /// <summary>
    /// Lengauer and Tarjan, "A fast algorithm for finding dominators in a flowgraph", ACM TOPLAS 1, 1979, figure 1; as in the Boost Graph Library, test/dominator_tree_test.cpp, and in
    /// igraph, examples/simple/dominator_tree.c.
    /// </summary>
    public static Net LengauerTarjan { get; } = Net.Read(
        "R > A, B, C; A > D; B > A, D, E; C > F, G; D > L; E > H; F > I; G > I, J; H > E, K; I > K; J > I; K > I, R; L > H");

    /// <summary>Appel, "Modern Compiler Implementation", figure 19.4; as in the Boost test.</summary>
    public static Net Appel { get; } = Net.ReadPairs("01 12 13 24 25 46 56 61");

    /// <summary>Muchnick, "Advanced Compiler Design and Implementation", figure 8.21; as in the Boost test.</summary>
    public static Net Muchnick21 { get; } = Net.ReadPairs("01 12 23 24 32 45 46 57 67");

    /// <summary>The same, figure 8.18; as in the Boost test.</summary>
    public static Net Muchnick18 { get; } = Net.ReadPairs("01 02 16 23 24 37 57 67");

    /// <summary>A graph without a name in the Boost test; also in the RBGL package of Bioconductor, XML/dominator.gxl.</summary>
    public static Net BoostUnnamed { get; } = Net.ReadPairs("01 12 13 27 34 45 46 57 64");

    /// <summary>Introduction to Algorithms, figure 22.7 (what is put on before what); from memory, sure.</summary>
    public static Net ClrsClothes { get; } = Net.Read(
        "undershorts > pants, shoes; pants > belt, shoes; belt > jacket; shirt > belt, tie; tie > jacket; socks > shoes; watch");

    /// <summary>The Petersen graph, every edge both ways: an outer ring, an inner star, spokes. Definition; from memory, sure.</summary>
    public static Net Petersen { get; } = Net.Read(string.Join(';', Enumerable.Range(0, 5).SelectMany(i => new[]
    {
        $"o{i} > o{(i + 1) % 5}", $"o{(i + 1) % 5} > o{i}", $"i{i} > i{(i + 2) % 5}", $"i{(i + 2) % 5} > i{i}", $"o{i} > i{i}", $"i{i} > o{i}",
    })));

    /// <summary>Direct flights of 2008; the file names its source and licence.</summary>
    public static Net FlightRoutes { get; } = Net.Read(string.Join('\n', File
        .ReadLines(RepositoryFiles.At("tests/Contam.References/Graphs/flight-routes-2008.txt"))
        .Where(line => line.Length > 0 && line[0] != '#')
        .Select(line => line[..3] + " > " + line[4..].Replace(' ', ','))));

    /// <summary>All of the above but the last, by name.</summary>
    public static IReadOnlyDictionary<string, Net> Small { get; } = new Dictionary<string, Net>(StringComparer.Ordinal)
    {
        [nameof(FileDependencies)] = FileDependencies,
        ["FileDependencies with bar.cpp > dax.h"] = FileDependencies.With("bar.cpp", "dax.h"),
        [nameof(ClrsComponents)] = ClrsComponents,
        [nameof(BoostComponents)] = BoostComponents,
        [nameof(LengauerTarjan)] = LengauerTarjan,
        [nameof(Appel)] = Appel,
        [nameof(Muchnick21)] = Muchnick21,
        [nameof(Muchnick18)] = Muchnick18,
        [nameof(BoostUnnamed)] = BoostUnnamed,
        [nameof(ClrsClothes)] = ClrsClothes,
        [nameof(Petersen)] = Petersen,
    };
}
