using System.Globalization;
using Contam.Audits;
using Contam.Plans;

namespace Contam.Reports.Audits;

/// <summary>The words that the text and the Markdown of a comparison share.</summary>
internal static class ComparisonWords
{
    public static string Title(ComparisonAnswer comparison) => $"{comparison.First} against {comparison.Second}";

    public static string Verdict(ComparisonAnswer comparison) => comparison.Changed == 0
        ? $"{AuditSheet.Count(comparison.Failures.Length, "failure")} compared; no plan differs{Worded(comparison)}."
        : $"{AuditSheet.Count(comparison.Failures.Length, "failure")} compared; {AuditSheet.Count(comparison.Changed, "plan")} {(comparison.Changed == 1 ? "differs" : "differ")}; the bench hours by {Signed(comparison.BenchHours)} in all{Worded(comparison)}.";

    public static string Failure(ComparedFailure failure) =>
        $"{failure.Name.Family}, {string.Join(" and ", failure.Name.Debris)} from {string.Join(" and ", failure.Name.Parts)}";

    public static string Figures(PlanComparison plans) =>
        $"{AuditSheet.Count(plans.Same.Length, "part")} the same, {AuditSheet.Number(plans.Parts.Length)} different; {AuditSheet.Number(plans.First.Steps.Length)} and {AuditSheet.Count(plans.Second.Steps.Length, "step")}; "
        + $"at the bench at most {Hours(plans, hours => hours.Most)} ({Signed(plans.BenchHours)}), sure {Hours(plans, hours => hours.Sure)}, to be expected {Hours(plans, hours => hours.Expected)}; "
        + $"{AuditSheet.Number(plans.FirstHours.Looks)} and {AuditSheet.Count(plans.SecondHours.Looks, "look")} decide on {Share(plans.FirstHours)} and {Share(plans.SecondHours)} of the hours"
        + (plans.HasOtherTimes ? "; steps that both have take other times" : "")
        + (plans.HasOtherWords ? "; steps or cautions are worded otherwise" : "");

    private static string Hours(PlanComparison plans, Func<LookHours, double> figure) => $"{AuditSheet.Number(figure(plans.FirstHours))} h and {AuditSheet.Number(figure(plans.SecondHours))} h";

    private static string Share(LookHours hours) => AuditSheet.Percent(hours.OnLooks);

    public static string Side(PlanPart? part) => part is null ? "not reached" : part.Treatment.IsEmpty ? "cleared" : string.Join(", ", part.Treatment).ToLowerInvariant();

    /// <summary>The parts that differ, those that differ alike together: their ids, what each side gives them, and why.</summary>
    public static IEnumerable<(string Parts, string First, string Second, string Because)> Alike(PlanComparison plans) => plans.Parts
        .GroupBy(part => (First: Side(part.First), Second: Side(part.Second), part.Because))
        .Select(group => (string.Join(", ", group.Select(part => part.Part)), group.Key.First, group.Key.Second, group.Key.Because));

    public static string Signed(double hours) => (hours < 0 ? "−" : "+") + Math.Abs(hours).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Names of failures in a line: <c>seat water, drain metal and rubber</c>.</summary>
    public static string Names(IEnumerable<FailureName> names) => string.Join(", ", names.Select(name => $"{string.Join(" and ", name.Parts)} {string.Join(" and ", name.Debris)}"));

    private static string Worded(ComparisonAnswer comparison) =>
        comparison.Failures.Count(failure => failure.Plans.HasOtherWords) is > 0 and var count ? $"; {AuditSheet.Count(count, "plan")} worded otherwise" : "";
}
