using BenchmarkDotNet.Attributes;
using Contam.Families;
using Contam.Spread;
using QuikGraph;
using QuikGraph.Algorithms.Search;

namespace Contam.Bench.Ratios;

/// <summary>What every failure of a system of 2,000 parts and 5,000 joints reaches, all at once against one search for each.</summary>
public class ReachRatios
{
    private const int Parts = 2_000;
    private Family family = null!;
    private AdjacencyGraph<int, SEdge<int>> library = null!;

    /// <summary>Makes the system.</summary>
    [GlobalSetup]
    public void Make()
    {
        family = Systems.Loops(Parts);
        library = Systems.OfTheLibrary(family);
    }

    /// <summary>One search of the graph library for each failure.</summary>
    [Benchmark(Baseline = true)]
    public long SearchForEach()
    {
        long reached = 0;
        for (int failed = 0; failed < Parts; failed++)
        {
            var search = new BreadthFirstSearchAlgorithm<int, SEdge<int>>(library);
            search.Compute(failed);
            reached += search.VerticesColors.Values.Count(colour => colour == GraphColor.Black);
        }

        return reached;
    }

    /// <summary>All sets, from the family on.</summary>
    [Benchmark]
    public int AllAtOnce() => ReachSets.Of(family).Sum(block => block.Count);
}
