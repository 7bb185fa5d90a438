using System.Collections.Immutable;
using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What the deciding looks of a plan are, and what to strike and what to open as they come out, in words; the same in text, Markdown and on the sheet.</summary>
internal sealed class LookWords(PlanDocument plan, Names names)
{
    private readonly ILookup<int, PlanLook> byStep = plan.Looks.ToLookup(look => look.Step);

    /// <summary>Whether the plan has looks.</summary>
    public bool Any => !plan.Looks.IsEmpty;

    /// <summary>The looks that are made in a step; usually none, at most one.</summary>
    public IEnumerable<PlanLook> MadeIn(PlanStep step) => byStep[step.Number];

    /// <summary>How much is done whatever the looks show.</summary>
    public string Sure => string.Create(CultureInfo.InvariantCulture, $"{plan.Steps.Count(step => step.OnlyIf.IsEmpty)} steps, {plan.Hours.BenchAllClean:0.#} h");

    /// <summary>How much it may come to.</summary>
    public string ByTheLooks => string.Create(CultureInfo.InvariantCulture, $"at most {plan.Steps.Length} steps, {plan.Hours.Bench:0.#} h; {plan.Hours.BenchExpected:0.#} h to be expected");

    /// <summary>How letters are worked by, with a pencil.</summary>
    public string HowToStrike => $"Strike a letter wherever it stands in the margin. A step, look or order with all its letters struck falls away; strike the letter of such a look too. {(plan.Steps.Any(step => !step.Unless.IsEmpty) ? $"“not B”: done unless {Debris} was found at B. " : "")}{(HasCircles ? "A circled letter counts as found, even if clean; what was struck for it is open again. " : "")}A look that is due and was not made, or is in doubt, counts as found.";

    private bool HasCircles => AgainstOnRecord().Any() || plan.Looks.Any(look => Against(look).Any());

    /// <summary>Where a look is: <c>Oil return screens 1–2 (20 min, step 23)</c>.</summary>
    public string Place(PlanLook look) => string.Create(CultureInfo.InvariantCulture, $"{names.FoldedAtStart(look.Places)} ({Minutes(look.Minutes)}, step {look.Step})");

    /// <summary>By which looks it is due; empty for one that is made in any case.</summary>
    public static string Due(PlanLook look) => look.OnlyIf.IsEmpty ? "" : $"Only if {AnyOf(look.OnlyIf)}. ";

    /// <summary>The debris of the plan in one word.</summary>
    public string Debris => plan.Debris.Length == 1 ? plan.Debris[0] : "debris";

    /// <summary>What a look's step reads: its letter, then what is done.</summary>
    public static string Lettered(PlanLook look, string text) => text.StartsWith("Look ", StringComparison.Ordinal) ? $"LOOK {look.Id} {text["Look ".Length..]}" : $"LOOK {look.Id}. {text}";

    /// <summary>What a find is called: <c>Metal</c>, or <c>Metal or rubber</c>.</summary>
    public static string Find(PlanLook look)
    {
        string debris = string.Join(" or ", look.Debris);
        return debris.Length == 0 ? "Found" : char.ToUpperInvariant(debris[0]) + debris[1..];
    }

    /// <summary>What to do where something was found.</summary>
    public string Found(PlanLook look)
    {
        string[] due = [.. plan.Looks.Where(other => other.OnlyIf.Contains(look.Id)).Select(other => other.Id)];
        string also = due.Length == 0 ? "" : $", then look {(due.Length == 1 ? due[0] : AllOf(due))}";
        bool hangs = plan.Steps.Any(step => step.OnlyIf.Contains(look.Id) && plan.Looks.All(other => other.Step != step.Number));
        string instead = plan.Steps.Any(step => step.Unless.Contains(look.Id)) ? $"; strike what is marked not {look.Id}" : "";
        return (hangs ? $"do {look.Id}, up to {Hours(look.MinutesHanging)}{also}" : due.Length > 0 ? also[", then ".Length..] : "go on") + instead;
    }

