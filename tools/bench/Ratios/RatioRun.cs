using System.Globalization;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.NoEmit;

namespace Contam.Bench.Ratios;

/// <summary>Ratios taken by the benchmark library, all of one run in one process: how many times as fast this is as the other; more is better. Beside them the memory of reading, where less is.</summary>
internal static class RatioRun
{
    private const int LargeFamily = 100_000;

    private const string PeakHeap = "peak heap of reading, in sizes of the file";

    /// <summary>Measures everything at full size and keeps it.</summary>
    public static void Record()
    {
        List<Ratio> ratios = [.. Full(), .. Short()];
        KeptRatios.Put(ratios.Select(ratio => KeyValuePair.Create(ratio.Name, ratio.Value)));
        Tell(ratios);
    }

    /// <summary>
    /// Measures the short ones again; whether each is at least half of what was kept. One that is not is given a second chance: the machine may have had
    /// other work. Of memory, on which other work has no bearing, a quarter more is too much.
    /// </summary>
    public static bool Guard()
    {
        OrderedDictionary<string, double> kept = KeptRatios.Read();
        double enough = 1.25 * kept[PeakHeap];
        if (!ReadingMemory.IsEnough(LargeFamily, enough))
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{PeakHeap} has risen from {kept[PeakHeap]:0.00} to more than {enough:0.00}"));
            return false;
        }

        HashSet<string> fallen = Fallen(kept);
        if (fallen.Count == 0)
            return true;
        Console.WriteLine("once more, for the machine may have had other work");
        fallen.IntersectWith(Fallen(kept));
        return fallen.Count == 0;
    }

    private static HashSet<string> Fallen(OrderedDictionary<string, double> kept)
    {
        Ratio[] ratios = [.. Short()];
        Tell(ratios);
        Ratio[] fallen = [.. ratios.Where(ratio => ratio.Value < kept[ratio.Name] / 2)];
        foreach (Ratio ratio in fallen)
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{ratio.Name} has fallen from {kept[ratio.Name]:0.00} to {ratio.Value:0.00}, below half"));
        return [.. fallen.Select(ratio => ratio.Name)];
    }

    /// <summary>Measures reading alone, at several sizes, and keeps nothing.</summary>
    public static void Reading()
    {
        foreach (int parts in new[] { 1_000, 5_000, 10_000, LargeFamily })
        {
            ReadingRatios.Parts = parts;
            Tell(MeasureReading(string.Create(CultureInfo.InvariantCulture, $", {parts:N0} parts")));
        }
    }

    private static IEnumerable<Ratio> Full()
    {
        SearchRatios.Parts = 1_000_000;
        ReadingRatios.Parts = LargeFamily;
        return Measure("");
    }

    private static IEnumerable<Ratio> Short()
    {
        SearchRatios.Parts = 100_000;
        ReadingRatios.Parts = 5_000;
        return Measure(", short");
    }

    private static IEnumerable<Ratio> Measure(string suffix)
    {
        Dictionary<string, double> search = Fastest<SearchRatios>();
        yield return new("spread against a bare search" + suffix, search[nameof(SearchRatios.BareSearch)] / search[nameof(SearchRatios.Spread)]);
        yield return new("spread against the graph library's search" + suffix, search[nameof(SearchRatios.LibrarySearch)] / search[nameof(SearchRatios.Spread)]);
        // What takes a program of its own is left out of the short ones.
        if (suffix.Length == 0 && CSearch.From(Systems.Chains(SearchRatios.Parts)) is { } c)
        {
            if (c.Reached != SearchRatios.Parts)
                throw new InvalidOperationException($"the C graph library reaches {c.Reached} of {SearchRatios.Parts} parts");
            yield return new("spread against the C graph library's reachability", c.Time / search[nameof(SearchRatios.Spread)]);
        }

        Dictionary<string, double> reach = Fastest<ReachRatios>();
        yield return new("reach of every failure against a search for each" + suffix, reach[nameof(ReachRatios.SearchForEach)] / reach[nameof(ReachRatios.AllAtOnce)]);
        foreach (Ratio ratio in MeasureReading(suffix))
            yield return ratio;
    }

    private static IEnumerable<Ratio> MeasureReading(string suffix)
    {
        Dictionary<string, double> reading = Fastest<ReadingRatios>();
        yield return new("reading against the bare events" + suffix, reading[nameof(ReadingRatios.Events)] / reading[nameof(ReadingRatios.Family)]);
        // Beside a small file what the standards take is most of it.
        if (ReadingRatios.Parts >= LargeFamily)
            yield return new(PeakHeap + suffix, ReadingMemory.Peak(ReadingRatios.Parts), IsCost: true);
    }

    /// <summary>The fastest of several turns of each: other work on the machine makes a turn slower, never faster.</summary>
    private static Dictionary<string, double> Fastest<T>()
    {
        Job job = Job.Default.WithToolchain(new InProcessNoEmitToolchain(TimeSpan.FromMinutes(20), logOutput: false)).WithStrategy(RunStrategy.Monitoring).WithWarmupCount(3).WithIterationCount(9).WithInvocationCount(1).WithUnrollFactor(1);
        IConfig config = ManualConfig.CreateEmpty().AddJob(job).AddLogger(NullLogger.Instance).AddColumnProvider(BenchmarkDotNet.Columns.DefaultColumnProviders.Instance)
            .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "contam-bench")).WithOptions(ConfigOptions.DisableLogFile);
        Summary summary = BenchmarkRunner.Run<T>(config);
        return summary.Reports.ToDictionary(
            report => report.BenchmarkCase.Descriptor.WorkloadMethod.Name,
            report => report.ResultStatistics?.Min ?? throw new InvalidOperationException($"{report.BenchmarkCase.Descriptor.WorkloadMethod.Name} could not be measured"),
            StringComparer.Ordinal);
    }

    private static void Tell(IEnumerable<Ratio> ratios)
    {
        foreach (Ratio ratio in ratios)
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{ratio.Name}: {ratio.Value:0.00}{(ratio.IsCost ? "" : " times as fast")}"));
    }

    private sealed record Ratio(string Name, double Value, bool IsCost = false);
}
