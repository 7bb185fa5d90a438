using System.Text.Json;
using Contam.Support;
using Json.Schema;

namespace Contam.Jobs.Tests;

/// <summary>A job as one document.</summary>
public class An_export
{
    [Fact]
    public void Taken_in_is_the_same_job()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(12);
        bench.Job("note", "ünïcode \u00a0 \"quoted\" <b> 'x' \U0001F6E0");
        bench.Job("tick", "14", "--anyway", "why not", "--minutes", "2.5");
        bench.Job("found", "forward-gear=water", "--yes");
        bench.Job("measure", "pinion-backlash", "0.2mm");
        string export = bench.Job("export").Out;
        AssertFits(export);
        File.WriteAllText(bench.At("job.json"), export);
        string other = bench.At("other.db");
        Answer import = bench.Call("job", "import", bench.At("job.json"), "--shop", other);
        Assert.Equal((0, $"Job {bench.Read().Id} is taken in.\n", ""), (import.Exit, import.Out, import.Error));
        Assert.Equal(export, bench.Call("job", "export", "--shop", other).Out);
        Assert.Equal(0, bench.Call("job", "check", "--shop", other).Exit);
        Assert.Equal((0, $"Job {bench.Read().Id} is here already, with the same entries. Nothing is changed.\n"), bench.Call("job", "import", bench.At("job.json"), "--shop", other) is var again ? (again.Exit, again.Out) : default);
    }

    [Fact]
    public void Of_a_job_that_went_another_way_is_refused()
    {
        using JobBench bench = JobBench.WithJob();
        File.WriteAllText(bench.At("job.json"), bench.Job("export").Out);
        bench.Job("note", "one more");
        Answer import = bench.Job("import", bench.At("job.json"));
        Assert.Equal(2, import.Exit);
        Assert.Contains("has gone another way there. Nothing was changed.", import.Error, StringComparison.Ordinal);
        Assert.Equal(2, bench.Read().Summary.Sequence);
    }

    [Theory]
    [InlineData("{}", "the format is not contam-job/1")]
    [InlineData("""{"format":"contam-job/1","record":{"entries":[],"texts":[]}}""", "it has no entry")]
    [InlineData("""{"format":"contam-job/1","record":{"entries":[{"sequence":1}],"texts":[]}}""", "previous is missing")]
    public void That_is_none_is_refused(string text, string why)
    {
        using var bench = new JobBench();
        File.WriteAllText(bench.At("job.json"), text);
        Answer import = bench.Job("import", bench.At("job.json"));
        Assert.Equal((2, $"contam: FOLDER/job.json is not taken in: {why}. Ask for a fresh export.\n"), (import.Exit, import.Error));
    }

    [Fact]
    public void Without_the_record_is_what_show_gives()
    {
        using JobBench bench = JobBench.WithJob();
        AssertFits(bench.Job("show", "--format", "json").Out);
    }

    internal static void AssertFits(string json, string schema = "job")
    {
        JsonSchema rules = JsonSchema.FromText(File.ReadAllText(RepositoryFiles.At($"systems/schema/{schema}.schema.json")));
        using JsonDocument document = JsonDocument.Parse(json);
        EvaluationResults results = rules.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join('\n', (results.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }
}
