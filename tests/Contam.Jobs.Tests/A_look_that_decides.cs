using System.Text.Json;
using Contam.Jobs.Work;

namespace Contam.Jobs.Tests;

/// <summary>A look that decides how far to go, in a job: pinion shed metal, look A is at the gear housing, look B, at the bearing carrier, hangs on it.</summary>
public class A_look_that_decides
{
    private const string Plan = $"plan {JobBench.Gearcase} --failed pinion --debris metal --format json";

    private static JobBench Opened() => JobBench.WithJob(Plan);

    /// <summary>A job in which everything up to the step of look A is done.</summary>
    private static JobBench BeforeA()
    {
        JobBench bench = Opened();
        bench.TickTo(bench.Read().Plan.Looks[0].Step - 1);
        return bench;
    }

    [Fact]
    public void Keeps_the_gate_shut_as_long_as_it_has_no_outcome()
    {
        using JobBench bench = Opened();
        string missing = bench.Job("release").Out.ReplaceLineEndings(" ");
        Assert.Contains("Look A at gear-housing has no outcome. Look, then:", missing, StringComparison.Ordinal);
        Assert.Contains("Look B at bearing-carrier hangs on look A, which has no outcome yet.", missing, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_not_ticked_without_an_outcome()
    {
        using JobBench bench = BeforeA();
        int step = bench.Read().Plan.Looks[0].Step;
        Answer answer = bench.Job("tick", JobBench.Number(step));
        Assert.Equal((1, $"Step {step} is look A, which decides what else is done. Say what was seen: contam job look A --clean, or --found DEBRIS.\n"), (answer.Exit, answer.Out));
    }

    [Fact]
    public void That_is_clean_strikes_what_hangs_on_it_and_leads_to_the_release()
    {
        using JobBench bench = BeforeA();
        Answer answer = bench.Job("look", "A", "--clean", "--by", "Bo");
        Assert.Equal((0, ""), (answer.Exit, answer.Error));
        JobState state = bench.Read().State;
        Assert.Equal([LookStanding.Clean, LookStanding.NotDue], state.Plan.Looks.Select(look => state.StandingOf(look.Id)));
        Assert.All(state.Steps.All.Where(step => !step.OnlyIf.IsEmpty), step => Assert.True(state.IsStruck(step)));
        Assert.True(state.IsDone(state.Steps.Find(state.Plan.Looks[0].Step)!));
        bench.TickAll();
        foreach (string reading in (string[])["gearcase-pressure-hold 10psi 9.9psi --minutes 10", "gearcase-vacuum-hold 0.30bar 0.295bar --minutes 5", "pinion-backlash 0.2mm"])
            bench.Job(["measure", .. reading.Split(' ')]);
        Answer released = bench.Job("release");
        Assert.True(released.Exit == 0, released.Out);
        Assert.Contains("- Look A at gear-housing: clean of metal (Bo, 2026-05-04", released.Out, StringComparison.Ordinal);
        // The housing itself is flushed with its oil riser whatever is seen.
        Assert.Contains("Left alone on the strength of it: lower-plug, upper-plug,", released.Out, StringComparison.Ordinal);
        Assert.Contains("- Look B at bearing-carrier: not due, as look A was clean.", released.Out, StringComparison.Ordinal);
        string id = released.Out.Split("# Release of job ")[1].Split('\n')[0];
        Assert.Equal((1, 0), (bench.Job("look", "A", "--found", "metal", "--job", id).Exit, bench.Job("check").Exit));
        // What is carried elsewhere is the same job.
        File.WriteAllText(bench.At("export.json"), bench.Job("export", "--job", id).Out);
        using var elsewhere = new JobBench();
        Answer taken = elsewhere.Job("import", bench.At("export.json"), "--confirm-findings", "gear-housing=metal:Cy");
        Assert.True(taken.Exit == 0, taken.Error);
    }

    [Fact]
    public void That_found_something_makes_the_next_one_due()
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--found", "metal:300um").Exit);
        JobState state = bench.Read().State;
        Assert.Equal([LookStanding.Found, LookStanding.Due], state.Plan.Looks.Select(look => state.StandingOf(look.Id)));
        Assert.Empty(state.Unanswered);
        Assert.Contains(state.Steps.All, step => step.OnlyIf.Contains("A") && state.ConditionOf(step) == StepCondition.Met);
        Assert.Contains("Look B decides: bearing-carrier", bench.Job("next").Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void Counts_as_found_where_it_is_in_doubt()
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--in-doubt").Exit);
        JobState state = bench.Read().State;
        Assert.Equal([LookStanding.InDoubt, LookStanding.Due], state.Plan.Looks.Select(look => state.StandingOf(look.Id)));
        Assert.Empty(state.Looks);
    }

    [Fact]
    public void Brings_struck_steps_back_when_it_is_taken_back()
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--clean").Exit);
        bench.TickAll();
        Answer answer = bench.Job("untick", JobBench.Number(bench.Read().Plan.Looks[0].Step), "--because", "the wrong engine");
        Assert.Equal((0, ""), (answer.Exit, answer.Error));
        JobState state = bench.Read().State;
        Assert.Equal(LookStanding.Due, state.StandingOf("A"));
        Assert.DoesNotContain(state.Steps.All, step => state.IsStruck(step));
        // What was put back and proved without them was so too early.
        Assert.All(state.Steps.All.Where(step => step is { Phase: Phase.Prove, IsBeforeRelease: true, Parts.IsEmpty: false }), step => Assert.False(state.IsDone(step)));
        Assert.Empty(state.Looks);
        Assert.Equal(0, bench.Job("check").Exit);
    }

    [Fact]
    public void That_a_find_elsewhere_disproves_counts_as_found_in_the_new_plan()
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--clean").Exit);
        Answer answer = bench.Job("found", "upper-plug=metal", "--yes");
        Assert.Equal((0, ""), (answer.Exit, answer.Error));
        JobState state = bench.Read().State;
        Assert.True(state.Plan.Findings.Single(finding => !finding.Found).Void);
        Assert.Contains(state.Open, step => step.Action == StepAction.Clean && step.Parts.Contains("gear-housing"));
        // The looks that are settled no longer stand in the plan, and what was done for them stays done.
        Assert.DoesNotContain(state.Plan.Looks, look => look.Places.Contains("gear-housing"));
        Assert.True(state.Steps.All.Count(state.IsDone) > 15);
        Assert.Contains("A plan was made with it since.", string.Join(' ', Reports.LookWords.OnSheet(state)), StringComparison.Ordinal);
    }

