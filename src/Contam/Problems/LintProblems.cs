using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of the lints. Parts are named as a person would: <c>injector-#</c> where it is so for every number.</summary>
internal static class LintProblems
{
    public static Problem OnNoRun(SourceSpan place, string part) => Lint(
        LintCodes.OnNoRun, place, $"{Wording.Quoted(part)} is on no run and no link, so nothing ever gets to it", "name it on the runs that it stands on");

    public static Problem NoCircuits(SourceSpan place) => Lint(
        LintCodes.OnNoRun, place, "the file describes parts and no circuit, so nothing ever gets from one to another", "write how the fluids run, for instance `circuits: {oil: {runs: [[tank, pump, tank]]}}`");

    public static Problem NoFluid(SourceSpan place, string circuit, IEnumerable<string> fluids) => Lint(
        LintCodes.NoFluid,
        place,
        $"the circuit {Wording.Quoted(circuit)} does not say which fluid runs in it",
        fluids.FirstOrDefault() is { } first ? $"add `fluid`, for instance `fluid: {first}`" : "describe the fluid under `fluids`, and name it here with `fluid`");

    public static Problem DeadEnd(SourceSpan place, string part, string kind, string circuit) => Lint(
        LintCodes.DeadEnd,
        place,
        $"a run of {Wording.Quoted(circuit)} ends at {Wording.Quoted(part)}, and fluid cannot end in {WithArticle(kind)}",
        "write where it goes from there: a return, a drain, a leak-off");

    public static Problem DoesNotClose(SourceSpan place, string circuit, string reservoir, SourceSpan reservoirPlace) => Lint(
        LintCodes.DoesNotClose,
        place,
        $"in {Wording.Quoted(circuit)} fluid leaves {Wording.Quoted(reservoir)} and no way brings it back",
        "write the runs that lead back, or say under `meant` that it is used up") with { Related = [reservoirPlace] };

    public static Problem HoldsNothing(SourceSpan place, string part, string kind) => Lint(
        LintCodes.NoRating, place, $"{Wording.Quoted(part)} is {WithArticle(kind)} and does not say what it holds", "add `holds` and `rating`");

    public static Problem NoRating(SourceSpan place, string part) => Lint(
        LintCodes.NoRating, place, $"{Wording.Quoted(part)} does not say whether what it holds is absolute or nominal; it is not relied on", "add `rating: absolute` or `rating: nominal`");

    public static Problem BypassReliedOn(SourceSpan place, string part) => Lint(
        LintCodes.BypassReliedOn, place, $"{Wording.Quoted(part)} is absolute but opens past itself, so it is not relied on", "write `rating: nominal`, or take `bypass` out if it has none");

    public static Problem NowhereToLook(SourceSpan place, string part, IEnumerable<string> debris) => Lint(
        LintCodes.NowhereToLook,
        place,
        $"{Wording.Quoted(part)} sheds {Wording.AllOf(debris)}, and neither it nor anything that it leads to can be looked at",
        "give it, or what lies downstream of it, an `inspect`");

    public static Problem NoRule(SourceSpan place, string part, string kind, IEnumerable<string> debris) => Lint(
        LintCodes.NoRule,
        place,
        $"{Wording.AllOf(debris)} can reach {Wording.Quoted(part)}, and the standard has no rule for it",
        $"write a rule for {Wording.OneOf(debris)}, or for the kind {Wording.Quoted(kind)}; until then it is cleaned and looked at");

    public static Problem LookWithoutTime(SourceSpan place, string part) => Lint(
        LintCodes.LookWithoutTime, place, $"the look at {Wording.Quoted(part)} does not say how long it takes", "add `minutes`");

    public static Problem FluidsMix(SourceSpan place, string part, string kind, IEnumerable<string> circuits) => Lint(
        LintCodes.FluidsMix,
        place,
        $"{Wording.Quoted(part)} stands in {Wording.AllOf(circuits.Select(Wording.Quoted))}, which are different fluids, and {WithArticle(kind)} does not join fluids",
        "write two parts where two fluids pass each other, joined by links with `only-if-failed`");

    public static Problem AwayWithoutDays(SourceSpan place, string part) => Lint(
        LintCodes.AwayWithoutDays, place, $"{Wording.Quoted(part)} is sent out and does not say for how many days", "add `days`; five are taken until then");

    public static Problem NamesAlike(SourceSpan place, string part, string other, SourceSpan otherPlace) => Lint(
        LintCodes.NamesAlike,
        place,
        $"{Wording.Quoted(part)} is called nearly the same as {Wording.Quoted(other)}",
        "keep one of the two if they are one part, else name them further apart") with { Related = [otherPlace] };

    public static Problem CannotBeMeasured(SourceSpan place, string limit, string part, string kind, string measure) => Lint(
        LintCodes.CannotBeMeasured,
        place,
        $"{Wording.Quoted(limit)} is for the {measure} of {Wording.Quoted(part)}, and {WithArticle(kind)} has none",
        "name the part or the measure that was meant");

    public static Problem CriticalWithoutTest(SourceSpan place, string part, IEnumerable<string> debris) => Lint(
        LintCodes.CriticalWithoutTest,
        place,
        $"{Wording.Quoted(part)} is critical, and nothing shows it to be well after {Wording.OneOf(debris)}",
        "write a rule that tests or replaces it, a limit that is measured at it, or a look that shows well");

    public static Problem NoCarrier(SourceSpan place, string part, string kind) => Lint(
        LintCodes.NoCarrier, place, $"{Wording.Quoted(part)} is {WithArticle(kind)} and does not say what it sits on or in", "add `rides-on`, `stands-on` or `assembly`");

    public static Problem MeantForNothing(SourceSpan place, string code) => Lint(
        LintCodes.MeantForNothing, place, $"{Wording.Quoted(code)} is not raised here", "take it out of `meant`");

    private static Problem Lint(string code, SourceSpan place, string text, string mend) => new(code, Severity.Warning, place, text, mend);

    private static string WithArticle(string kind) => (kind.Length > 0 && "aeiou".Contains(kind[0], StringComparison.Ordinal) ? "an " : "a ") + kind.Replace('-', ' ');
}
