using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Jobs.Tests;

/// <summary>Nobody turns the key before the record is complete.</summary>
public class The_release
{
    [Fact]
    public void Is_refused_while_a_single_step_is_open()
    {
        using JobBench bench = JobBench.WithJob();
        Work.WorkStep last = bench.Read().State.Steps.All.Last(step => step.IsBeforeRelease);
        bench.TickAll(leftOut: last.Number);
        Measure(bench);
        Answer answer = bench.Job("release");
        Assert.Equal(1, answer.Exit);
        Assert.StartsWith("Not released: 1 thing is missing. The engine may not be run.\n- Step " + JobBench.Number(last.Number) + " is open: ", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_refused_while_a_reading_is_missing_and_says_how_to_take_it()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Assert.Equal(0, bench.Job("measure", "gearcase-vacuum-hold", "0.30bar", "0.295bar", "--minutes", "5").Exit);
        Answer answer = bench.Job("release");
        Assert.Equal(
            "Not released: 1 thing is missing. The engine may not be run.\n- Gearcase-pressure-hold at gear-housing has no reading. Measure it: contam job\n  measure gearcase-pressure-hold READINGS.\n",
            answer.Out);
    }

    [Theory]
    [InlineData("gearcase-pressure-hold", "10psi", "9.9psi", "10")]
    [InlineData("gearcase-vacuum-hold", "0.30bar", "0.295bar", "5")]
    public void Is_refused_where_either_hold_alone_is_measured(string measured, string first, string last, string minutes)
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Assert.Equal(0, bench.Job("measure", measured, first, last, "--minutes", minutes).Exit);
        string other = measured == "gearcase-vacuum-hold" ? "Gearcase-pressure-hold" : "Gearcase-vacuum-hold";
        Assert.Contains($"\n- {other} at gear-housing has no reading.", Unfolded(bench), StringComparison.Ordinal);
        Assert.Equal(1, bench.Job("release").Exit);
    }

