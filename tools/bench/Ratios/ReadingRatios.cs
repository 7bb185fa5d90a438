using BenchmarkDotNet.Attributes;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Treatment.Reading;
using YamlDotNet.Core;

namespace Contam.Bench.Ratios;

/// <summary>Reading a family of many parts, against the bare events of the YAML library on the same text.</summary>
public class ReadingRatios
{
    private static readonly ReadLimits Roomy = new() { FileBytes = int.MaxValue, Values = int.MaxValue, Parts = int.MaxValue, Joints = int.MaxValue };
    private string text = "";

    /// <summary>How many parts.</summary>
    public static int Parts { get; set; } = 100_000;

    /// <summary>Makes the file.</summary>
    [GlobalSetup]
    public void Make() => text = Systems.File(Parts);

    /// <summary>The events alone.</summary>
    [Benchmark(Baseline = true)]
    public int Events()
    {
        var parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        int events = 0;
        while (parser.MoveNext())
            events++;
        return events;
    }

    /// <summary>The family, checked and built.</summary>
    [Benchmark]
    public Family Family()
    {
        var outcome = FamilyReader.ReadText(text, "made-up.yaml", BuiltInStandards.HouseOverKinds.CatalogueOf(), Roomy);
        return outcome.Value ?? throw new InvalidOperationException(string.Join("; ", outcome.Problems.Take(3).Select(problem => problem.Text)));
    }
}
