using System.Collections.Immutable;

namespace Contam.Problems;

/// <summary>
/// The codes of the lints, with meaning, example, mend and a reason for which each may be meant so. A lint is a warning: the file can be used,
/// but something is likely forgotten.
/// </summary>
public static class LintCodes
{
    /// <summary>A part is on no run and no link.</summary>
    public const string OnNoRun = "on-no-run";

    /// <summary>A circuit does not name its fluid.</summary>
    public const string NoFluid = "no-fluid";

    /// <summary>A run ends where fluid cannot end.</summary>
    public const string DeadEnd = "dead-end";

    /// <summary>Fluid leaves a tank or sump and no way of its circuit brings it back.</summary>
    public const string DoesNotClose = "does-not-close";

    /// <summary>A filter does not say what it holds, or a part holds something and does not say how surely.</summary>
    public const string NoRating = "no-rating";

    /// <summary>A part has an absolute rating and a bypass, so that it is not relied on.</summary>
    public const string BypassReliedOn = "bypass-relied-on";

    /// <summary>What a part sheds reaches no place that can be looked at, the part itself included.</summary>
    public const string NowhereToLook = "nowhere-to-look";

    /// <summary>Debris can reach a part for which the standard has no rule.</summary>
    public const string NoRule = "no-rule";

    /// <summary>A look does not say how long it takes.</summary>
    public const string LookWithoutTime = "look-without-time";

    /// <summary>A part stands in circuits of different fluids and is of a kind that does not join them.</summary>
    public const string FluidsMix = "fluids-mix";

    /// <summary>A part is sent out and does not say for how many days.</summary>
    public const string AwayWithoutDays = "away-without-days";

    /// <summary>Two parts bear nearly the same id or name.</summary>
    public const string NamesAlike = "names-alike";

    /// <summary>A limit is for something that cannot be measured at such a part.</summary>
    public const string CannotBeMeasured = "cannot-be-measured";

    /// <summary>A critical part gets a treatment that does not show it to be well.</summary>
    public const string CriticalWithoutTest = "critical-without-test";

    /// <summary>A part says nothing of what it sits on or in, where its kind usually has something, in a file that names carriers.</summary>
    public const string NoCarrier = "no-carrier";

    /// <summary>`meant` silences a lint that is not there.</summary>
    public const string MeantForNothing = "meant-for-nothing";

