using Contam.Jobs.Work;

namespace Contam.Jobs.Tests;

/// <summary>A part that came off to be sent away is off until a step has put it back, whatever was ticked before, and whatever plan comes after.</summary>
public class A_part_sent_away
{
    [Fact]
    public void Goes_back_by_a_step_although_a_new_plan_asks_nothing_of_it()
    {
        using JobBench bench = JobBench.WithJob();
        Sent(bench, "upper-plug");
        Assert.Equal(0, bench.Job("clean", "gear-housing=metal", "--yes").Exit);
        JobState state = bench.Read().State;
        Assert.Empty(state.Plan.Steps.Where(step => step.Part == "upper-plug"));
        WorkStep refit = state.Steps.All.Single(step => step.Parts.Contains("upper-plug"));
        Assert.True(refit is { Action: StepAction.Refit, IsCarried: true, IsBeforeRelease: true });
        Assert.Contains($"step {refit.Number} is open", bench.Job("release").Out.ReplaceLineEndings(" "), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(0, bench.Job("check").Exit);
    }

    [Fact]
    public void Stays_due_through_every_further_plan_until_it_is_put_back()
    {
        using JobBench bench = JobBench.WithJob();
        Sent(bench, "upper-plug");
        Assert.Equal(0, bench.Job("clean", "gear-housing=metal", "--yes").Exit);
        Assert.Equal(0, bench.Job("replan", "--yes").Exit);
        WorkStep refit = bench.Read().State.Steps.All.Single(step => step.Parts.Contains("upper-plug"));
        Assert.Equal(0, bench.Job("tick", JobBench.Number(refit.Number), "--anyway", "it is here").Exit);
        Assert.Empty(bench.Read().State.SentOff);
        Assert.Equal(0, bench.Job("replan", "--yes").Exit);
        Assert.DoesNotContain(bench.Read().State.Steps.All, step => step.Parts.Contains("upper-plug"));
    }

    [Fact]
    public void Lets_nobody_try_the_engine_before_it_is_put_back()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Sent(bench, "driveshaft");
        WorkStep[] tries = [.. bench.Read().State.Open.Where(step => step.IsBeforeRelease && BenchPlay.TriesTheEngine(step))];
        Assert.NotEmpty(tries);
        Assert.All(tries, step =>
        {
            Answer answer = bench.Job("tick", JobBench.Number(step.Number), "--anyway", "the owner waits");
            Assert.Equal(1, answer.Exit);
            Assert.Contains("driveshaft, which came off to be sent away, is not put back", answer.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        });
        bench.TickAll();
        Assert.Empty(bench.Read().State.SentOff);
    }

    [Fact]
    public void That_no_step_puts_back_is_on_again_when_it_has_come_back()
    {
        using JobBench bench = JobBench.WithJob();
        string part = bench.Read().State.Steps.All.Where(step => step.Action != StepAction.Note).SelectMany(step => step.Parts)
            .First(id => !bench.Read().State.Steps.All.Any(step => step.Action == StepAction.Refit && step.Parts.Contains(id)));
        Assert.Equal(0, bench.Job("sent", part).Exit);
        Assert.Equal([part], bench.Read().State.SentOff);
        Assert.Equal(0, bench.Job("back", part).Exit);
        Assert.Empty(bench.Read().State.SentOff);
    }

    private static void Sent(JobBench bench, string part)
    {
        Assert.Equal(0, bench.Job("sent", part).Exit);
        Assert.Equal(0, bench.Job("back", part).Exit);
        Assert.Equal([part], bench.Read().State.SentOff);
    }
}
