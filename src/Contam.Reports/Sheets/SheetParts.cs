using System.Globalization;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Markup;
using Contam.Reports.Text;

namespace Contam.Reports.Sheets;

/// <summary>Every part that the debris reached, with the way there folded under it.</summary>
internal sealed class SheetParts(MarkupWriter page, PlanDocument plan, Family family, Names names, SheetCircuits circuits, TextLook look)
{
    private readonly ReachedWords words = new(plan, names, look);
    private readonly SheetLooks looks = new(page, plan, names);
    private readonly Dictionary<string, PlanPart> partOf = plan.Parts.ToDictionary(part => part.Id, StringComparer.Ordinal);
    private readonly ILookup<(string, string), Joint> joints = family.Joints
        .Where(joint => joint.OnlyIfFailed is not { } failed || plan.FailedParts().Contains(failed.Value))
        .ToLookup(joint => (joint.From.Value, joint.To.Value));

    public void Write()
    {
        PlanHtml.Chapter(page, "reached", "What the debris reached");
        foreach ((string heading, PlanPart[] parts) in words.Groups())
            Group(heading, parts);
        if (!plan.Conditional.IsEmpty)
            Table("cs-also", ReachedWords.LookToo, ["Look at", "If it has failed"], words.Conditional().Select(one => (one.Looks, one.Then)));
        if (!plan.Findings.IsEmpty)
            Table("cs-seen", "What was seen", ["Part", "Seen"], plan.Findings.Select(finding => (names.Of(finding.Part), ReachedWords.Seen(finding, names))));
        page.Close().Line();
    }

    private void Group(string heading, PlanPart[] parts)
    {
        page.Leaf("h3", string.Create(CultureInfo.InvariantCulture, $"{heading} ({parts.Length})")).Line();
        Begin("cs-parts", ["Part", "What is done", "How it got here"]);
        foreach (PlanPart part in parts)
        {
            page.Open("tr", [("id", "part-" + part.Id), ("class", "cs-part"), ("data-part", part.Id), ("data-circuits", circuits.Of([part.Id])), .. SheetLooks.Condition(part.OnlyIf, [])]);
            page.Leaf("th", part.Name, ("scope", "row")).Open("td").Text(words.Treatment(part));
            looks.Margin(part.OnlyIf, []);
            page.Close().Open("td");
            page.Open("details").Leaf("summary", words.HowReached(part)).Line();
            foreach (PlanExposure exposure in part.Exposure)
                Way(part, exposure);
            if (ReachedWords.Reason(part) is { Length: > 0 } reason)
                page.Leaf("p", $"Why treated so: {reason}").Line();
            page.Leaf("button", "Show its way in the picture", ("type", "button"), ("class", "cs-show"), ("hidden", "hidden"));
            page.Close().Close().Close().Line();
        }

        End();
    }

    // From the source on. Where the grade changes between two parts, the first of them is what should have held.
    private void Way(PlanPart part, PlanExposure last)
    {
        var way = new List<(PlanPart Part, PlanExposure Exposure)> { (part, last) };
        while (way.Count <= plan.Parts.Length && way[^1].Exposure.Via is { } via && partOf.TryGetValue(via, out PlanPart? before)
            && before.Exposure.FirstOrDefault(one => one.Debris == last.Debris) is { } exposure)
            way.Add((before, exposure));
        way.Reverse();
        if (plan.Debris.Length > 1)
            page.Leaf("p", $"{last.Debris}: {Word(last.Grade)}");
        page.Open("ol", ("class", "cs-way"), ("data-way", string.Join(' ', way.Select(one => one.Part.Id)))).Line();
        for (int i = 0; i < way.Count; i++)
        {
            (PlanPart here, PlanExposure exposure) = way[i];
            string by = i == 0 ? "" : string.Join(" or ", joints[(way[i - 1].Part.Id, here.Id)].Select(joint => joint.Circuit).Distinct(StringComparer.Ordinal));
            string[] facts = [.. new[] { by, Word(exposure.Grade), words.Size(exposure) }.Where(fact => fact.Length > 0)];
            page.Open("li").Leaf("b", here.Name).Text($" ({string.Join(", ", facts)})").Close().Line();
        }

        page.Close().Line();
    }

    private static string Word(Grade grade) => grade.ToString().ToLowerInvariant();

    private void Table(string look, string heading, string[] heads, IEnumerable<(string Head, string Text)> rows)
    {
        page.Leaf("h3", heading).Line();
        Begin(look, heads);
        foreach ((string head, string text) in rows)
            page.Open("tr").Leaf("th", head, ("scope", "row")).Leaf("td", text).Close().Line();
        End();
    }

    private void Begin(string look, string[] heads)
    {
        page.Open("table", ("class", look)).Open("thead").Open("tr");
        foreach (string head in heads)
            page.Leaf("th", head, ("scope", "col"));
        page.Close().Close().Line().Open("tbody").Line();
    }

    private void End() => page.Close().Close().Line();
}
