using System.Globalization;
using System.Text;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Reports;

/// <summary>A plan as a Markdown checklist with boxes to tick. Whatever a person wrote is escaped.</summary>
public static class PlanMarkdown
{
    private const string Special = "\\`*_{}[]()<>#+-.!|~&";

    /// <summary>Writes the checklist.</summary>
    public static void Write(PlanDocument plan, Family family, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(writer);
        var names = new Names(family);
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"# {Escape(plan.Failed.IsEmpty ? $"Clean-out: from what was found, {string.Join(" and ", plan.Debris)}" : PlanSentences.Title(plan, names))}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"{Escape(plan.Family.Title)} ({Escape(plan.Family.Id)}). {Reached(plan)}.\n\n");
        if (ReviewWords.Of(plan) is { } reviewed)
            page.Append(CultureInfo.InvariantCulture, $"{Escape(reviewed)}\n\n");
        Looks(page, plan, new LookWords(plan, names));
        foreach (string sentence in plan.FromFindings is { } from ? FromFindingsWords.Sentences(from, names) : [])
            page.Append(CultureInfo.InvariantCulture, $"{Escape(sentence)}\n\n");
        foreach (string note in plan.Notes)
            page.Append(CultureInfo.InvariantCulture, $"{Escape(note)}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"**{PlanSentences.MayNotRun(plan)}**\n");
        Cautions(page, plan);
        Before(page, plan);
        Methods(page, plan);
        Steps(page, plan, names);
        Parts(page, plan);
        Findings(page, plan, names);
        Order(page, plan);
        string hours = plan.Looks.IsEmpty
            ? string.Create(CultureInfo.InvariantCulture, $"{plan.Hours.Bench:0.##} h at the bench, {plan.Hours.Elapsed:0.##} working hours from start to end, not under {plan.Hours.LowerBoundElapsed:0.##} h.")
            : Escape(PlanSentences.Hours(plan));
        page.Append(CultureInfo.InvariantCulture, $"\n## Hours\n\n{hours}\n");
        writer.Write(page);
    }

    private static string Reached(PlanDocument plan)
    {
        int cleared = plan.Parts.Count(part => part.Treatment.IsEmpty);
        if (!plan.Looks.IsEmpty)
            return PlanSentences.Reached(plan);
        string apart = cleared == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {cleared} of them cleared by what was seen");
        return string.Create(CultureInfo.InvariantCulture, $"{plan.Parts.Length} parts reached{apart}, {plan.Clear} clear");
    }

    private static void Looks(StringBuilder page, PlanDocument plan, LookWords words)
    {
        if (!words.Any)
            return;
        page.Append(CultureInfo.InvariantCulture, $"- **SURE** {Escape(words.Sure)}\n- **BY THE LOOKS** {Escape(words.ByTheLooks)}\n");
        foreach (PlanLook look in plan.Looks)
            page.Append(CultureInfo.InvariantCulture, $"- **LOOK {look.Id}** {Escape($"{words.Place(look)}. {LookWords.Due(look)}{LookWords.Find(look)}: {words.Found(look)}. Clean: {words.Clean(look)}.")}\n");
        page.Append('\n');
        foreach (string sentence in words.AgainstOnRecord().Append(words.HowToStrike))
            page.Append(CultureInfo.InvariantCulture, $"{Escape(sentence)}\n\n");
    }

    private static void Cautions(StringBuilder page, PlanDocument plan)
    {
        if (plan.Cautions.IsEmpty)
            return;
        page.Append("\n## Be careful\n\n");
        for (int i = 0; i < plan.Cautions.Length; i++)
            page.Append(CultureInfo.InvariantCulture, $"- **{PlanSentences.CautionMark(i)}** {Escape(PlanSentences.Caution(plan.Cautions[i]))}\n");
    }

    private static void Before(StringBuilder page, PlanDocument plan)
    {
        page.Append("\n## Before the work\n\n");
        foreach ((string name, string text) in BeforeText.Lines(plan, TextLook.Plain).Where(line => !line.Name.StartsWith("Order", StringComparison.Ordinal) && !line.Name.StartsWith("If ", StringComparison.Ordinal)))
            page.Append(CultureInfo.InvariantCulture, $"- **{name}** {Escape(text)}\n");
    }

    private static void Methods(StringBuilder page, PlanDocument plan)
    {
        if (plan.Methods.IsEmpty)
            return;
        page.Append("\n## Methods\n\n");
        foreach (PlanMethod method in plan.Methods)
            page.Append(CultureInfo.InvariantCulture, $"- **{method.Id} {Escape(method.Title)}** {Escape(method.Text)}\n");
    }

    private static void Parts(StringBuilder page, PlanDocument plan)
    {
        bool branches = !plan.Looks.IsEmpty;
        page.Append(CultureInfo.InvariantCulture, $"\n## What the debris reached\n\n| part | grade | treatment |{(branches ? " only if |" : "")}\n| --- | --- | --- |{(branches ? " --- |" : "")}\n");
        foreach (PlanPart part in plan.Parts)
        {
            string grades = part.Exposure.IsEmpty ? "failed, nothing shed" : string.Join(", ", part.Exposure.Select(one => plan.Debris.Length > 1 ? $"{one.Debris} {Word(one.Grade)}" : Word(one.Grade)));
            string treatment = part.Treatment.IsEmpty ? "left alone" : string.Join(", ", part.Treatment.Select(one => one.ToString().ToLowerInvariant()));
            page.Append(CultureInfo.InvariantCulture, $"| {Escape(part.Name)} | {Escape(grades)} | {treatment} |{(branches ? $" {(part.Treatment.IsEmpty ? "" : part.OnlyIf.IsEmpty ? "sure" : LookWords.AnyOf(part.OnlyIf))} |" : "")}\n");
        }
    }

    private static void Findings(StringBuilder page, PlanDocument plan, Names names)
    {
        if (plan.Findings.IsEmpty)
            return;
        page.Append("\n## What was seen\n\n");
        foreach (PlanFinding finding in plan.Findings)
            page.Append(CultureInfo.InvariantCulture, $"- {Escape(names.Of(finding.Part))}: {Escape(ReachedWords.Seen(finding, names))}\n");
    }

    private static string Word(Grade grade) => grade.ToString().ToLowerInvariant();

    private static void Steps(StringBuilder page, PlanDocument plan, Names names)
    {
        page.Append("\n## Steps\n");
        var groups = new StepGroups(plan, names);
        var looks = new LookWords(plan, names);
        Phase? phase = null;
        foreach (PlanStep step in plan.Steps)
        {
            if (step.Phase != phase)
            {
                phase = step.Phase;
                page.Append(CultureInfo.InvariantCulture, $"\n### {PhaseWords.Of(step.Phase)}\n\n");
            }

            string[] facts =
            [
                .. step.Method is { } method ? [method] : Array.Empty<string>(),
                .. step.Minutes > 0 && step.Technician is not null ? [string.Create(CultureInfo.InvariantCulture, $"{step.Minutes:0.#} min")] : Array.Empty<string>(),
                .. groups.CautionsNewOn(step).Select(PlanSentences.CautionMark),
            ];
            // The number is escaped, so that it is not taken for a list of its own.
            PlanLook? look = looks.MadeIn(step).FirstOrDefault();
            string text = Escape(look is null ? step.Text : LookWords.Lettered(look, step.Text));
            string margin = LookWords.Margin(step) is { Length: > 0 } letters ? $"**\\[{letters}\\]** " : "";
            page.Append(CultureInfo.InvariantCulture, $"- [ ] **{step.Number}** {margin}{text}{(facts.Length > 0 ? $" ({string.Join(", ", facts)})" : "")}\n");
            if (look is not null)
                Outcomes(page, look, looks);
        }
    }

    private static void Outcomes(StringBuilder page, PlanLook look, LookWords words)
    {
        page.Append(CultureInfo.InvariantCulture, $"  - [ ] {Escape($"clean: {words.Clean(look)}.")}\n");
        page.Append(CultureInfo.InvariantCulture, $"  - [ ] {Escape($"{LookWords.Find(look).ToLowerInvariant()}: {words.Found(look)}.{words.OrderFirst(look)}")}\n");
        foreach (string sentence in words.Against(look))
            page.Append(CultureInfo.InvariantCulture, $"  - {Escape(sentence)}\n");
    }

    private static void Order(StringBuilder page, PlanDocument plan)
    {
        if (plan.Order.IsEmpty)
            return;
        page.Append("\n## Order\n\n");
        foreach (PlanOrderLine line in plan.Order)
        {
            string quantity = line.Quantity > 0 ? string.Create(CultureInfo.InvariantCulture, $"{line.Quantity:0.##} {line.Unit ?? "×"} ") : "";
            string lead = line.LeadDays is { } days ? string.Create(CultureInfo.InvariantCulture, $", {days:0.#} d to come") : "";
            page.Append(CultureInfo.InvariantCulture, $"- [ ] {quantity}{Escape(line.Item)} ({line.Why}{lead}){(line.OnlyIf.IsEmpty ? "" : $" **\\[{LookWords.Margin(line.OnlyIf, [])}\\]**")}\n");
        }
    }

    /// <summary>Text that Markdown shows as it is: no markup, no HTML, on one line.</summary>
    internal static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (char one in TextPage.Harmless(text))
        {
            if (one is '<' or '>' or '&')
                escaped.Append(one switch { '<' => "&lt;", '>' => "&gt;", _ => "&amp;" });
            else if (Special.Contains(one, StringComparison.Ordinal) && one is not ('.' or '-' or '(' or ')' or '+' or '!'))
                escaped.Append('\\').Append(one);
            else
                escaped.Append(one);
        }

        return escaped.ToString();
    }
}
