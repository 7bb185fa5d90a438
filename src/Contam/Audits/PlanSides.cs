using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>Lays two plans side by side, part by part.</summary>
internal static class PlanSides
{
    /// <param name="one">The first plan, with looks and without.</param>
    /// <param name="firstFamily">Its family.</param>
    /// <param name="another">The second plan.</param>
    /// <param name="secondFamily">Its family.</param>
    public static PlanComparison Lay(BothPlans one, Family firstFamily, BothPlans another, Family secondFamily)
    {
        (PlanDocument first, PlanDocument second) = (one.Flat, another.Flat);
        var inFirst = first.Parts.ToDictionary(part => part.Id, StringComparer.Ordinal);
        var inSecond = second.Parts.ToDictionary(part => part.Id, StringComparer.Ordinal);
        var same = ImmutableArray.CreateBuilder<string>();
        var different = ImmutableArray.CreateBuilder<PartDifference>();
        foreach (PlanPart listed in first.Parts)
        {
            if (!inSecond.TryGetValue(listed.Id, out PlanPart? other))
                different.Add(new PartDifference(listed.Id, Difference.OnlyFirst, listed, null, WayDifference.Because(listed, firstFamily, second, secondFamily)));
            else if (!listed.Treatment.SequenceEqual(other.Treatment))
                different.Add(new PartDifference(listed.Id, Difference.Treatment, listed, other, WhyTreated(listed, other)));
            else if (GradesOf(listed) != GradesOf(other))
                different.Add(new PartDifference(listed.Id, Difference.Grade, listed, other, $"{GradesOf(listed)} in the first, {GradesOf(other)} in the second"));
            else
                same.Add(listed.Id);
        }

        foreach (PlanPart other in second.Parts.Where(part => !inFirst.ContainsKey(part.Id)))
            different.Add(new PartDifference(other.Id, Difference.OnlySecond, null, other, WayDifference.Because(other, secondFamily, first, firstFamily)));

        Dictionary<string, (double Minutes, string Text)> steps = StepsOf(first);
        (double Minutes, string Text, double OtherMinutes, string OtherText)[] shared =
        [
            .. StepsOf(second).Where(step => steps.ContainsKey(step.Key)).Select(step => (steps[step.Key].Minutes, steps[step.Key].Text, step.Value.Minutes, step.Value.Text)),
        ];
        return new PlanComparison(
            first,
            second,
            same.ToImmutable(),
            different.ToImmutable(),
            HasOtherTimes: shared.Any(step => step.Minutes != step.OtherMinutes),
            HasOtherWords: shared.Any(step => step.Text != step.OtherText) || !first.Cautions.Select(caution => caution.Text).SequenceEqual(second.Cautions.Select(caution => caution.Text), StringComparer.Ordinal))
        {
            FirstHours = LookHours.Of(one.Branching),
            SecondHours = LookHours.Of(another.Branching),
        };
    }

    /// <summary>How far each debris comes, in words: <c>exposed to metal, guarded from rubber</c>.</summary>
    private static string GradesOf(PlanPart part) => string.Join(", ", part.Exposure.Select(exposure => exposure.Grade switch
    {
        Grade.Exposed => $"exposed to {exposure.Debris}",
        Grade.Guarded => $"guarded from {exposure.Debris}",
        _ => $"cleared of {exposure.Debris}",
    }));

    private static string WhyTreated(PlanPart first, PlanPart second)
    {
        string grades = GradesOf(first) == GradesOf(second) ? "" : $"{GradesOf(first)} in the first, {GradesOf(second)} in the second; ";
        if (RuleOf(first) != RuleOf(second))
            return $"{grades}the first by {RuleOf(first)}, the second by {RuleOf(second)}";
        return grades.Length > 0
            ? $"{grades}both by {RuleOf(first)}"
            : $"both by {RuleOf(first)}; {(first.Treatment.Contains(TreatmentKind.Flush) != second.Treatment.Contains(TreatmentKind.Flush) ? "one is flushed in a loop that stays on the engine" : "the part is marked otherwise in the family")}";
    }

    internal static string RuleOf(PlanPart part) => part.Rule switch
    {
        null => "no rule, as it is cleared",
        { Line: 0 } => "the fallback",
        { } rule => $"{rule.File}:{Wording.Number(rule.Line)}",
    };

    /// <summary>Minutes and text of every step by phase, action and parts; of several alike the last.</summary>
    private static Dictionary<string, (double Minutes, string Text)> StepsOf(PlanDocument plan)
    {
        var steps = new Dictionary<string, (double, string)>(StringComparer.Ordinal);
        var count = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (PlanStep step in plan.Steps)
        {
            string what = $"{step.Phase} {step.Action} {step.Part} {string.Join(' ', step.Parts)} {step.DueAfterRunningHours is null}";
            int number = count[what] = count.GetValueOrDefault(what) + 1;
            steps[$"{what} {Wording.Number(number)}"] = (step.Minutes, step.Text);
        }

        return steps;
    }
}
