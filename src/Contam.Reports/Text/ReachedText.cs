using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>The part of a plan that says what was reached, how, and what is done with it.</summary>
/// <remarks>In short: by treatment, the parts that get it. With reasons: how the debris came to it, what would reach further, and why it is treated so.</remarks>
internal sealed class ReachedText(TextPage page, PlanDocument plan, Names names, bool withReasons)
{
    private readonly List<string> reasons = [];
    private readonly ReachedWords words = new(plan, names, page.Look);

    public void Write()
    {
        page.Heading("What the debris reached");
        foreach ((string heading, PlanPart[] parts) in words.Groups())
            Group(heading, parts);
        Conditional();
        Findings();
        for (int i = 0; i < reasons.Count; i++)
        {
            if (i == 0)
                page.Subheading("Why treated so");
            page.Paragraph(reasons[i], indent: 7, lead: $"  ({Letter(i)})");
        }
    }

    private void Group(string heading, PlanPart[] parts)
    {
        page.Subheading(string.Create(CultureInfo.InvariantCulture, $"{heading} ({parts.Length})"));
        if (!withReasons && !plan.Looks.IsEmpty)
        {
            // What is done with each stands in the steps, with its letters.
            foreach (IGrouping<bool, PlanPart> alike in parts.GroupBy(part => ReachedWords.WorstOf(part) == Grade.Guarded))
                page.Paragraph((alike.Key ? "past a barrier: " : "") + names.Folded(alike.Select(part => part.Id)), indent: 2, lead: "  ");
            return;
        }

        if (!withReasons)
        {
            foreach (IGrouping<string, PlanPart> alike in parts.GroupBy(words.Treatment, StringComparer.Ordinal))
                page.Row(2, (alike.Key, 24), (names.Folded(alike.Select(part => part.Id)), 0));
            return;
        }

        foreach (List<PlanPart> group in RepeatFolding.Fold(parts, part => names.NumberOf(part.Id), KeyOf))
        {
            PlanPart first = group[0];
            string name = group.Count == 1
                ? first.Name
                : $"{names.WithoutNumber(first.Id)} {RepeatFolding.Range(names.NumberOf(first.Id), names.NumberOf(group[^1].Id))}";
            page.Row(2, (name, 26), (words.Treatment(first) + ReasonMark(first), 22), (words.HowReached(first), 0));
        }
    }

    private string KeyOf(PlanPart part) => string.Join('|', [
        names.WithoutNumber(part.Id),
        words.Treatment(part),
        $"{part.Rule?.File}:{part.Rule?.Line}",
        string.Join(',', part.Exposure.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Debris} {one.Grade} {one.ReachUm} {one.From} {(one.Via is null ? "" : names.WithoutNumber(one.Via))}"))),
    ]);

    private string ReasonMark(PlanPart part)
    {
        string reason = ReachedWords.Reason(part);
        if (reason.Length == 0)
            return "";
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
        page.Subheading(ReachedWords.LookToo);
        foreach ((string looks, string then) in withReasons ? words.Conditional() : words.ConditionalInShort())
            page.Row(2, (looks, withReasons ? 26 : 52), (then, 0));
    }

    private void Findings()
    {
        if (plan.Findings.IsEmpty)
            return;
        page.Subheading("What was seen");
        foreach (PlanFinding finding in plan.Findings)
            page.Row(2, (names.Of(finding.Part), 26), (ReachedWords.Seen(finding, names), 0));
    }
}