    /// <summary>What to do at the step itself where something was found: nothing is struck, but for what is done in place of it.</summary>
    public string FoundAtStep(PlanLook look) => (plan.Steps.Any(step => step.Unless.Contains(look.Id)) ? $": strike what is marked not {look.Id}." : ".") + OrderFirst(look);

    /// <summary>What is ordered at once where something was found; a sentence with a space before it, empty where nothing that hangs on it takes long.</summary>
    public string OrderFirst(PlanLook look)
    {
        string[] late = [.. plan.Order.Where(line => line.LeadDays is not null && line.OnlyIf.Contains(look.Id)).Select(line => string.Create(CultureInfo.InvariantCulture, $"{line.Item} ({line.LeadDays:0.#} d)"))];
        return late.Length == 0 ? "" : $" Order at once: {string.Join(", ", late)}.";
    }

    /// <summary>What to strike where it is clean: its letter, and those of the looks that are not made then.</summary>
    public string Clean(PlanLook look) => "strike " + AllOf(FallWith([look.Id]));

    /// <summary>What counts as found too where something was found here although looks were clean; a sentence each.</summary>
    public IEnumerable<string> Against(PlanLook look) =>
        plan.Disproofs.Where(one => one.Found.Length == 1 && one.Found[0] == look.Id && !FallWith([.. one.Clean]).Contains(look.Id))
            .GroupBy(one => string.Join(' ', one.Void), StringComparer.Ordinal)
            .Select(same => Against($"{Find(look)} here", [.. same]));

    /// <summary>The same for a find that the plan was made with.</summary>
    public IEnumerable<string> AgainstOnRecord() =>
        plan.Disproofs.Where(one => one.Found.IsEmpty).GroupBy(one => string.Join(' ', one.Void), StringComparer.Ordinal).Select(same => Against("Found before", [.. same]));

    private static string Against(string find, PlanDisproof[] same)
    {
        string clean = same.All(one => one.Clean.Length == 1)
            ? $"{AnyOf([.. same.Select(one => one.Clean[0])])} was clean"
            : string.Join(", or ", same.Select(one => $"{AllOf(one.Clean)} {(one.Clean.Length == 1 ? "was" : "were")} clean"));
        ImmutableArray<string> isVoid = same[0].Void;
        return $"{find} although {clean}: a look has missed it. Circle {AllOf(isVoid)}.";
    }

    /// <summary>The letters of a condition for the margin: <c>A C</c>, <c>not B</c>, <c>A not B</c>; empty for whatever is seen.</summary>
    public static string Margin(ImmutableArray<string> onlyIf, ImmutableArray<string> unless) =>
        string.Join(' ', onlyIf) + (unless.IsEmpty ? "" : $"{(onlyIf.IsEmpty ? "" : " ")}not {string.Join(' ', unless)}");

    /// <summary>The letters of a step for the margin.</summary>
    public static string Margin(PlanStep step) => Margin(step.OnlyIf, step.Unless);

    /// <summary>Letters of which any counts: <c>A, B or C</c>.</summary>
    public static string AnyOf(IReadOnlyList<string> letters) => Joined(letters, "or");

    private static string AllOf(IReadOnlyList<string> letters) => Joined(letters, "and");

    private static string Joined(IReadOnlyList<string> words, string last) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.Take(words.Count - 1))} {last} {words[^1]}";

    /// <summary>These looks, and every look that is not made where none of them found anything, because it hangs on them alone.</summary>
    private string[] FallWith(string[] struck)
    {
        var fallen = struck.ToHashSet(StringComparer.Ordinal);
        foreach (PlanLook look in plan.Looks.Where(look => !look.OnlyIf.IsEmpty && look.OnlyIf.All(fallen.Contains)))
            fallen.Add(look.Id);
        return [.. plan.Looks.Select(look => look.Id).Where(fallen.Contains)];
    }

    private static string Minutes(double minutes) => minutes < 120 ? string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min") : Hours(minutes);

    private static string Hours(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60:0.#} h");
}
