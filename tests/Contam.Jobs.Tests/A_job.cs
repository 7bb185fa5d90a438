using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Tests.Stores;
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
        Answer answer = bench.Job("open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), "--customer", "Quay 4", "--engine", "port", "--technician", "Ada");
        Assert.Equal((1, ""), (answer.Exit, answer.Out));
        Assert.StartsWith("contam: no job is opened with this plan, for planning again gives another: line ", answer.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Shop));
    }

    [Fact]
    public void Is_not_opened_with_a_plan_that_leaves_cleaning_for_after_the_first_run()
    {
        using JobBench bench = JobBench.WithJob();
        using JobBook book = JobBook.Open(bench.Shop, ShopUse.Write);
        JobRecord job = book.Read(book.List()[0].Id);
        int cleaning = job.Plan.Steps.First(step => step.Action == StepAction.Clean).Number;
        Plans.PlanDocument late = job.Plan with { Steps = [.. job.Plan.Steps.Select(step => step.Number == cleaning ? step with { DueAfterRunningHours = 5 } : step)] };
        Assert.Null(Documents.Planned.WhyNot(job.Plan, book.SystemOf(job)));
        Assert.Equal($"step {cleaning} is said to be due after the first run, and is no step that proves the engine", Documents.Planned.WhyNot(late, book.SystemOf(job)));
    }

    [Fact]
    public void Refuses_a_step_out_of_turn_and_names_the_one_that_comes_first()
    {
        using JobBench bench = JobBench.WithJob();
        Answer answer = bench.Job("tick", "12");
        Assert.Equal((1, "Step 12 is not its turn. First comes step 1: Order what the list names, pinion first: 6 d to come.\n", ""), (answer.Exit, answer.Out, answer.Error));
        Assert.Empty(bench.Read().State.TickOf);
    }

    [Fact]
    public void Takes_a_step_out_of_turn_with_a_reason_and_keeps_it()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("tick", "3", "--anyway", "battery is off already", "--by", "Bo").Exit);
        var tick = Assert.IsType<Ticked>(bench.Read().Bodies[^1]);
        Assert.Equal(("Bo", "battery is off already", "1,2"), (tick.By, tick.Anyway, string.Join(',', tick.Skipped)));
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
        Assert.Equal(0, bench.Job("open", family, "--plan", bench.At("plan.json"), "--customer", "Quay 4", "--engine", "port", "--technician", "Ada").Exit);
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
        Answer answer = bench.Job("untick", JobBench.Number(cleaned), "--because", "an oil groove was forgotten");
        Assert.Equal(0, answer.Exit);
        Assert.Contains($"So is step {fitted}: it was done after step {cleaned}, which is open.\n", answer.Out, StringComparison.Ordinal);
        Assert.Contains($"So is step {taken}: it is back on, and must come off again for step {cleaned}.\n", answer.Out, StringComparison.Ordinal);
        Work.JobState state = bench.Read().State;
        Assert.All(state.Steps.All.Where(step => step.Phase == Phase.MakeSafe), step => Assert.True(state.IsDone(step)));
        Assert.Equal((1, 0), (bench.Job("release").Exit, bench.Job("check").Exit));
    }

    [Fact]
    public void Leaves_other_work_alone_where_a_step_is_unticked_while_its_part_is_still_off()
    {
        using JobBench bench = JobBench.WithJob();
        foreach (Work.WorkStep step in bench.Read().State.Steps.All.Where(step => step.Phase is not (Phase.Refit or Phase.Prove)))
            Assert.Equal(0, bench.Job("tick", JobBench.Number(step.Number)).Exit);
        int cleaned = bench.StepAt(StepAction.Clean, "driveshaft", Phase.CleanOut);
        Assert.Equal(0, bench.Job("untick", JobBench.Number(cleaned), "--because", "an oil groove was forgotten").Exit);
        Work.JobState state = bench.Read().State;
        Assert.Equal([cleaned], state.Open.Where(step => step.Phase is not (Phase.Refit or Phase.Prove)).Select(step => step.Number));
    }

    [Fact]
    public void Shows_what_can_be_done_now_and_what_waits()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(10);
        // What is on its way needs no hands, so it is on the list as well.
        Assert.Equal([11, 14, 16, 20], Work.TickOrder.Now(bench.Read().State).Where(step => step.Phase != Phase.Refit).Select(step => step.Number));
        string next = bench.Job("next").Out;
        Assert.Contains("\n12    waits for 11\n", next, StringComparison.Ordinal);
    }

    [Fact]
    public void Asks_which_is_meant_where_several_are_open()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), "--customer", "Quay 5", "--engine", "port", "--technician", "Ada").Exit);
        Answer answer = bench.Job("tick", "1");
        Assert.Equal(2, answer.Exit);
        Assert.StartsWith("contam: several jobs are open: ", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_family_with_modules_goes_on_to_its_release_when_every_file_is_gone()
    {
        using var bench = new JobBench();
        foreach (string folder in new[] { "families", "modules", "schema" })
        {
            Directory.CreateDirectory(bench.At("systems/" + folder));
            foreach (string file in Directory.EnumerateFiles(RepositoryFiles.At("systems/" + folder)))
                File.Copy(file, bench.At($"systems/{folder}/{Path.GetFileName(file)}"));
        }

        string family = bench.At("systems/families/quay-diesel-v8.yaml");
        File.WriteAllText(bench.At("plan.json"), bench.Call("plan", family, "--failed", "port-injection-pump", "--debris", "metal", "--looks", "0", "--format", "json").Out);
        Assert.Equal((0, ""), bench.Job("open", family, "--plan", bench.At("plan.json"), "--customer", "Quay 4", "--engine", "main", "--technician", "Ada") is var opened ? (opened.Exit, opened.Error) : default);
        Directory.Delete(bench.At("systems/modules"), recursive: true);
        File.WriteAllText(family, "family: another");
        bench.TickTo(60);
        // It was only guarded by the filter, which has not held it: more has to be done on that bank, and more ordered.
        Answer found = bench.Job("found", "starboard-rail=metal:300um,flakes,not-magnetic", "--yes");
        Assert.Equal((0, ""), (found.Exit, found.Error));
        Work.JobState state = bench.Read().State;
        Assert.Contains(state.Steps.All, step => step.Action == StepAction.Clean && step.Parts.Contains("starboard-rail") && !state.IsDone(step));
        Assert.Equal("starboard-rail: metal found (300 µm, flakes, not magnetic) (Ada).", Reports.JobText.Sentence(state.Looks[^1]));
        bench.TickAll();
        foreach (string hold in new[] { "oil-cooler-hold 4bar 3.99bar", "heat-exchanger-hold 1bar 0.99bar", "port-charge-cooler-hold 1.5bar 1.49bar", "starboard-charge-cooler-hold 1.5bar 1.49bar" })
            Assert.Equal((0, ""), bench.Job(["measure", .. hold.Split(' '), "--minutes", "10"]) is var measured ? (measured.Exit, measured.Error) : default);
        foreach (string bank in new[] { "port", "starboard" })
            Assert.Equal((0, ""), bench.Job("measure", $"{bank}-injector-balance", "10mL", "10.1mL", "10mL", "10.2mL") is var measured ? (measured.Exit, measured.Error) : default);
        Answer released = bench.Job("release", "--by", "Bo");
        Assert.Equal((0, ""), (released.Exit, released.Error));
        Assert.Contains("starboard-rail: metal found (300 µm, flakes, not magnetic) (Ada).", released.Out, StringComparison.Ordinal);
        Assert.Contains("\n- After 5 running hours, ", released.Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Job("check").Exit);
    }

    [Fact]
    public void Is_read_again_with_the_limits_that_it_was_opened_with()
    {
        using var bench = new JobBench();
        string family = bench.At("engine.yaml");
        // One bearing more than the usual limit of a repeat allows.
        File.WriteAllText(family, "format: 1\nfamily: long-engine\ntitle: Long\nparts:\n  pump: {kind: pump, sheds: {metal: common}}\n  bearing-#: {count: 10001, kind: bearing}\n  sump: {kind: sump}\n  screen: {kind: screen}\ncircuits:\n  oil:\n    runs:\n      - [pump, screen, sump]\nlimits:\n  screen-drop: {part: screen, measures: pressure-drop, good: \"<= 0.1 bar\", reject: \"> 0.2 bar\", at: 1 bar, over: 10 min, source: demonstration value}\n");
        string[] limit = ["--limit", "count=10001"];
        Answer plan = bench.Call(["plan", family, "--failed", "pump", "--debris", "metal", "--format", "json", .. limit]);
        Assert.Equal(0, plan.Exit);
        File.WriteAllText(bench.At("plan.json"), plan.Out);
        Answer opened = bench.Job(["open", family, "--plan", bench.At("plan.json"), "--customer", "Quay 4", "--engine", "main", "--technician", "Ada", .. limit]);
        Assert.Equal(0, opened.Exit);
        Assert.Equal((0, ""), bench.Job("measure", "screen-drop", "1bar", "0.99bar", "--minutes", "10") is var measured ? (measured.Exit, measured.Error) : default);
        File.WriteAllText(bench.At("job.json"), bench.Job("export").Out);
        string[] import = ["job", "import", bench.At("job.json"), "--shop", bench.At("other.db")];
        Assert.Equal(
            (2, "contam: the job was opened with raised limits, and an export that somebody sent may ask for more memory than you want to give. Nothing was written. If you trust it, import it with the same --limit.\n"),
            bench.Call(import) is var refused ? (refused.Exit, refused.Error) : default);
        Assert.Equal((0, ""), bench.Call([.. import, .. limit]) is var taken ? (taken.Exit, taken.Error) : default);
    }

    [Theory]
    [InlineData("--open", "Quay 5")]
    [InlineData("--customer QUAY 5", "Quay 5")]
    [InlineData("--engine starboard", "Quay 5")]
    [InlineData("--customer quay", "Quay 5 Quay 4")]
    [InlineData("--engine port --open", "")]
    public void Is_found_in_the_list_by_what_is_known_of_it(string narrowed, string customers)
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Assert.Equal(0, bench.Job("measure", "gearcase-pressure-hold", "10psi", "9.9psi", "--minutes", "10").Exit);
        Assert.Equal(0, bench.Job("measure", "gearcase-vacuum-hold", "0.30bar", "0.295bar", "--minutes", "5").Exit);
        Assert.Equal(0, bench.Job("release").Exit);
        Assert.Equal(0, bench.Job("open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), "--customer", "Quay 5", "--engine", "starboard", "--technician", "Ada").Exit);
        string[] words = narrowed.Split(' ') is ["--customer", "QUAY", "5"] ? ["--customer", "QUAY 5"] : narrowed.Split(' ');
        string list = bench.Job(["list", .. words]).Out;
        string[] listed = [.. list.Split('\n').Where(line => line.Contains("Quay", StringComparison.Ordinal)).Select(line => line[line.IndexOf("Quay", StringComparison.Ordinal)..].Split(',')[0])];
        Assert.Equal(customers, string.Join(' ', listed));
        if (customers.Length == 0)
            Assert.Equal($"No job in {bench.Shop} is like that.\n", list.Replace("\n  ", " ", StringComparison.Ordinal));
    }

    [Fact]
    public void Takes_several_ticks_in_one_call_up_to_the_first_that_is_refused()
    {
        using JobBench bench = JobBench.WithJob();
        Answer answer = bench.Job("tick", "1", "2", "12", "3");
        Assert.Equal(1, answer.Exit);
        Assert.Matches(@"^Step 1 is done \(entry 2\)\. 1 of \d+\.\nStep 2 is done \(entry 3\)\. 2 of \d+\.\nStep 12 is not its turn\. First comes step 3: ", answer.Out);
        Assert.Equal((0, 5), (bench.JobAtTerminal("3\n\n4\n", "tick", "-").Exit, bench.Read().Entries.Length));
        Assert.Equal((2, "contam: `x` is no number of a step. contam job show lists them.\n"), bench.Job("tick", "x") is var wrong ? (wrong.Exit, wrong.Error) : default);
        Assert.Equal((2, "contam: --minutes, --note and --anyway are said of one step. Tick that one alone.\n"), bench.Job("tick", "5", "6", "--minutes", "3") is var several ? (several.Exit, several.Error) : default);
    }

    [Fact]
    public void Is_decided_on_all_that_it_is_added_to()
    {
        using JobBench bench = JobBench.WithJob();
        using IJobStore store = Shops.Open(bench.Shop, mayCreate: false);
        var book = new JobBook(new WatchedStore(store) { BeforeEntries = () => bench.Job("tick", "1", "--by", "Bo") });
        string id = store.List()[0].Id;
        // Somebody ticks the step between the look at the row and the reading of the entries; then it must not be ticked twice.
        JobRecord job = book.Read(id);
        Assert.Equal((2, 2L, true), (job.Entries.Length, job.Summary.Sequence, job.State.IsDone(job.State.Steps.Find(1)!)));
        Assert.Equal(store.Find(id), job.Summary);
    }
}
