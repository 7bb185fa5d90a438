using Contam.Plans;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>A job for failures that say what each shed.</summary>
public class Failures_in_pairs
{
    private const string Asked = "--failed pinion=metal:500um --failed propeller-shaft=nothing";

    [Fact]
    public void Open_a_job_with_the_plan_that_they_give_and_its_warning()
    {
        using var bench = new JobBench();
        Answer opened = Open(bench, Asked.Split(' '));
        Assert.Equal((0, "contam: The pinion is taken to have shed metal of up to 500 µm, as was seen; the family says up to 3000 µm. That spares nothing.\n"), (opened.Exit, opened.Error));
        Assert.Equal(["pinion=metal:500um", "propeller-shaft=nothing"], bench.Read().Plan.Failed.Select(PlanFailures.Written));
        Assert.Equal((0, ""), bench.Job("check") is var check ? (check.Exit, check.Error) : default);
    }

    [Fact]
    public void Open_the_same_job_by_a_plan_that_is_brought_along()
    {
        using var bench = new JobBench();
        bench.WritePlan($"plan {JobBench.Gearcase} {Asked} --looks 0 --format json");
        Assert.Equal((0, ""), Open(bench, "--plan", bench.At("plan.json")) is var opened ? (opened.Exit, opened.Error) : default);
        // Whether somebody reviewed the family is said of the file, and is no part of the work.
        Assert.Equal(PlanJson.Write(PlanJson.Read(File.ReadAllText(bench.At("plan.json"))) with { Review = null }), PlanJson.Write(bench.Read().Plan));
    }

    [Fact]
    public void Open_a_job_where_nothing_was_shed()
    {
        using var bench = new JobBench();
        Answer opened = Open(bench, "--failed", "propeller-shaft=nothing");
        Assert.Equal(0, opened.Exit);
        Assert.StartsWith("contam: Nothing that failed shed anything and nothing was found", opened.Error, StringComparison.Ordinal);
        bench.TickAll();
        Assert.Equal(["propeller-shaft=nothing"], bench.Read().Plan.Failed.Select(PlanFailures.Written));
    }

    [Fact]
    public void Stay_what_they_are_when_a_find_changes_the_plan()
    {
        using var bench = new JobBench();
        Open(bench, Asked.Split(' '));
        Assert.Equal(0, bench.Job("found", "gear-housing=rubber", "--yes").Exit);
        // The pinion shed all that the plan was about, so it may have shed the rubber too; the shaft is said to have shed nothing.
        Assert.Equal(["pinion=metal:500um", "pinion=rubber", "propeller-shaft=nothing"], bench.Read().Plan.Failed.Select(PlanFailures.Written));
    }

    private static Answer Open(JobBench bench, params string[] asked) =>
        bench.Job(["open", RepositoryFiles.At(JobBench.Gearcase), .. asked, "--customer", "Quay 4", "--engine", "port", "--technician", "Ada"]);
}
