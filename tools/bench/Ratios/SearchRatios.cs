using BenchmarkDotNet.Attributes;
using Contam.Families;
using Contam.Spread;
using QuikGraph;
using QuikGraph.Algorithms.Search;

namespace Contam.Bench.Ratios;

/// <summary>The spread from one failure, on graphs that stand ready: reach, grades and hops, against searches that only mark.</summary>
public class SearchRatios
{
    private SpreadGraph graph = null!;
    private AdjacencyGraph<int, SEdge<int>> library = null!;

    /// <summary>How many parts; three joints to each.</summary>
    public static int Parts { get; set; } = 1_000_000;

    /// <summary>Makes the graphs.</summary>
    [GlobalSetup]
    public void Make()
    {
        Family family = Systems.Chains(Parts);
        graph = SpreadGraph.Of(new SpreadQuestion(family, [family.Parts[0].Id], Debris.Metal));
        library = Systems.OfTheLibrary(family);
    }

    /// <summary>What no search can do without: every vertex marked, every joint looked at.</summary>
    [Benchmark(Baseline = true)]
    public int BareSearch()
    {
        int[] first = graph.Open.First, target = graph.Open.Target;
        var isMarked = new bool[first.Length - 1];
        var queue = new int[isMarked.Length];
        int count = 0;
        isMarked[0] = true;
        queue[count++] = 0;
        for (int next = 0; next < count; next++)
        {
            int vertex = queue[next];
            int end = first[vertex + 1];
            for (int place = first[vertex]; place < end; place++)
            {
                int beyond = target[place];
                if (isMarked[beyond])
                    continue;
                isMarked[beyond] = true;
                queue[count++] = beyond;
            }
        }

        return count;
    }

    /// <summary>Reach, hops and grades of every part.</summary>
    [Benchmark]
    public int Spread()
    {
        SpreadWorld world = SpreadWorld.Of(graph, new HashSet<int>());
        var grades = new byte[graph.Open.VertexCount];
        for (int vertex = 0; vertex < grades.Length; vertex++)
            grades[vertex] = world.Reaches(vertex) ? (byte)(1 + (int)world.GradeAt(vertex)) : (byte)0;
        return grades.Length;
    }

    /// <summary>The graph library's search on the graph library's graph.</summary>
    [Benchmark]
    public int LibrarySearch()
    {
        var search = new BreadthFirstSearchAlgorithm<int, SEdge<int>>(library);
        search.Compute(0);
        return search.VerticesColors.Count;
    }
}
