using System.Collections.Immutable;
using Contam.Plans;
using Contam.Reports.Markup;
using Contam.Reports.Text;

namespace Contam.Reports.Sheets;

/// <summary>
/// The deciding looks on the sheet: what is sure, a line for each look, and at its step its outcomes to choose from. All that the script goes by stands in
/// attributes: <c>data-look</c>, <c>data-only-if</c> and <c>data-unless</c> name looks by letters, and a sentence on what a find disproves has
/// <c>data-found</c>, <c>data-clean</c> and <c>data-void</c>.
/// </summary>
internal sealed class SheetLooks(MarkupWriter page, PlanDocument plan, Names names)
{
    private readonly LookWords words = new(plan, names);

    /// <summary>The chapter that leads the sheet; nothing for a plan without looks.</summary>
    public void Write()
    {
        if (!words.Any)
            return;
        PlanHtml.Chapter(page, "looks", "How far to go");
        page.Open("dl", ("class", "cs-far")).Leaf("dt", "SURE").Leaf("dd", words.Sure).Leaf("dt", "BY THE LOOKS").Leaf("dd", words.ByTheLooks).Close().Line();
        page.Open("ul", ("class", "cs-cautions")).Line();
        foreach (PlanLook look in plan.Looks)
        {
            page.Open("li", ("class", "cs-look"), ("data-look", look.Id), ("data-only-if", Letters(look.OnlyIf)));
            page.Leaf("a", $"LOOK {look.Id}", ("href", "#step-" + SheetCircuits.Number(look.Step)), ("class", "cs-letters"));
            page.Open("span").Text($"{words.Place(look)}. {LookWords.Due(look)}{LookWords.Find(look)}: {words.Found(look)}. Clean: {words.Clean(look)}. ");
            page.Leaf("b", "", ("class", "cs-state")).Close().Close().Line();
        }

        page.Close().Line();
        foreach (PlanDisproof disproof in plan.Disproofs.Where(one => one.Found.IsEmpty))
            Rule(disproof);
        foreach (string sentence in words.AgainstOnRecord())
            page.Leaf("p", sentence).Line();
        page.Leaf("p", words.HowToStrike).Line();
        page.Leaf("p", "", ("id", "left"), ("class", "cs-left"), ("role", "status")).Line();
        page.Close().Line();
    }

    /// <summary>The outcomes of the look that is made in a step; nothing for another step.</summary>
    public void Outcomes(PlanStep step)
    {
        foreach (PlanLook look in words.MadeIn(step))
        {
            page.Open("fieldset", ("class", "cs-outcomes")).Leaf("legend", $"Look {look.Id} came out:").Line();
            Choice(look, "clean", $"clean: {words.Clean(look)}.");
            Choice(look, "found", $"{LookWords.Find(look).ToLowerInvariant()}: {words.Found(look)}.{words.OrderFirst(look)}");
            page.Open("p", ("class", "cs-open"), ("hidden", "hidden"));
            Radio(look, "open", "cs-outcome");
            page.Text(" ").Leaf("label", "not made yet", ("for", Id(look, "open"))).Close().Line();
            foreach (string sentence in words.Against(look))
                page.Leaf("p", sentence).Line();
            foreach (PlanDisproof disproof in plan.Disproofs.Where(one => one.Found.Contains(look.Id)))
                Rule(disproof);
            page.Close().Line();
        }
    }

    /// <summary>What an element hangs on, as attributes.</summary>
    public static (string, string?)[] Condition(ImmutableArray<string> onlyIf, ImmutableArray<string> unless) => [("data-only-if", Letters(onlyIf)), ("data-unless", Letters(unless))];

    /// <summary>The letters in the margin, and room for what the script says of the step; nothing where nothing hangs on a look.</summary>
    public void Margin(ImmutableArray<string> onlyIf, ImmutableArray<string> unless)
    {
        if (LookWords.Margin(onlyIf, unless) is { Length: > 0 } letters)
            page.Text(" ").Leaf("b", letters, ("class", "cs-letters")).Text(" ").Leaf("b", "", ("class", "cs-state"));
    }

    private void Choice(PlanLook look, string outcome, string text)
    {
        page.Open("p");
        Radio(look, outcome, "cs-tick cs-outcome");
        page.Text(" ").Leaf("label", text, ("for", Id(look, outcome))).Close().Line();
    }

    private void Radio(PlanLook look, string outcome, string style) =>
        page.Empty("input", ("type", "radio"), ("class", style), ("name", "look-" + look.Id), ("id", Id(look, outcome)), ("data-look", look.Id), ("data-outcome", outcome));

    private void Rule(PlanDisproof disproof) => page.Leaf(
        "span", "", ("class", "cs-disproof"), ("hidden", "hidden"), ("data-found", Letters(disproof.Found)), ("data-clean", Letters(disproof.Clean)), ("data-void", Letters(disproof.Void))).Line();

    private static string Id(PlanLook look, string outcome) => $"look-{look.Id}-{outcome}";

    private static string? Letters(ImmutableArray<string> letters) => letters.IsEmpty ? null : string.Join(' ', letters);
}
