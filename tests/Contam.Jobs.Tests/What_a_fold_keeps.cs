using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs.Tests;

/// <summary>What entries do to readings, ticks and the release; each on the smallest plan that has it.</summary>
public class What_a_fold_keeps
{
    private static readonly PlanDocument Plan = new()
    {
        Family = new PlanFamily("small", "Small", new string('0', 64)),
        Standard = new PlanStandard("house", new string('0', 64)),
        Failed = [new PlanFailure("pump", ["metal"], null)],
        Debris = ["metal"],
        Hours = new PlanHours(1, 1, 1, 1, 1),
        Parts = [new PlanPart { Id = "pump", Name = "Pump", Kind = "pump", Exposure = [new PlanExposure("metal", Grade.Exposed, null, "pump", null)], Treatment = [TreatmentKind.Clean, TreatmentKind.Test] }],
        Steps = [Step(1, Phase.Strip, StepAction.Remove), Step(2, Phase.CleanOut, StepAction.Clean, 1), Step(3, Phase.Test, StepAction.Test, 2), Step(4, Phase.Refit, StepAction.Refit, 3), Step(5, Phase.Prove, StepAction.Prove, 4)],
    };

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_reading_is_stale_once_the_part_is_taken_off_or_worked_on(int step)
    {
        Assert.True(Fold([Read(), Ticked(step)]).Readings.Single().IsStale);
        Assert.False(Fold([Ticked(step), Read()]).Readings.Single().IsStale);
    }

    [Fact]
    public void A_reading_stays_when_the_part_is_put_back() => Assert.False(Fold([Read(), Ticked(4)]).Readings.Single().IsStale);

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    [InlineData(4, false)]
    public void A_reading_is_stale_once_work_at_the_part_is_unticked(int step, bool isStale) =>
        Assert.Equal(isStale, Fold([Ticked(step), Read(), Unticked(step)]).Readings.Single().IsStale);

    [Fact]
    public void A_reading_is_stale_once_the_part_was_away()
    {
        Assert.True(Fold([Read(), Moved(back: false)]).Readings.Single().IsStale);
        Assert.True(Fold([Moved(back: false), Read(), Moved(back: true)]).Readings.Single().IsStale);
    }

    [Theory]
    [InlineData("good", true)]
    [InlineData("marginal", true)]
    [InlineData("reject", false)]
    [InlineData("undecided", false)]
    public void A_release_stays_only_behind_a_reading_that_is_good_enough(string verdict, bool stays) => Assert.Equal(stays, Fold([Released, Read(verdict)]).IsReleased);

    [Fact]
    public void A_release_ends_with_a_find_a_part_sent_away_and_its_own_withdrawal()
    {
        Assert.False(Fold([Released, new Looked { At = Noon, By = "Ada", Seen = new SeenAt("pump", "metal", Found: true) }]).IsReleased);
        Assert.False(Fold([Released, Moved(back: false)]).IsReleased);
        Assert.False(Fold([Released, new Withdrawn { At = Noon, By = "Ada", Because = ["x"] }]).IsReleased);
        Assert.True(Fold([Released, new Noted { At = Noon, By = "Ada", Text = "x" }]).IsReleased);
    }

    [Fact]
    public void A_test_that_opens_again_opens_what_was_fitted_and_proved_on_the_strength_of_it()
    {
        JobState state = Fold([Ticked(1), Ticked(2), Ticked(3), Ticked(4), Ticked(5)]);
        var opened = new List<OpenAgain> { new(state.Steps.Find(3)!.Key, "not tight") };
        Reopening.Follow(state, state, Support.Notation.CaseReader.System("pump > tank"), opened);
        Assert.Equal([3, 4, 1, 5], opened.Select(one => state.Steps.Find(one.Key)!.Number));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Work_at_a_part_is_other_work_once_other_debris_is_in_it(int step)
    {
        PlanDocument both = Plan with { Debris = ["metal", "water"], Parts = [Plan.Parts[0] with { Exposure = Plan.Parts[0].Exposure.Add(new PlanExposure("water", Grade.Exposed, null, "pump", null)) }] };
        Assert.NotEqual(StepKey.Of(Plan)[step - 1], StepKey.Of(both)[step - 1]);
        Assert.Equal(StepKey.Of(Plan)[0], StepKey.Of(both)[0]);
    }

    private static DateTimeOffset Noon { get; } = new(2026, 5, 4, 12, 0, 0, TimeSpan.Zero);

    private static Released Released => new() { At = Noon, By = "Ada", Sheet = "" };

    private static PlanStep Step(int number, Phase phase, StepAction action, params ImmutableArray<int> after) => new() { Number = number, Phase = phase, Action = action, Part = "pump", Text = $"Step {number}.", After = after, Technician = 1 };

    private static Measured Read(string verdict = "good") => new() { At = Noon, By = "Ada", Limit = "hold", Part = "pump", Readings = ["1bar"], Verdict = verdict, Because = "so" };

    private static Ticked Ticked(int number) => new() { At = Noon, By = "Ada", Step = WorkSteps.Of(Plan, []).Find(number)!.Stamp };

    private static Unticked Unticked(int number) => new() { At = Noon, By = "Ada", Step = WorkSteps.Of(Plan, []).Find(number)!.Stamp, Because = "forgotten" };

    private static Moved Moved(bool back) => new() { At = Noon, By = "Ada", Part = "pump", Back = back };

    private static JobState Fold(EntryBody[] bodies) =>
        JobFold.Fold([new Opened { At = Noon, By = "Ada", Customer = "x", Engine = "x", Technician = "Ada", Plan = "", Family = [], Standard = [] }, .. bodies], _ => Plan);
}
