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
        Assert.Contains(Enumerable.Range(14, 60), early => bench.Job("tick", JobBench.Number(early), "--anyway", "why not", "--minutes", "2.5").Exit == 0);
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
        Assert.Equal(0, bench.Call("job", "import", bench.At("job.json"), "--shop", bench.At("other.db")).Exit);
        bench.Job("note", "one more");
        bench.Call("job", "note", "another", "--shop", bench.At("other.db"));
        File.WriteAllText(bench.At("job.json"), bench.Call("job", "export", "--shop", bench.At("other.db")).Out);
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

    [Theory]
    [InlineData("its last entries cut off", "it says that it has 4 entries, and 2 are there")]
    [InlineData("its last entries and the count cut off", "its last entry is not the one that it says it ends with")]
    [InlineData("its end made to fit", "what it says under steps is not what its entries come to")]
    [InlineData("its state edited", "what it says under state is not what its entries come to")]
    [InlineData("what is missing edited", "what it says under missing is not what its entries come to")]
    [InlineData("a release made up", "entry 5: it releases the engine although step 4 is open: ")]
    [InlineData("a refit made up", "entry 5: the rules refuse it (")]
    [InlineData("a tick out of turn made to look in turn", "entry 5: the rules refuse it (step ")]
    [InlineData("a plan with a step less", "entry 1: its plan is not the one that follows from what was asked: line ")]
    [InlineData("a find taken back", "entry 6: the rules refuse it (metal was found at lower-plug before)")]
    public void That_was_cut_edited_or_made_up_is_refused(string forgery, string why)
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(3);
        string forged = Forging.Of(bench, forgery);
        File.WriteAllText(bench.At("job.json"), forged);
        Answer import = bench.Call("job", "import", bench.At("job.json"), "--shop", bench.At("other.db"));
        Assert.Equal(2, import.Exit);
        Assert.StartsWith($"contam: FOLDER/job.json is not taken in: {why}", import.Error, StringComparison.Ordinal);
        Assert.True(!File.Exists(bench.At("other.db")) || JobBench.ListOf(bench.At("other.db")).IsEmpty);
    }

    [Fact]
    public void With_clean_looks_is_taken_in_only_when_somebody_stands_for_each()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("clean", "lower-plug=metal", "--yes", "--by", "Bo").Exit);
        File.WriteAllText(bench.At("job.json"), bench.Job("export").Out);
        string[] import = ["job", "import", bench.At("job.json"), "--shop", bench.At("other.db")];
        Answer refused = bench.Call(import);
        Assert.Equal(1, refused.Exit);
        Assert.Contains("nobody here stands for that: lower-plug clean of metal, by Bo. Nothing was written.", refused.Error, StringComparison.Ordinal);
        Assert.Equal(0, bench.Call([.. import, "--confirm-findings", "lower-plug=metal:Cy"]).Exit);
        Assert.Contains("lower-plug clean of metal, for which Cy stands", bench.Call("job", "export", "--shop", bench.At("other.db")).Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Call("job", "check", "--shop", bench.At("other.db")).Exit);
    }

    internal static void AssertFits(string json, string schema = "job")
    {
        JsonSchema rules = JsonSchema.FromText(File.ReadAllText(RepositoryFiles.At($"systems/schema/{schema}.schema.json")));
        using JsonDocument document = JsonDocument.Parse(json);
        EvaluationResults results = rules.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join('\n', (results.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }
}
