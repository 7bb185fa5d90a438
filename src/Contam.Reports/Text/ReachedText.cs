using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>The part of a plan that says what was reached, how, and what is done with it.</summary>
internal sealed class ReachedText(TextPage page, PlanDocument plan, Names names)
{
    private readonly List<string> reasons = [];

    public void Write()
    {
        page.Heading("What the debris reached");
        Group(Grade.Exposed, "Exposed: it can get here at full size");
        Group(Grade.Guarded, "Guarded: only past a barrier that should have held it");
        Group(Grade.Cleared, "Cleared: it could have got here, but what was found clean cuts every way");
        Conditional();
        Findings();
        for (int i = 0; i < reasons.Count; i++)
        {
            if (i == 0)
                page.Subheading("Why treated so");
            page.Paragraph(reasons[i], indent: 7, lead: $"  ({Letter(i)})");
        }
    }

    private void Group(Grade grade, string heading)
    {
        PlanPart[] parts = [.. plan.Parts.Where(part => part.Exposure.Min(one => one.Grade) == grade)];
        if (parts.Length == 0)
            return;
        page.Subheading(string.Create(CultureInfo.InvariantCulture, $"{heading} ({parts.Length})"));
        foreach (List<PlanPart> group in RepeatFolding.Fold(parts, part => names.NumberOf(part.Id), KeyOf))
        {
            PlanPart first = group[0];
            string name = group.Count == 1
                ? first.Name
                : $"{names.WithoutNumber(first.Id)} {RepeatFolding.Range(names.NumberOf(first.Id), names.NumberOf(group[^1].Id))}";
            string treatment = first.Treatment.IsEmpty ? "left alone" : string.Join(", ", first.Treatment.Select(one => one.ToString().ToLowerInvariant()));
            page.Row(2, (name, 26), (treatment + ReasonMark(first), 22), (HowReached(first), 0));
        }
    }

    private string KeyOf(PlanPart part) => string.Join('|', [
        names.WithoutNumber(part.Id),
        string.Join(',', part.Treatment),
        $"{part.Rule?.File}:{part.Rule?.Line}",
        string.Join(',', part.Exposure.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Debris} {one.Grade} {one.ReachUm} {one.From} {(one.Via is null ? "" : names.WithoutNumber(one.Via))}"))),
    ]);

    /// <summary>The last hop of each debris, and what size arrives where it is not any.</summary>
    private string HowReached(PlanPart part)
    {
        var parts = new List<string>();
        foreach (PlanExposure exposure in part.Exposure)
        {
            string debris = plan.Debris.Length > 1 ? exposure.Debris + " " : "";
            string size = exposure.ReachUm switch
            {
                null => "",
                0 => exposure.Grade == Grade.Cleared ? "" : " (nothing, if all holds)",
                { } um => $" (up to {UnitText.Size(um, page.Look)})",
            };
            string way = exposure.Via is { } via ? $"through {names.InSentence(via)}"
                : plan.Failed.Contains(part.Id) ? plan.FromFindings is null ? "the failed part" : "a suspect"
                : "found here";
            parts.Add(debris + way + size);
        }

        return string.Join("; ", parts);
    }

    private string ReasonMark(PlanPart part)
    {
        if (part.Rule is not { Because.Length: > 0 } rule)
            return "";
        string where = rule.Line > 0 ? string.Create(CultureInfo.InvariantCulture, $" [{rule.File}:{rule.Line}]") : "";
        string reason = rule.Because + where;
        int index = reasons.IndexOf(reason);
        if (index < 0)
        {
            index = reasons.Count;
            reasons.Add(reason);
        }

        return $" ({Letter(index)})";
    }

    private static string Letter(int index) => index < 26 ? ((char)('a' + index)).ToString() : Letter(index / 26 - 1) + Letter(index % 26);

    private void Conditional()
    {
        if (plan.Conditional.IsEmpty)
            return;
        page.Subheading("Look at these too: if one has failed as well, more is reached");
        // Many parts open the same ways; they are told together.
        foreach (IGrouping<string, PlanConditional> same in plan.Conditional.Where(one => one.AlsoFailed.IsEmpty).GroupBy(one => string.Join(' ', one.Parts), StringComparer.Ordinal))
            page.Row(2, (names.FoldedAtStart(same.Select(one => one.IfFailed)), 26), ("then also: " + names.Folded(same.First().Parts), 0));
        foreach (PlanConditional one in plan.Conditional.Where(one => !one.AlsoFailed.IsEmpty))
            page.Row(2, (names.FoldedAtStart([one.IfFailed]) + " and " + names.Folded(one.AlsoFailed), 26), ("all together, then also: " + names.Folded(one.Parts), 0));
    }

    private void Findings()
    {
        if (plan.Findings.IsEmpty)
            return;
        page.Subheading("What was seen");
        foreach (PlanFinding finding in plan.Findings)
        {
            string saw = finding.Found ? $"{finding.Debris} found" : $"clean of {finding.Debris}";
            string who = string.Join(", ", new[] { finding.By, finding.When }.OfType<string>());
            string counts = finding.Found || finding.Accepted ? "" : $"; clears nothing, because {finding.NotAcceptedBecause}";
            page.Row(2, (names.Of(finding.Part), 26), (saw + (who.Length > 0 ? $" ({who})" : "") + counts, 0));
        }
    }
}
