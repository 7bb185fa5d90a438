using Contam.Jobs.Work;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Tests;

/// <summary>What is found on the way changes the work.</summary>
public class A_find
{
    [Fact]
    public void Is_shown_and_not_taken_over_a_pipe()
    {
        using JobBench bench = JobBench.WithJob();
        Answer answer = bench.Job("found", "forward-gear=water");
        Assert.Equal(1, answer.Exit);
        Assert.EndsWith("Step numbers are those of the new plan.\nNothing is changed. With --yes it is taken.\n", answer.Out, StringComparison.Ordinal);
        Assert.Equal(1, bench.Read().Summary.Sequence);
    }

    [Theory]
    [InlineData("n\n", 1, 1)]
    [InlineData("y\n", 0, 3)]
    public void Is_asked_about_at_a_terminal(string typed, int exit, long entries)
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(exit, bench.JobAtTerminal(typed, "found", "forward-gear=water").Exit);
        Assert.Equal(entries, bench.Read().Summary.Sequence);
    }

    [Fact]
    public void Keeps_what_is_done_where_it_cannot_have_been_dirtied()
    {
        using JobBench bench = JobBench.WithJob();
        int last = bench.Read().State.Steps.All.Last(step => step.Phase == Phase.CleanOut).Number;
        bench.TickTo(last);
        string[] cleaned = [.. DoneKeys(bench, StepAction.Clean)];
        Assert.NotEmpty(cleaned);
        // Everything lies on the bench: what is found on the clutch dog cannot have got into the shafts since, nor into the housing, which it had left.
        Assert.Equal(0, bench.Job("found", "clutch-dog=metal:300um", "--yes").Exit);
        JobState state = bench.Read().State;
        Assert.Equal(cleaned.Where(key => !key.Contains("/clutch-dog/", StringComparison.Ordinal)), DoneKeys(bench, StepAction.Clean));
        WorkStep again = state.Steps.All.Single(step => step.Action == StepAction.Clean && step.Parts.Contains("clutch-dog"));
        Assert.Equal("metal was found at clutch-dog after it", state.ReopenedBecause[again.Key]);
    }

    [Fact]
    public void Opens_again_what_is_back_on_the_engine_and_can_be_reached()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickAll();
        Answer answer = bench.Job("found", "gear-housing=metal:300um", "--yes");
        Assert.Equal(0, answer.Exit);
        JobState state = bench.Read().State;
        foreach (StepAction action in new[] { StepAction.Remove, StepAction.Clean, StepAction.Refit })
        {
            WorkStep step = state.Steps.All.Single(one => one.Action == action && one.Parts.Contains("clutch-dog"));
            Assert.False(state.IsDone(step));
            Assert.Contains(state.ReopenedBecause[step.Key], step.Parts.Select(part => $"metal found at gear-housing can have gone on to {part} since"));
        }

        // What was made safe at the beginning stays so.
        Assert.True(state.IsDone(state.Steps.Find(3)!));
        Assert.Equal((1, 0), (bench.Job("release").Exit, bench.Job("check").Exit));
    }

    [Fact]
    public void Of_other_debris_asks_for_the_parts_to_be_cleaned_of_it_too()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(40);
        Assert.Equal(0, bench.Job("found", "forward-gear=water", "--yes").Exit);
        JobState state = bench.Read().State;
        Assert.Equal(["metal", "water"], state.Plan.Debris);
        WorkStep cleaning = state.Steps.All.Single(step => step.Action == StepAction.Clean && step.Parts.Contains("gear-housing"));
        Assert.Equal("clean out/clean/gear-housing/metal+water", cleaning.Key);
        Assert.False(state.IsDone(cleaning));
        Assert.True(state.IsOff("forward-gear"));
    }

    [Fact]
    public void That_clears_a_part_which_is_off_leaves_its_refit_due()
    {
        using JobBench bench = JobBench.WithJob();
        int off = bench.StepAt(StepAction.Remove, "upper-plug", Phase.Strip);
        bench.TickTo(off);
        Answer answer = bench.Job("clean", "gear-housing=metal", "--yes");
        Assert.Equal((0, ""), (answer.Exit, answer.Error));
        JobState state = bench.Read().State;
        Assert.Empty(state.Plan.Steps.Where(step => step.Part == "upper-plug"));
        WorkStep refit = state.Steps.All.Single(step => step.Parts.Contains("upper-plug"));
        Assert.True(refit is { Action: StepAction.Refit, IsCarried: true, IsBeforeRelease: true });
        WorkStep firstProof = state.Steps.All.First(step => step.Phase == Phase.Prove);
        Assert.Contains(refit.Number, TickOrder.OpenBefore(state, firstProof).Select(step => step.Number));
    }

    [Fact]
    public void Behind_a_clean_look_brings_back_what_the_look_had_spared()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("clean", "gear-housing=metal", "--yes").Exit);
        Assert.Empty(bench.Read().State.Plan.Parts.Single(part => part.Id == "gear-housing").Treatment);
        Answer answer = bench.Job("found", "upper-plug=metal", "--yes");
        JobState state = bench.Read().State;
        Assert.NotEmpty(state.Plan.Parts.Single(part => part.Id == "gear-housing").Treatment);
        Assert.Contains(state.Open, step => step.Action == StepAction.Clean && step.Parts.Contains("gear-housing"));
        Assert.StartsWith("The clean look at gear-housing clears nothing, because metal was found at upper-plug", answer.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("The clean look at gear-housing clears nothing", bench.Job("show").Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public void Behind_a_clean_look_opens_again_what_can_have_been_dirtied_since()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("clean", "gear-housing=metal", "--yes").Exit);
        bench.TickAll();
        string[] done = [.. bench.Read().State.Steps.All.Where(step => step.Phase is Phase.CleanOut && bench.Read().State.IsDone(step)).Select(step => step.Key)];
        Assert.NotEmpty(done);
        Assert.Equal(0, bench.Job("found", "upper-plug=metal", "--yes").Exit);
        JobState state = bench.Read().State;
        Assert.Contains(state.Open, step => done.Contains(step.Key) && state.ReopenedBecause[step.Key].StartsWith("the clean look at gear-housing counts for nothing", StringComparison.Ordinal));
        Assert.Equal((1, 0), (bench.Job("release").Exit, bench.Job("check").Exit));
    }

    [Fact]
    public void Of_nothing_is_worthless_after_the_part_was_cleaned()
    {
        using JobBench bench = JobBench.WithJob();
        int worked = bench.StepAt(StepAction.Clean, "gear-housing", Phase.CleanOut);
        bench.TickTo(worked);
        Answer answer = bench.Job("clean", "gear-housing", "--yes");
        Assert.Equal((2, $"contam: gear-housing was worked on in step {worked}; that it is clean now says nothing of what came through it before. Write it down with contam job note.\n"), (answer.Exit, answer.Error));
    }

    [Fact]
    public void Written_down_for_later_is_open_until_it_is_planned_with()
    {
        using JobBench bench = JobBench.WithJob();
        Assert.Equal(0, bench.Job("found", "forward-gear=water", "--later").Exit);
        Assert.Contains("Water was found at forward-gear (entry 2), and no plan has been made with it.", bench.Job("release").Out.Replace("\n  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(0, bench.Job("replan", "--yes").Exit);
        Assert.Empty(bench.Read().State.Unanswered);
    }

    [Fact]
    public void Opens_no_step_that_no_part_names_without_a_reason()
    {
        using JobBench bench = JobBench.WithJob($"plan systems/families/quay-diesel-v8.yaml --failed port-injection-pump --debris metal --looks 0 --format json", "systems/families/quay-diesel-v8.yaml");
        bench.TickTo(bench.Read().State.Steps.All.Last(step => step.Phase == Phase.Confirm).Number);
        JobState before = bench.Read().State;
        WorkStep[] nowhere = [.. before.Steps.All.Where(step => (step.Parts.IsEmpty || step.Key == StepKey.Order || step.Key.EndsWith("look-first", StringComparison.Ordinal)) && before.IsDone(step))];
        Assert.Contains(nowhere, step => step.Text.StartsWith("A clean look here saves work", StringComparison.Ordinal));
        Assert.Contains(nowhere, step => step.Key == StepKey.Order);
        // The hint names other places in the new plan, and the filter that did not hold is looked at again; neither is a reason to make the engine safe twice.
        Assert.Equal(0, bench.Job("found", "starboard-rail=metal", "--yes").Exit);
        JobState after = bench.Read().State;
        Assert.NotEqual(before.Steps.All.Single(step => step.Text.StartsWith("A clean look here saves work", StringComparison.Ordinal)).Text, after.Steps.All.Single(step => step.Text.StartsWith("A clean look here saves work", StringComparison.Ordinal)).Text);
        Assert.All(nowhere.Where(step => step.Key != StepKey.Order), step => Assert.True(after.Steps.Find(step.Key) is null || after.IsDone(after.Steps.Find(step.Key)!), step.Text));
        Assert.All(after.Steps.All.Where(step => step.Parts.IsEmpty && step.Phase is Phase.MakeSafe or Phase.Confirm && !after.IsDone(step)), step => Assert.NotNull(after.ReopenedBecause.GetValueOrDefault(step.Key)));
    }

    [Fact]
    public void That_asks_for_more_opens_ordering_again_and_says_what_for()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(40);
        JobState before = bench.Read().State;
        Assert.Equal(0, bench.Job("found", "water-pump=water", "--yes").Exit);
        JobState after = bench.Read().State;
        Assert.True(after.Plan.Order.Length > before.Plan.Order.Length);
        WorkStep order = after.Steps.Find(StepKey.Order)!;
        Assert.False(after.IsDone(order));
        Assert.StartsWith("more is to be ordered: ", after.ReopenedBecause[StepKey.Order], StringComparison.Ordinal);
        Assert.Equal(0, bench.Job("tick", JobBench.Number(order.Number)).Exit);
        // Once more, with nothing more to order.
        Assert.Equal(0, bench.Job("found", "water-pump=water", "--yes").Exit);
        Assert.True(bench.Read().State.TickOf.ContainsKey(StepKey.Order));
    }

    [Fact]
    public void Goes_into_the_new_plan_with_all_that_was_seen_of_it()
    {
        var look = new LookTaken(2, new Jobs.Entries.SeenAt("pinion", "metal", true) { SizeUm = 300, Form = "flakes", Magnetic = false }, "Ada", IsAnswered: false);
        Families.Finding finding = Rework.FindingOf(look.Seen, BuiltInStandards.HouseOverKinds.CatalogueOf());
        Assert.Equal((300.0, Families.DebrisForm.Flakes, false), (finding.Size!.Value.Micrometres, finding.Form, finding.Magnetic));
    }

    private static IEnumerable<string> DoneKeys(JobBench bench, StepAction action)
    {
        JobState state = bench.Read().State;
        return state.Steps.All.Where(step => step.Action == action && state.IsDone(step)).Select(step => step.Key).Order(StringComparer.Ordinal).ToArray();
    }
}
