using Contam.Jobs.Entries;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>The record of a clean-out, from the plan to the release.</summary>
public class A_job
{
    [Fact]
    public void Is_not_opened_with_a_plan_that_does_not_hold()
    {
        using var bench = new JobBench();
        string plan = bench.Call($"plan {JobBench.Gearcase} --failed pinion --debris metal --format json".Split(' ')).Out;
        File.WriteAllText(bench.At("plan.json"), plan.Replace("\"grade\": \"exposed\"", "\"grade\": \"guarded\"", StringComparison.Ordinal));
        Answer answer = bench.Job("open", bench.At("plan.json"), RepositoryFiles.At(JobBench.Gearcase), "--customer", "Quay 4", "--engine", "port", "--technician", "Ada");
        Assert.Equal((1, ""), (answer.Exit, answer.Out));
        Assert.StartsWith("contam: no job is opened with this plan, for it does not hold: ", answer.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Shop));
    }

    [Fact]
    public void Is_not_opened_with_a_plan_that_leaves_cleaning_for_after_the_first_run()
    {
        using var bench = new JobBench();
        Plans.PlanDocument plan = Plans.PlanJson.Read(bench.Call($"plan {JobBench.Gearcase} --failed pinion --debris metal --format json".Split(' ')).Out);
        int cleaning = plan.Steps.First(step => step.Action == StepAction.Clean).Number;
        File.WriteAllText(bench.At("plan.json"), Plans.PlanJson.Write(plan with { Steps = [.. plan.Steps.Select(step => step.Number == cleaning ? step with { DueAfterRunningHours = 5 } : step)] }));
        Answer answer = bench.Job("open", bench.At("plan.json"), RepositoryFiles.At(JobBench.Gearcase), "--customer", "Quay 4", "--engine", "port", "--technician", "Ada");
        Assert.Equal($"contam: no job is opened with this plan, for it does not hold: step {cleaning} is said to be due after the first run, and is no step that proves the engine. Plan again with contam plan.\n", answer.Error);
        Assert.Equal(1, answer.Exit);
    }

    [Fact]
    public void Refuses_a_step_out_of_turn_and_names_the_one_that_comes_first()
    {
        using JobBench bench = JobBench.WithJob();
        Answer answer = bench.Job("tick", "12");
        Assert.Equal((1, "Step 12 is not its turn. First comes step 1: Order what the list at the end names, first pinion, which takes 6 d to come.\n", ""), (answer.Exit, answer.Out, answer.Error));
        Assert.Empty(bench.Read().State.TickOf);
    }

    [Fact]
    public void Takes_a_step_out_of_turn_with_a_reason_and_keeps_it()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("tick", "3", "--anyway", "battery is off already", "--by", "Bo").Exit);
        var tick = Assert.IsType<Ticked>(bench.Read().Bodies[^1]);
        Assert.Equal(("Bo", "battery is off already", "1"), (tick.By, tick.Anyway, string.Join(',', tick.Skipped)));
    }

    [Fact]
    public void Does_not_count_a_step_twice()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("tick", "1").Exit);
        Assert.Equal((1, "Step 1 is done already, by Ada.\n"), bench.Job("tick", "1", "--by", "Bo") is var again ? (again.Exit, again.Out) : default);
    }

    [Fact]
    public void Does_not_change_when_the_family_file_does()
    {
        using var bench = new JobBench();
        string family = bench.At("engine.yaml");
        File.Copy(RepositoryFiles.At(JobBench.Gearcase), family);
        File.WriteAllText(bench.At("plan.json"), bench.Call("plan", family, "--failed", "pinion", "--debris", "metal", "--format", "json").Out);
        Assert.Equal(0, bench.Job("open", bench.At("plan.json"), family, "--customer", "Quay 4", "--engine", "port", "--technician", "Ada").Exit);
        File.WriteAllText(family, "gone");
        Answer measured = bench.Job("measure", "pinion-backlash", "0.2mm");
        Assert.Equal((0, ""), (measured.Exit, measured.Error));
    }

    [Fact]
    public void Opens_again_what_was_fitted_on_the_strength_of_an_unticked_step()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        int cleaned = bench.StepAt(StepAction.Clean, "driveshaft", Phase.CleanOut);
        int taken = bench.StepAt(StepAction.Remove, "driveshaft", Phase.Strip);
        int fitted = bench.StepAt(StepAction.Refit, "driveshaft", Phase.Refit);
        int other = bench.StepAt(StepAction.Clean, "propeller-shaft", Phase.CleanOut);
        Answer answer = bench.Job("untick", JobBench.Number(cleaned), "--because", "an oil groove was forgotten");
        Assert.Equal(0, answer.Exit);
        Assert.Contains($"So is step {fitted}: it was done after step {cleaned}, which is open.\n", answer.Out, StringComparison.Ordinal);
        Assert.Contains($"So is step {taken}: it is back on, and must come off again for step {cleaned}.\n", answer.Out, StringComparison.Ordinal);
        Work.JobState state = bench.Read().State;
        Assert.True(state.IsDone(state.Steps.Find(other)!));
        Assert.Equal((1, 0), (bench.Job("release").Exit, bench.Job("check").Exit));
    }

    [Fact]
    public void Shows_what_can_be_done_now_and_what_waits()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(3);
        Assert.Equal([4, 5], Work.TickOrder.Now(bench.Read().State).Select(step => step.Number));
        string next = bench.Job("next").Out;
        Assert.Contains("\n6     waits for 4, 5\n", next, StringComparison.Ordinal);
    }

    [Fact]
    public void Asks_which_is_meant_where_several_are_open()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("open", bench.At("plan.json"), RepositoryFiles.At(JobBench.Gearcase), "--customer", "Quay 5", "--engine", "port", "--technician", "Ada").Exit);
        Answer answer = bench.Job("tick", "1");
        Assert.Equal(2, answer.Exit);
        Assert.StartsWith("contam: several jobs are open: ", answer.Error, StringComparison.Ordinal);
    }
}
