using System.Collections.Immutable;

namespace Contam.Looks;

/// <summary>One choice of looks with its plan and what that is to be expected to take.</summary>
internal sealed class TriedLooks
{
    private readonly Expecting expecting;
    private readonly ImmutableArray<LookHistory> histories;
    private readonly double[] likely;

    private TriedLooks(ChoiceQuestion asked, DecidedPlan plan, Expecting expecting)
    {
        Plan = plan;
        this.expecting = expecting;
        histories = plan.Histories ?? [];
        likely = [.. histories.Select(expecting.Likelihood)];
        double[] minutes = [.. histories.Select(expecting.Minutes)];
        MinutesAllClean = minutes.FirstOrDefault();
        MinutesMost = minutes.DefaultIfEmpty().Max();
        MinutesExpected = minutes.Zip(likely, (one, share) => one * share).Sum();
        Weight = Math.Round(MinutesExpected + (asked.MinutesADecision * histories.Zip(likely, (history, share) => history.Outcomes.Count(IsMade) * share).Sum()), 3);
    }

    public DecidedPlan Plan { get; }

    /// <summary>How likely each history is.</summary>
    public ImmutableArray<double> Likely => [.. likely];

    public double MinutesAllClean { get; }

    public double MinutesExpected { get; }

    public double MinutesMost { get; }

    /// <summary>What the choice is weighed by: the minutes to be expected, and those of the decisions.</summary>
    public double Weight { get; }

    /// <summary>Whether no look is ever void, so that the quick sums left nothing out.</summary>
    public bool IsAsReckoned => histories.All(history => history.Outcomes.All(outcome => outcome is not (LookOutcome.Void or LookOutcome.Settled)));

    public static TriedLooks Of(ChoiceQuestion asked, FixedLooks looks, BenchWork work)
    {
        DecidedPlan plan = Deciding.Of(looks);
        return new TriedLooks(asked, plan, new Expecting(looks, plan, work, asked.PassesOn));
    }

    /// <summary>The looks in figures, in their order.</summary>
    public ImmutableArray<LookFigures> Figures() =>
        [.. Enumerable.Range(0, Plan.Looks.Length).Select(look => new LookFigures(OddsOf(look), expecting.MinutesOf(look), expecting.MinutesHangingOn(look)))];

    private double OddsOf(int look)
    {
        double made = 0, found = 0;
        for (int i = 0; i < histories.Length; i++)
        {
            made += IsMade(histories[i].Outcomes[look]) ? likely[i] : 0;
            found += histories[i].Outcomes[look] is LookOutcome.Found ? likely[i] : 0;
        }

        return made > 0 ? found / made : 0;
    }

    private static bool IsMade(LookOutcome outcome) => outcome is LookOutcome.Clean or LookOutcome.Void or LookOutcome.Found;
}