    [Fact]
    public void Is_refused_while_a_reading_is_rejected_even_one_that_nobody_asked_for()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Measure(bench);
        Assert.Equal(1, bench.Job("measure", "pinion-backlash", "0.9mm").Exit);
        Assert.Contains("The reading of pinion-backlash at pinion is rejected", bench.Job("release").Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Job("measure", "pinion-backlash", "0.2mm").Exit);
        Assert.Equal(0, bench.Job("release").Exit);
    }

    [Fact]
    public void Is_refused_while_a_reading_is_older_than_the_work_at_its_part()
    {
        using JobBench bench = JobBench.WithJob();
        Measure(bench);
        bench.TickAll();
        Assert.Contains("Gearcase-pressure-hold at gear-housing was measured before the part was last worked on (entry 2).", Unfolded(bench), StringComparison.Ordinal);
    }

    [Fact]
    public void Is_refused_while_a_hold_is_older_than_the_last_part_put_back()
    {
        using JobBench bench = JobBench.WithJob();
        int before = bench.Read().State.Steps.All.Last(step => step.Action == StepAction.Refit).Number - 1;
        bench.TickTo(before);
        Measure(bench);
        bench.TickAll();
        Assert.Contains($"Gearcase-pressure-hold at gear-housing was measured before everything was back on (entry {before + 2}).", Unfolded(bench), StringComparison.Ordinal);
    }

    [Fact]
    public void Is_refused_while_a_part_is_away()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Measure(bench);
        Assert.Equal(0, bench.Job("sent", "driveshaft").Exit);
        // It was on the engine: it has come off to be sent, and what was put on after it stands in its way.
        JobState state = bench.Read().State;
        Assert.False(state.IsDone(state.Steps.Find(bench.StepAt(StepAction.Refit, "driveshaft", Phase.Refit))!));
        string removal = JobBench.Number(bench.StepAt(StepAction.Remove, "driveshaft", Phase.Strip));
        Assert.Equal((1, $"Step {removal} cannot be done now: driveshaft is at the outside workshop. When it is here again: contam job back driveshaft.\n"), bench.Job("tick", removal, "--anyway", "it is there") is var away ? (away.Exit, away.Out) : default);
        Assert.Contains("- Driveshaft is at the outside workshop. When it is here again: contam job back driveshaft.", Unfolded(bench), StringComparison.Ordinal);
        Assert.Equal(0, bench.Job("back", "driveshaft").Exit);
        bench.TickAll();
        Measure(bench);
        Assert.Equal(0, bench.Job("release").Exit);
    }

    [Fact]
    public void Says_who_did_what_and_what_is_due_and_lets_the_engine_run()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Measure(bench);
        WorkStep firstRun = bench.Read().State.Steps.All.First(step => !step.IsBeforeRelease);
        Answer early = bench.Job("tick", JobBench.Number(firstRun.Number), "--anyway", "in a hurry");
        Assert.Equal((1, $"Step {firstRun.Number} runs the engine, and the job is not released. contam job release says what is missing.\n"), (early.Exit, early.Out));
        Answer sheet = bench.Job("release", "--by", "Bo");
        Assert.Equal((0, ""), (sheet.Exit, sheet.Error));
        Assert.StartsWith($"# Release of job {bench.Read().Id}\n\nQuay 4, port gearcase. ", sheet.Out, StringComparison.Ordinal);
        Assert.Contains("Released by Bo", sheet.Out, StringComparison.Ordinal);
        Assert.Contains($"\n- At the first run, step {firstRun.Number}: ", sheet.Out, StringComparison.Ordinal);
        Assert.Contains("\n- After 5 running hours, step ", sheet.Out, StringComparison.Ordinal);
        Assert.Equal(sheet.Out, bench.Job("release", "--job", bench.Read().Id).Out);
        Assert.Equal(0, bench.Job("tick", JobBench.Number(firstRun.Number), "--job", bench.Read().Id).Exit);
        Assert.Equal("released", bench.Read().Summary.State);
    }

    [Fact]
    public void Shows_in_red_what_was_done_out_of_turn()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("tick", "3", "--anyway", "it came *early*").Exit);
        bench.TickAll();
        Measure(bench);
        Assert.Equal(0, bench.Job("release").Exit);
        string line = "- **OUT OF TURN**: step 3, by Ada, before step ";
        Assert.Contains("\n" + line, bench.Job("release", "--job", bench.Read().Id).Out, StringComparison.Ordinal);
        Assert.Contains("\n## Passed over, and done afterwards\n\n- **PASSED OVER**: Order what the list names, pinion first: 6 d to come. Done by Ada, 2026-05-04 ", bench.Job("release", "--job", bench.Read().Id).Out, StringComparison.Ordinal);
        Assert.Contains("\n\u001b[31m" + line, bench.JobAtTerminal("", "release", "--job", bench.Read().Id).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_withdrawn_by_a_find()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Measure(bench);
        Assert.Equal(0, bench.Job("release").Exit);
        Assert.Equal(0, bench.Job("found", "lower-plug=metal", "--later", "--job", bench.Read().Id).Exit);
        Assert.Equal("open", bench.Read().Summary.State);
        Assert.Equal(1, bench.Job("release").Exit);
    }

    [Theory]
    [InlineData("sent driveshaft", "driveshaft is at the outside workshop")]
    [InlineData("untick 12 --because forgotten", "step 12 is open again, because forgotten")]
    [InlineData("found lower-plug=metal --later", "metal was found at lower-plug")]
    [InlineData("clean water-pump=water --later", "water was looked for and not found at water-pump")]
    [InlineData("measure pinion-backlash 0.9mm", "the reading of pinion-backlash at pinion is rejected")]
    public void Is_taken_back_for_everybody_to_see_by_whatever_shuts_the_gate(string command, string because)
    {
        using JobBench bench = Released(out int firstRun);
        string id = bench.Read().Id;
        bench.Job([.. command.Split(' '), "--job", id, "--by", "Bo"]);
        Assert.Equal("open", bench.Read().Summary.State);
        var back = Assert.IsType<Entries.Withdrawn>(bench.Read().Bodies[^1]);
        Assert.Equal("Bo", back.By);
        Assert.Contains(back.Because, one => one.Contains(because, StringComparison.Ordinal));
        Assert.Contains("The release was taken back (Bo, 2026-05-04 ", bench.Job("show", "--job", id).Out, StringComparison.Ordinal);
        Assert.Equal(1, bench.Job("tick", JobBench.Number(firstRun), "--job", id, "--anyway", "the owner waits").Exit);
        Assert.Equal((1, 0), (bench.Job("release", "--job", id).Exit, bench.Job("check").Exit));
    }

    [Theory]
    [InlineData("note all is well")]
    [InlineData("arrived pinion")]
    [InlineData("measure pinion-backlash 0.2mm")]
    public void Stays_where_nothing_shuts_the_gate(string command)
    {
        using JobBench bench = Released(out int firstRun);
        Assert.Equal(0, bench.Job([.. command.Split(' ', command.StartsWith("note", StringComparison.Ordinal) ? 2 : 9), "--job", bench.Read().Id]).Exit);
        Assert.True(bench.Read().IsReleased);
        Assert.Equal(0, bench.Job("tick", JobBench.Number(firstRun), "--job", bench.Read().Id).Exit);
    }

    [Fact]
    public void Is_asked_about_again_when_the_engine_is_run()
    {
        using JobBench bench = Released(out int firstRun);
        using JobBook book = JobBook.Open(bench.Shop, ShopUse.Write);
        JobRecord job = book.Read(book.List()[0].Id);
        // A record of an earlier version could come to this: released, and a part is away that nobody asked about.
        book.TryAdd(job, new Decision([new Entries.Moved { At = DateTimeOffset.UnixEpoch, By = "Eve", Part = "gear-housing", Back = false }, new Entries.Released { At = DateTimeOffset.UnixEpoch, By = "Eve", Sheet = "none" }], []));
        Assert.Contains("gear-housing", bench.Read().State.Away);
        Answer run = bench.Job("tick", JobBench.Number(firstRun), "--job", job.Id);
        Assert.Equal((1, $"Step {firstRun} runs the engine, and the job is not released. contam job release says what is missing.\n"), (run.Exit, run.Out));
        Assert.False(bench.Read().IsReleased);
    }

    private static JobBench Released(out int firstRun)
    {
        JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Measure(bench);
        Assert.Equal(0, bench.Job("release").Exit);
        firstRun = bench.Read().State.Steps.All.First(step => !step.IsBeforeRelease).Number;
        return bench;
    }

    /// <summary>Good readings of both holds.</summary>
    private static void Measure(JobBench bench)
    {
        Assert.Equal(0, bench.Job("measure", "gearcase-pressure-hold", "10psi", "9.9psi", "--minutes", "10").Exit);
        Assert.Equal(0, bench.Job("measure", "gearcase-vacuum-hold", "0.30bar", "0.295bar", "--minutes", "5").Exit);
    }

    private static string Unfolded(JobBench bench) => bench.Job("release").Out.Replace("\n  ", " ", StringComparison.Ordinal);
}
