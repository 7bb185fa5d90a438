using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Contam.Plans;
using Contam.Reports.Drawing;
using Contam.Reports.Markup;
using Contam.Reports.Text;

namespace Contam.Reports.Sheets;

/// <summary>
/// A plan as a sheet for the bench: one page that stands by itself, for paper, a phone or a screen. It is read and printed without its script; with
/// it, ticks are kept on the device, steps are filtered, and the way to a part is lit in the picture.
/// </summary>
/// <remarks>
/// For whoever reads the page by program: a step's tick box is <c>tick-9</c> within an item of class <c>cs-step</c>, an order line's is
/// <c>tick-order-1</c>, the outcomes of a look are <c>look-A-clean</c> and <c>look-A-found</c>, a part's row is <c>part-rail</c>, a caution is <c>caution-1</c>, the picture is <c>circuits</c>.
/// </remarks>
public static class PlanHtml
{
    /// <summary>Writes the sheet.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="request">What it was made from; its spread is drawn.</param>
    /// <param name="look">The units.</param>
    /// <param name="writer">Where it goes.</param>
    public static void Write(PlanDocument plan, PlanRequest request, TextLook look, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(look);
        var names = new Names(request.Family);
        var circuits = new SheetCircuits(request.Family);
        string hash = Hash(plan);
        string title = PlanSentences.Title(plan, names);
        MarkupWriter page = HtmlPage.Begin(new MarkupWriter(writer), title, SheetStyle.Of(hash[..8]), SheetScript.Source);
        Head(page, plan, names, title, hash);
        new SheetLooks(page, plan, names).Write();
        Tools(page, plan, circuits);
        Cautions(page, plan);
        Before(page, plan, look);
        Methods(page, plan);
        Picture(page, plan, request);
        new SheetParts(page, plan, request.Family, names, circuits, look).Write();
        new SheetSteps(page, plan, names, circuits).Write();
        Order(page, plan, names, look);
        new SheetSchedule(page, plan).Write();
        page.Script(SheetScript.Source).Line();
        HtmlPage.End(page);
    }

