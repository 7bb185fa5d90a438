using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>What an audit can see, by code. Codes stay the same between versions.</summary>
public static class AuditCodes
{
    /// <summary>A plan that the verifier or the simulator refuses.</summary>
    public const string PlanRefused = "plan-refused";

    /// <summary>A part that debris reaches and for which the standard has no rule.</summary>
    public const string NoRule = "no-rule";

    /// <summary>A part that debris reaches and that is treated by a rule for the debris at large.</summary>
    public const string GeneralRule = "general-rule";

    /// <summary>A part into which nothing leads, and at which no fluid can begin.</summary>
    public const string NoWayIn = "no-way-in";

    /// <summary>A critical part that debris reaches and that nothing shows to be well again.</summary>
    public const string CriticalWithoutProof = "critical-without-proof";

    /// <summary>A part to which no failure of another carries anything.</summary>
    public const string NeverReached = "never-reached";

    /// <summary>A part that is exposed and that no clean finding could ever spare.</summary>
    public const string NoLookBefore = "no-look-before";

    /// <summary>A failure that reaches more than half of the engine.</summary>
    public const string ReachesMost = "reaches-most";

    /// <summary>A step for which nobody says how long it takes.</summary>
    public const string StepWithoutTime = "step-without-time";

    /// <summary>A kind and debris that are treated otherwise in one family than in another.</summary>
    public const string TreatedOtherwise = "treated-otherwise";

    /// <summary>All codes, those that must be mended first, each with what it means.</summary>
    public static ImmutableArray<AuditCode> All { get; } =
    [
        new(PlanRefused, Severity.Error, "Plans that are refused", "the verifier or the step simulator refuses the plan, so that it is not to be worked by; nothing silences it"),
        new(NoRule, Severity.Error, "Reached without a rule", "debris reaches the part and the standard has no rule for it, so it is cleaned and looked at by the fallback; `meant: {no-rule: …}` silences it"),
        new(NoWayIn, Severity.Error, "No way in", "no run and no link leads into the part, it sheds nothing itself, and neither its kind nor a free fluid (air, sea water) lets fluid begin there: a forgotten joint is a missed part; `meant: {on-no-run: …}` silences it"),
        new(CriticalWithoutProof, Severity.Error, "Critical without proof", "debris reaches a critical part, and no test, new part, limit or good look shows it to be well; `meant: {critical-without-test: …}` silences it"),
        new(GeneralRule, Severity.Warning, "Treated by a general rule", "the rule that fits names neither the part nor its kind, so nobody has thought of this kind with this debris; `meant: {no-rule: …}` silences it"),
        new(NeverReached, Severity.Warning, "Never reached", "no failure of another part carries anything here, alone or with the failures that links wait for; `meant: {on-no-run: …}` silences it"),
        new(NoLookBefore, Severity.Warning, "No place to look before", "whatever fails, no look that shows well lies before the exposed part, so that nothing spares it; `meant: {nowhere-to-look: …}` silences it"),
        new(ReachesMost, Severity.Warning, "Reaches most of the engine", "the failure reaches more than half of the parts"),
        new(StepWithoutTime, Severity.Warning, "Steps without time", "neither part, standard nor kind says how long the step takes, so a general figure stands in; `meant: {look-without-time: …}` and `{away-without-days: …}` silence looks and send-outs"),
        new(TreatedOtherwise, Severity.Warning, "Treated otherwise elsewhere", "the same kind gets another treatment for the same debris in another family"),
    ];

    /// <summary>The code of this name.</summary>
    internal static AuditCode Of(string code) => All.First(one => one.Code == code);
}

/// <summary>A code of the audit.</summary>
/// <param name="Code">The code.</param>
/// <param name="Severity">An error must be mended.</param>
/// <param name="Title">As a heading.</param>
/// <param name="Meaning">What it means.</param>
public sealed record AuditCode(string Code, Severity Severity, string Title, string Meaning);
