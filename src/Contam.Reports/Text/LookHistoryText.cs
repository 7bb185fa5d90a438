using System.Collections.Immutable;
using System.Globalization;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>On how many looks of the shop's own an answer rests, in words.</summary>
internal static class LookHistoryText
{
    /// <summary>Writes the section.</summary>
    /// <param name="page">Where it goes.</param>
    /// <param name="history">The looks.</param>
    /// <param name="family">The family with its own words.</param>
    /// <param name="debris">The debris that was asked about.</param>
    /// <param name="earned">The family with the words that the looks have earned, where those count; else <c>null</c>.</param>
    public static void Write(TextPage page, LookHistory history, Family family, ImmutableArray<Debris> debris, Family? earned = null)
    {
        var names = new Names(family);
        string what = string.Join(" or ", debris.Select(one => one.Name));
        int looks = history.Places.Sum(place => place.Count.Looks);
        page.Heading("The shop's own looks");
        page.Paragraph(looks == 0
            ? $"No job of this family has a look for {what} that says how surely one shows it. The words of the family stand."
            : string.Create(CultureInfo.InvariantCulture, $"This rests on {Counted(looks, "look")} for {what} in {Counted(history.Jobs, "job")} of this family. Beside them each word (good, fair, poor) counts as {LookHistory.WordWorth} looks."), indent: 2);
        foreach (PlaceCount place in history.Places)
        {
            Part part = family[place.Part];
            string word = part.Inspect is { } look ? $"the family says {Word(look)}" : "the family names no look";
            string now = earned?[place.Part].Inspect is { } counts && counts.Shows != part.Inspect!.Shows ? $", counts as {Word(counts)} here" : "";
            page.Row(2, (names.Of(place.Part.Value), 26), (string.Create(
                CultureInfo.InvariantCulture,
                $"{place.Debris.Name} found in {place.Count.Found} of {place.Count.Looks}; {word}; together {SuspectWords.Percent(history.ChanceToShow(part, place.Debris))}{now}"), 0));
        }

        if (earned is not null && history.Places.Any(place => IsRaised(family[place.Part], earned[place.Part])))
            page.Paragraph("A plan clears by the word of the family. Before you plan with a look that counts for more here than its word, write the better word into the family file, with the reason.", indent: 2);
    }

    private static bool IsRaised(Part own, Part earned) => own.Inspect is { } before && earned.Inspect is { } now && now.Shows == Shows.Good && before.Shows != Shows.Good;

    private static string Counted(int count, string word) => string.Create(CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    private static string Word(Inspection look) => look.Shows.ToString().ToLowerInvariant();
}