    private static string Hash(PlanDocument plan) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(PlanJson.Write(plan))));

    private static void Head(MarkupWriter page, PlanDocument plan, Names names, string title, string hash)
    {
        page.Open("header", ("id", "sheet"), ("data-plan", hash)).Line().Leaf("h1", title).Line();
        page.Leaf("p", PlanSentences.Engine(plan)).Line().Leaf("p", PlanSentences.Summary(plan)).Line();
        if (ReviewWords.Of(plan) is { } reviewed)
            page.Leaf("p", reviewed).Line();
        foreach (string sentence in plan.FromFindings is { } from ? FromFindingsWords.Sentences(from, names) : [])
            page.Leaf("p", sentence).Line();
        foreach (string note in plan.Notes)
            page.Leaf("p", note).Line();
        page.Open("p").Leaf("strong", PlanSentences.MayNotRun(plan)).Close().Line();
        page.Leaf("p", $"Plan {hash[..8]}: the same mark stands at the foot of every printed page.", ("class", "cs-small")).Line();
        page.Open("p", ("class", "cs-fields"));
        foreach (string field in (string[])["Engine", "Customer", "Begun", "By"])
            page.Leaf("span", field);
        page.Close().Line().Close().Line();
        page.Open("nav", ("aria-label", "parts of this sheet")).Open("ul");
        foreach ((string id, string text) in Chapters(plan))
            page.Open("li").Leaf("a", text, ("href", "#" + id)).Close();
        page.Close().Close().Line();
    }

    private static IEnumerable<(string Id, string Text)> Chapters(PlanDocument plan)
    {
        if (!plan.Looks.IsEmpty)
            yield return ("looks", "How far to go");
        if (!plan.Cautions.IsEmpty)
            yield return ("cautions", "Be careful");
        yield return ("before", "Before the work");
        if (!plan.Methods.IsEmpty)
            yield return ("methods", "Methods");
        yield return ("picture", "Picture");
        yield return ("reached", "What the debris reached");
        yield return ("steps", "Steps");
        if (!plan.Order.IsEmpty)
            yield return ("order", "Order");
        yield return ("hours", "Hours");
    }

    // Only a script can make these work, so only a script shows them.
    private static void Tools(MarkupWriter page, PlanDocument plan, SheetCircuits circuits)
    {
        page.Open("section", ("id", "tools"), ("class", "cs-tools"), ("aria-label", "ticks and filters"), ("hidden", "hidden")).Line();
        page.Leaf("p", "", ("id", "progress"), ("role", "status")).Line().Open("p");
        page.Leaf("label", "Circuit", ("for", "by-circuit")).Text(" ");
        Choice(page, "by-circuit", "all circuits", circuits.Names.Select((name, index) => (SheetCircuits.Number(index), name)));
        if (plan.Hours.Technicians > 1)
        {
            page.Text(" ").Leaf("label", "Person", ("for", "by-person")).Text(" ");
            Choice(page, "by-person", "everybody", Enumerable.Range(1, plan.Hours.Technicians).Select(one => (SheetCircuits.Number(one), $"technician {SheetCircuits.Number(one)}")));
        }

        page.Text(" ").Leaf("button", "Unfold every way", ("type", "button"), ("id", "unfold"), ("aria-pressed", "false"));
        page.Text(" ").Leaf("button", "Untick all", ("type", "button"), ("id", "untick")).Close().Line();
        page.Leaf("p", "", ("id", "filtered"), ("role", "status")).Line().Close().Line();
    }

    private static void Choice(MarkupWriter page, string id, string all, IEnumerable<(string Value, string Text)> choices)
    {
        page.Open("select", ("id", id)).Leaf("option", all, ("value", ""));
        foreach ((string value, string text) in choices)
            page.Leaf("option", text, ("value", value));
        page.Close();
    }

    private static void Cautions(MarkupWriter page, PlanDocument plan)
    {
        if (plan.Cautions.IsEmpty)
            return;
        Chapter(page, "cautions", "Be careful");
        page.Open("ul", ("class", "cs-cautions")).Line();
        for (int i = 0; i < plan.Cautions.Length; i++)
        {
            page.Open("li", ("id", $"caution-{SheetCircuits.Number(i + 1)}")).Leaf("b", PlanSentences.CautionMark(i));
            page.Text(" ").Leaf("span", PlanSentences.Caution(plan.Cautions[i])).Close().Line();
        }

        page.Close().Line().Close().Line();
    }

    private static void Before(MarkupWriter page, PlanDocument plan, TextLook look)
    {
        Chapter(page, "before", "Before the work");
        page.Open("dl").Line();
        foreach ((string name, string text) in BeforeText.Lines(plan, look))
            page.Leaf("dt", name).Leaf("dd", text).Line();
        page.Close().Line().Close().Line();
    }

    private static void Methods(MarkupWriter page, PlanDocument plan)
    {
        if (plan.Methods.IsEmpty)
            return;
        Chapter(page, "methods", "Methods");
        page.Open("ul", ("class", "cs-cautions")).Line();
        foreach (PlanMethod method in plan.Methods)
            page.Open("li", ("id", method.Id)).Leaf("b", method.Id).Text(" ").Leaf("span", $"{method.Title}: {method.Text}").Close().Line();
        page.Close().Line().Close().Line();
    }

    private static void Picture(MarkupWriter page, PlanDocument plan, PlanRequest request)
    {
        Chapter(page, "picture", "Picture");
        ImmutableArray<Families.PartId> reached = [.. plan.Parts.Select(part => new Families.PartId(part.Id))];
        page.Leaf("p", "What the debris reached." + plan.Clear switch
        {
            0 => "",
            1 => " The one clear part is left out.",
            _ => $" The {SheetCircuits.Number(plan.Clear)} clear parts are left out.",
        }).Line();
        page.Leaf("p", "Click a part here, or press Enter on it, to light its way. Move the picture in its frame to see the rest.", ("id", "how-to-light"), ("hidden", "hidden")).Line();
        page.Open("p", ("class", "cs-lights"), ("hidden", "hidden")).Leaf("span", "", ("id", "lit"), ("role", "status")).Text(" ");
        page.Leaf("button", "Whole picture", ("type", "button"), ("id", "whole"), ("aria-pressed", "false")).Text(" ");
        page.Leaf("button", "Put the light out", ("type", "button"), ("id", "unlight"), ("hidden", "hidden")).Close().Line();
        page.Open("div", ("class", "cs-scroll"), ("id", "view"), ("tabindex", "0"), ("role", "region"), ("aria-label", "picture of what the debris reached")).Line();
        var options = new PictureOptions { Only = reached, PageId = "circuits", LegendWidth = PrintPieces.Widest };
        (double width, double height) = CircuitSvg.Write(request.Family, Planner.SpreadsOf(request), [.. plan.FailedParts().Select(id => new Families.PartId(id))], options, page);
        page.Close().Line();
        PrintPieces.Write(page, "circuits", width, height);
        page.Close().Line();
    }

    private static void Order(MarkupWriter page, PlanDocument plan, Names names, TextLook look)
    {
        if (plan.Order.IsEmpty)
            return;
        Chapter(page, "order", "Order");
        page.Open("table", ("class", "cs-order")).Open("thead").Open("tr");
        bool branches = !plan.Looks.IsEmpty;
        var looks = new SheetLooks(page, plan, names);
        foreach (string head in (string[])["Got", "How many", "What", "For", "Comes in", .. branches ? ["Only if"] : Array.Empty<string>()])
            page.Leaf("th", head, ("scope", "col"));
        page.Close().Close().Line().Open("tbody").Line();
        for (int i = 0; i < plan.Order.Length; i++)
        {
            PlanOrderLine line = plan.Order[i];
            string id = $"tick-order-{SheetCircuits.Number(i + 1)}";
            page.Open("tr", [("class", branches ? "cs-wanted" : null), .. SheetLooks.Condition(line.OnlyIf, [])]);
            page.Open("td").Empty("input", ("type", "checkbox"), ("class", "cs-tick"), ("id", id)).Close();
            page.Leaf("td", PlanSentences.Quantity(line, look)).Open("td").Leaf("label", line.Item, ("for", id)).Close();
            page.Leaf("td", line.Why).Leaf("td", PlanSentences.Lead(line));
            if (branches)
            {
                page.Open("td");
                looks.Margin(line.OnlyIf, []);
                page.Close();
            }

            page.Close().Line();
        }

        page.Close().Close().Line().Close().Line();
    }

    /// <summary>Opens a chapter under its heading.</summary>
    internal static void Chapter(MarkupWriter page, string id, string heading) =>
        page.Open("section", ("id", id), ("aria-labelledby", id + "-head")).Line().Leaf("h2", heading, ("id", id + "-head")).Line();
}
