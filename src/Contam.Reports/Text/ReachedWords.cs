using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What was reached, how, and what is done with it, in words; the same in text and on the sheet.</summary>
internal sealed class ReachedWords(PlanDocument plan, Names names, TextLook look)
{
    private readonly ILookup<string, PlanStep> stepsOf = plan.Steps.SelectMany(step => step.Parts.Append(step.Part ?? "").Select(part => (Part: part, Step: step))).ToLookup(pair => pair.Part, pair => pair.Step, StringComparer.Ordinal);

    /// <summary>What stands over the closed ways.</summary>
    public const string LookToo = "Look at these too: if one failed as well, more is reached";

    /// <summary>The grades, the worst first, each with what it means; last what has failed and no debris is at.</summary>
    public static (Grade? Grade, string Heading)[] Grades =>
    [
        (Grade.Exposed, "Exposed: debris can get here at full size"),
        (Grade.Guarded, "Guarded: only past a barrier that should hold it"),
        (Grade.Cleared, Cleared),
        (null, "Failed, with no debris at it: made good"),
    ];

    /// <summary>
    /// The parts in groups that are not empty, each under its heading: by the worst grade; in a plan with looks by what each hangs on, what is sure first, and
    /// what was cleared beforehand last.
    /// </summary>
    public IEnumerable<(string Heading, PlanPart[] Parts)> Groups()
    {
        if (plan.Looks.IsEmpty)
            return Grades.Select(one => (one.Heading, plan.Parts.Where(part => WorstOf(part) == one.Grade).ToArray())).Where(group => group.Item2.Length > 0);
        return plan.Parts
            .GroupBy(part => part.Treatment.IsEmpty ? Cleared : part.OnlyIf.IsEmpty ? Sure : $"Only if {LookWords.AnyOf(part.OnlyIf)}", StringComparer.Ordinal)
            .OrderBy(group => group.Key == Sure ? 0 : group.Key == Cleared ? 2 : 1)
            .ThenBy(group => string.Join(' ', group.First().OnlyIf), StringComparer.Ordinal)
            .Select(group => (group.Key, group.ToArray()));
    }

    private const string Cleared = "Cleared: a clean look cuts every way";

    private const string Sure = "Whatever the looks show";

    /// <summary>The worst grade of a part; <c>null</c> for a failed part that no debris is at.</summary>
    public static Grade? WorstOf(PlanPart part) => part.Exposure.IsEmpty ? null : part.Exposure.Min(one => one.Grade);

    /// <summary>What is done with it.</summary>
    public string Treatment(PlanPart part) => part.Treatment.IsEmpty ? "left alone"
        : string.Join(", ", part.Treatment.Select(one => one.ToString().ToLowerInvariant() + LettersOf(part, one))) + (!plan.Looks.IsEmpty && WorstOf(part) == Grade.Guarded ? "; past a barrier" : "");

    /// <summary>The letters of a treatment that hangs on fewer looks than the part: only the look at it may be sure. Empty where it is done whenever the part is treated.</summary>
    private string LettersOf(PlanPart part, TreatmentKind treatment)
    {
        PlanStep[] steps = [.. stepsOf[part.Id].Where(step => step.Phase < Phase.Prove && step.Action.ToString() == treatment.ToString() && step.About != LookAbout.Condition)];
        if (steps.Length == 0 || steps.Any(step => step.OnlyIf.IsEmpty))
            return "";
        string[] letters = [.. steps.SelectMany(step => step.OnlyIf).Distinct().Order(StringComparer.Ordinal)];
        return letters.SequenceEqual(part.OnlyIf.Order(StringComparer.Ordinal)) ? "" : $" if {string.Join(' ', letters)}";
    }

    /// <summary>Why that is done, and the line of the rule; empty where no rule gives a reason.</summary>
    public static string Reason(PlanPart part)
    {
        if (part.Rule is not { Because.Length: > 0 } rule)
            return "";
        string where = rule.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $" [{rule.File}:{rule.Line}]") : "";
        return rule.Because + where;
    }

    /// <summary>The last hop of each debris, and what size arrives where it is not any.</summary>
    public string HowReached(PlanPart part) => part.Exposure.IsEmpty ? "the failed part, which shed nothing" : string.Join("; ", part.Exposure.Select(exposure => HowReached(part, exposure)));

    /// <summary>The last hop of one debris.</summary>
    public string HowReached(PlanPart part, PlanExposure exposure)
    {
        string debris = plan.Debris.Length > 1 ? exposure.Debris + " " : "";
        string way = exposure.Via is { } via ? $"through {names.InSentence(via)}"
            : plan.Failed.Any(failure => failure.Part == part.Id && failure.Debris.Contains(exposure.Debris)) ? plan.FromFindings is null ? "the failed part" : "a suspect"
            : "found here";
        string size = Size(exposure);
        return debris + way + (size.Length > 0 ? $" ({size})" : "");
    }

    /// <summary>What size arrives; empty where it is any.</summary>
    public string Size(PlanExposure exposure) => exposure.ReachUm switch
    {
        null => "",
        0 => exposure.Grade == Grade.Cleared ? "" : "nothing, if all holds",
        { } um => $"up to {UnitText.Size(um, look)}",
    };

    /// <summary>Which parts to look at too, and what is reached if they have failed. Many parts open the same ways; they are told together.</summary>
    public IEnumerable<(string Looks, string Then)> Conditional() =>
    [
        .. plan.Conditional.Where(one => one.AlsoFailed.IsEmpty).GroupBy(one => string.Join(' ', one.Parts), StringComparer.Ordinal)
            .Select(same => (names.FoldedAtStart(same.Select(one => one.IfFailed)), "then also: " + names.Folded(same.First().Parts))),
        .. plan.Conditional.Where(one => !one.AlsoFailed.IsEmpty)
            .Select(one => (names.FoldedAtStart([one.IfFailed]) + " and " + names.Folded(one.AlsoFailed), "all together, then also: " + names.Folded(one.Parts))),
    ];

    /// <summary>The same, with the number of parts in place of their names.</summary>
    public IEnumerable<(string Looks, string Then)> ConditionalInShort() =>
    [
        .. plan.Conditional.GroupBy(one => (one.Parts.Length, Together: one.AlsoFailed.IsEmpty ? "" : one.IfFailed + " " + string.Join(' ', one.AlsoFailed)))
            .Select(same => (
                names.FoldedAtStart(same.Select(one => one.IfFailed)) + (same.First().AlsoFailed.IsEmpty ? "" : " and " + names.Folded(same.First().AlsoFailed)),
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{(same.First().AlsoFailed.IsEmpty ? "" : "all together, ")}{same.Key.Length} more {(same.Key.Length == 1 ? "part" : "parts")}"))),
    ];

    /// <summary>What was seen at a part.</summary>
    public static string Seen(PlanFinding finding, Names names)
    {
        string saw = finding.Found ? $"{finding.Debris} found" : $"clean of {finding.Debris}";
        string who = string.Join(", ", new[] { finding.By, finding.When }.OfType<string>());
        string counts = finding.Found ? ContradictionWords.Source(finding) is { Length: > 0 } source ? $"; {source}" : ""
            : finding.Accepted ? ""
            : finding is { Void: true, ContradictedBy: { } find } ? $"; {ContradictionWords.Void(finding.Debris, names.InSentence(find))}"
            : $"; clears nothing, because {finding.NotAcceptedBecause}";
        return saw + (who.Length > 0 ? $" ({who})" : "") + counts;
    }
}
