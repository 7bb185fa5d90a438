using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>How far to go, for a person at the bench: what is sure, each deciding look with what to do for each outcome, and what hangs on it.</summary>
public sealed class LooksText
{
    private readonly LooksAnswer answer;
    private readonly PlanRequest request;
    private readonly TextPage page;
    private readonly Names names;

    private LooksText(LooksAnswer answer, PlanRequest request, TextPage page)
    {
        this.answer = answer;
        this.request = request;
        this.page = page;
        names = new Names(request.Family);
    }

    /// <summary>Writes the answer.</summary>
    public static void Write(LooksAnswer answer, PlanRequest request, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(request);
        var text = new LooksText(answer, request, new TextPage(writer, look));
        text.Title();
        text.Headline();
        text.Looks();
        text.Parts();
        text.Limits();
    }

    private string AnyDebris => string.Join(" or ", request.Debris.Distinct().Select(one => one.Name));

    private void Title()
    {
        ImmutableArray<Debris> asked = [.. request.Debris.Distinct()];
        string what = request.Failed.IsEmpty ? $"{AnyDebris} found" : FailureWords.Title(PlanFailures.Of(request.Failures.InOrderOf(request.Family), asked), [.. asked.Select(one => one.Name)], names.Of, page.Look, " or ");
        page.Subheading($"How far to go: {what}");
        page.Paragraph($"{request.Family.Title} ({request.Family.Id})");
    }

    private void Headline()
    {
        LooksMinutes minutes = answer.Minutes;
        PartOfLooks[] sure = [.. answer.Parts.Where(part => part.When is { OnlyIf.IsEmpty: true })];
        PartOfLooks[] hanging = [.. answer.Parts.Where(part => part.When is { OnlyIf.IsEmpty: false })];
        page.Row(0, ("SURE", 13), ($"{Count(sure.Length, "part")}, {Hours(minutes.AllClean)}{(answer.Looks.IsEmpty ? "" : ", looks included")}", 0));
        if (answer.Looks.IsEmpty)
            page.Paragraph("No look decides anything that pays: all of this is treated.");
        else
            page.Row(0, ("BY THE LOOKS", 13), ($"{Count(hanging.Length, "part")} more, at most {Hours(minutes.Most)} in all; {Hours(minutes.Expected)} to be expected", 0));
    }

    private void Looks()
    {
        if (answer.Looks.IsEmpty)
            return;
        page.Heading("Look here, in this order");
        foreach (LookToMake look in answer.Looks)
        {
            string only = look.When.OnlyIf.IsEmpty ? "" : $"Only if debris was found at {OneOf(look.When)}. ";
            page.Paragraph($"{names.FoldedAtStart(look.Places)} ({Minutes(look.Minutes)}){How(look)}", indent: 8, lead: $"LOOK {look.Letter}");
            page.Paragraph($"{only}Clean: strike {look.Letter}. {First(string.Join(" or ", look.Debris))} found, or in doubt: do the work marked {look.Letter} as well, up to {Hours(look.MinutesHanging)}.", indent: 8);
        }
    }

    private string How(LookToMake look)
    {
        string[] ways = [.. look.Places.Select(place => request.Family[new PartId(place)].Inspect?.How ?? "").Where(how => how.Length > 0).Distinct(StringComparer.Ordinal)];
        return ways.Length == 1 ? $": {ways[0]}" : "";
    }

    private void Parts()
    {
        page.Heading("What each part needs");
        foreach (IGrouping<string, PartOfLooks> group in answer.Parts.Where(part => part.When is not null).GroupBy(Told, StringComparer.Ordinal))
            page.Row(2, (MarginOf(group.First().When!), 8), ($"{names.FoldedAtStart(group.Select(part => part.Id))}: {Treatments(group.First())}", 0));
        string[] cleared = [.. answer.Parts.Where(part => part.When is null).Select(part => part.Id)];
        if (cleared.Length > 0)
            page.Row(2, ("cleared", 8), ($"{names.FoldedAtStart(cleared)}: left alone on what was seen before", 0));
    }

    private static string Told(PartOfLooks part) => MarginOf(part.When!) + "|" + Treatments(part);

    private static string MarginOf(LookCondition when) => when.OnlyIf.IsEmpty ? "sure" : when.ToString();

    private static string Treatments(PartOfLooks part) => string.Join(", ", part.Treatments.Select(one =>
    {
        string treatment = one.Treatment.ToString().ToLowerInvariant();
        bool isAsThePart = one.When.Equals(part.When!) || (one.When.IsAlways && part.When!.IsAlways);
        return isAsThePart ? treatment : $"{treatment} ({(one.When.IsAlways ? "always" : one.When.ToString())})";
    }));

    private void Limits()
    {
        page.Paragraph("Every part that debris could have reached then is treated, whatever the looks show. A look that was not made or is in doubt counts as found.");
        page.Paragraph(answer.Chosen switch
        {
            LooksChosen.Named => "These looks were named; what hangs on them is exact.",
            LooksChosen.OfAll => $"Chosen for the least work to be expected, out of {Count(answer.PlacesThatCount, "place")} where a clean look counts. How often debris passes on is common practice, no source: it ranks looks and spares nothing.",
            _ => $"The best of a search over {Count(answer.PlacesThatCount, "place")} where a clean look counts; another choice may be expected to take less. How often debris passes on is common practice, no source: it ranks looks and spares nothing.",
        });
        page.Paragraph("Hours are for looks and treatments with taking off and refitting; what is only in the way of a treatment, making safe and proving come on top. The plan has them all.");
    }

    private static string OneOf(LookCondition when) => string.Join(" or ", when.OnlyIf.Select(LookCondition.LetterOf));

    private static string First(string words) => words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words;

    private static string Count(int count, string word) => string.Create(CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    private static string Minutes(double minutes) => minutes < 120 ? string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min") : Hours(minutes);

    private static string Hours(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60:0.0} h");
}