    [Fact]
    public void That_found_other_debris_asks_for_a_new_plan()
    {
        using JobBench bench = BeforeA();
        Answer answer = bench.Job("look", "A", "--found", "water");
        Assert.Equal(1, answer.Exit);
        Assert.Contains("Nothing is changed. With --yes it is taken.", answer.Out, StringComparison.Ordinal);
        Assert.Equal("water", Assert.Single(bench.Read().State.Unanswered).Seen.Debris);
        Assert.Equal(0, bench.Job("replan", "--yes").Exit);
        Assert.Equal(["metal", "water"], bench.Read().Plan.Debris);
    }

    [Theory]
    [InlineData("look A --clean", 1, "Look A has an outcome: clean, by Ada. Where that was wrong, say the new one with --again.")]
    [InlineData("look B --clean", 1, "Look B is not due: it is made only where look A shows debris, and that was clean. What was seen there all the same is told by contam job found or contam job clean.")]
    [InlineData("look Q --clean", 2, "contam: there is no look in this job's plan called Q. It has A, B; contam job show lists them.")]
    [InlineData("look A", 2, "contam: one outcome was expected: --clean, --found DEBRIS or --in-doubt. A look with a find is not clean, whatever its other places show.")]
    [InlineData("look B --clean --found metal", 2, "contam: one outcome was expected: --clean, --found DEBRIS or --in-doubt. A look with a find is not clean, whatever its other places show.")]
    [InlineData("look A --found metal --at pinion --again", 2, "contam: look A is not made at pinion, but at gear-housing. Name one of these with --at, or use contam job found.")]
    public void Is_refused_with_what_to_do_and_changes_nothing(string words, int exit, string message)
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--clean").Exit);
        long before = bench.Read().Summary.Sequence;
        Answer answer = bench.Job(words.Split(' '));
        Assert.Equal((exit, message + "\n"), (answer.Exit, answer.Out + answer.Error));
        Assert.Equal(before, bench.Read().Summary.Sequence);
    }

    [Fact]
    public void Is_not_taken_before_its_turn()
    {
        using JobBench bench = Opened();
        Answer answer = bench.Job("look", "A", "--clean");
        Assert.Equal(1, answer.Exit);
        Assert.Contains("is not its turn. First comes step 1", answer.Out, StringComparison.Ordinal);
        Assert.Equal(1, bench.Read().Summary.Sequence);
    }

    [Fact]
    public void Does_not_take_a_find_back()
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--found", "metal").Exit);
        Answer answer = bench.Job("look", "A", "--clean", "--again");
        Assert.Equal((2, "contam: metal was found at gear-housing; a look afterwards does not take that back. Write it down with contam job note.\n"), (answer.Exit, answer.Error));
    }

    [Fact]
    public void Stands_in_the_document_of_the_job()
    {
        using JobBench bench = BeforeA();
        Assert.Equal(0, bench.Job("look", "A", "--clean").Exit);
        using JsonDocument shown = JsonDocument.Parse(bench.Job("show", "--format", "json").Out);
        Assert.Equal(["A clean Ada", "B not-due "], shown.RootElement.GetProperty("looks").EnumerateArray().Select(look => $"{look.GetProperty("id").GetString()} {look.GetProperty("standing").GetString()} {look.GetProperty("by").GetString()}"));
        Assert.Contains(shown.RootElement.GetProperty("steps").EnumerateArray(), step => step.GetProperty("state").GetString() == "struck");
        Assert.Contains("[-]", bench.Job("show").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--looks 0", 0)]
    [InlineData("--looks 1", 1)]
    [InlineData("--look-at bearing-carrier", 1)]
    public void Is_one_of_those_that_the_job_was_opened_with(string words, int looks)
    {
        using var bench = new JobBench();
        Answer opened = bench.Job(["open", Support.RepositoryFiles.At(JobBench.Gearcase), "--failed", "pinion", "--debris", "metal", .. words.Split(' '), "--customer", "Quay 4", "--engine", "port", "--technician", "Ada"]);
        Assert.Equal((0, ""), (opened.Exit, opened.Error));
        Assert.Equal(looks, bench.Read().Plan.Looks.Length);
    }

    [Fact]
    public void Is_taken_from_a_plan_that_names_its_places_and_not_from_one_of_another_format()
    {
        using JobBench bench = JobBench.WithJob(Plan.Replace("--format", "--look-at bearing-carrier --format", StringComparison.Ordinal));
        Assert.Equal(["bearing-carrier"], bench.Read().Plan.Looks.Single().Places);
        using var other = new JobBench();
        other.WritePlan(Plan);
        string text = File.ReadAllText(other.At("plan.json"));
        File.WriteAllText(other.At("plan.json"), text.Replace($"\"{Plans.PlanDocument.FormatName}\"", "\"contam-plan/0\"", StringComparison.Ordinal));
        Answer answer = other.Open();
        Assert.Equal((2, $"contam: FOLDER/plan.json is not a plan: the format is contam-plan/0, which this version does not read, expected {Plans.PlanDocument.FormatName}; make the plan again with this version. Give a file written by contam plan --format json.\n"), (answer.Exit, answer.Error));
        Assert.False(File.Exists(other.Shop));
    }
}