    /// <summary>All of them.</summary>
    public static ImmutableArray<ProblemCode> All { get; } =
    [
        Lint(OnNoRun, "A part is on no run and no link, so that nothing ever gets to it.",
            "parts: {return-hose: {kind: hose}}   # and no run names it",
            "Name the part on the runs that it stands on. A return line that is forgotten is a part that is missed.",
            "carried as a spare and not fitted"),
        Lint(NoFluid, "A circuit does not name the fluid that runs in it. It is then taken to carry a gas: steps are worded as for air, and its flushing cannot be worked out. A circuit that is called after air, exhaust, gas or breather need not.",
            "fuel:\n  runs: [[fuel-tank, fuel-filter, injection-pump]]",
            "Describe the fluid under `fluids` and name it with `fluid`.",
            "carries either fluid by the season"),
        Lint(DeadEnd, "A run ends at a part from which fluid must go on: its kind does not say `fluid-may-end`, and no other run or link leads on from it.",
            "runs: [[tank, pump, filter]]",
            "Write where the fluid goes from there: a return, a drain, a leak-off.",
            "the drain ends over the side"),
        Lint(DoesNotClose, "Fluid leaves a tank or sump (a kind with `reservoir`), and no way of the circuit brings any of it back. A fluid that is `free` may run through.",
            "oil:\n  fluid: oil-15w40\n  runs: [[sump, pump, filter, main-gallery, bearing]]",
            "Write the runs that lead back. Where the fluid is used up, say so with `meant` on the circuit.",
            "the fuel is burnt"),
        Lint(NoRating, "A filter does not say what it holds, or a part holds something and does not say whether that is absolute or nominal. Both are read as if it held nothing.",
            "oil-filter: {kind: filter, holds: {metal: 25 um}}",
            "Write `holds` and `rating: absolute` or `rating: nominal`.",
            "the element is taken out for the season"),
        Lint(BypassReliedOn, "A part has an absolute rating and a bypass. It opens past itself, so that it is not relied on, whatever its rating.",
            "oil-filter: {kind: filter, holds: {metal: 10 um}, rating: absolute, bypass: true}",
            "Write `rating: nominal`, or take `bypass` out if it has none.",
            "the rating is kept for the order; the bypass opens when cold"),
        Lint(NowhereToLook, "A part sheds debris, and neither it nor anything that it leads to has an `inspect`. A failure there can be neither found nor shown to be cleared.",
            "pump: {kind: pump, sheds: {metal: common}}   # and no part downstream has a look",
            "Give the part, or a filter, plug or bowl downstream of it, an `inspect`.",
            "what it sheds leaves with the exhaust"),
        Lint(NoRule, "Debris can reach a part, and no rule of the standard says what is done with it, so that the fallback holds: clean and inspect where exposed, inspect where guarded.",
            "a shop's own debris `sealant`, and no rule for it",
            "Write a rule for the debris or for the kind in the shop standard.",
            "the fallback is what this shop does"),
        Lint(LookWithoutTime, "A look does not say how long it takes. Where to look next, and where looking pays, are weighed by the minute.",
            "inspect: {shows: good, how: draw the bowl into a clear jar}",
            "Write `minutes` into `inspect`.",
            "seen in passing"),
        Lint(FluidsMix, "A part stands in circuits of different fluids, and its kind does not say `joins-fluids`. A part has no sides: whatever gets to it from one gets into the other. A circuit that names no fluid counts as one of its own.",
            "runs of `oil` and of `fresh-water` that both name the hose `bypass-hose`",
            "Write two parts where two fluids pass each other, joined by links with `only-if-failed`; or give the part a kind that joins fluids.",
            "one hose that carries either by the season"),
        Lint(AwayWithoutDays, "A part is sent out and does not say for how many days, so that the schedule takes five working days.",
            "send-out: {who: injection workshop}",
            "Write `days` into `send-out`.",
            "the workshop next door does it while we wait"),
        Lint(NamesAlike, "Two parts bear ids or names that differ in nothing but the order of words, an `s` or a letter: one part may have been described twice, with half of its joints each.",
            "oil-filter: {kind: filter}\nfilter-oil: {kind: filter}",
            "Keep one of the two and put its joints together; or name them so that nobody takes one for the other.",
            "two valves side by side that the shop calls so"),
        Lint(CannotBeMeasured, "A limit is for something that cannot be measured at such a part, by the `measures` of its kind.",
            "oil-hose-run-out: {part: oil-hose, measures: run-out, good: \"<= 0.05 mm\"}",
            "Name the part that was meant, or what is measured there.",
            "the gauge is screwed in here"),
        Lint(CriticalWithoutTest, "A critical part can be reached by debris, and nothing shows it to be well afterwards: its treatment holds neither `test` nor `replace`, no look at it shows well, and no limit is measured at it.",
            "governor: {kind: housing, cleared-by: two-looks}",
            "Write a rule that tests or replaces it, a limit that is measured at it, or an `inspect` with `shows: good`.",
            "proved by the first run with the guard on"),
        Lint(NoCarrier, "A part does not say what it stands on, rides on or is inside of, its kind usually has something (`carried`), and other parts of the file say it. The order in which it comes off and goes on is then taken from `access` alone.",
            "shaft: {kind: shaft, stands-on: case}\nshaft-bearing: {kind: bearing}",
            "Write `rides-on`, `stands-on` or `assembly`.",
            "it lies loose between two covers"),
        new(MeantForNothing, "`meant` silences a lint that is not raised there: what it was meant for has been mended, or stands elsewhere.",
            "meant: {dead-end: the drain ends over the side}   # and the part leads on",
            "Take the entry out.") { Severity = Severity.Warning },
    ];

    private static ProblemCode Lint(string code, string meaning, string example, string mend, string mayBeMeant) =>
        new(code, meaning, example, mend) { Severity = Severity.Warning, MayBeMeant = mayBeMeant };
}
