using System.Globalization;
using Contam.Families;
using Contam.Plans;
using Contam.StopLines;

namespace Contam.Reports.Text;

/// <summary>The stop line for a person at the bench.</summary>
public sealed class StopLineText
{
    private readonly StopLine line;
    private readonly StopLineQuestion question;
    private readonly TextPage page;
    private readonly Names names;

    private StopLineText(StopLine line, StopLineQuestion question, TextPage page)
    {
        this.line = line;
        this.question = question;
        this.page = page;
        names = new Names(question.Family);
    }

    /// <summary>Writes the line: where to look, what stays, the minutes, and what makes a look count.</summary>
    public static void Write(StopLine line, StopLineQuestion question, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(question);
        var text = new StopLineText(line, question, new TextPage(writer, look));
        text.Title();
        text.Contradictions();
        text.Looks();
        text.Stays();
        text.Sums();
        text.Careful();
        if (question is { History: { } history, WithOwnWords: { } own })
            LookHistoryText.Write(text.page, history, own, question.Debris, question.Family);
    }

    private string Debris => string.Join(" or ", question.Debris.Select(one => one.Name));

    private void Contradictions()
    {
        foreach (string sentence in ContradictionWords.Sentences(line.Contradictions, names))
            page.Paragraph(sentence);
        if (!line.Doubtful.IsEmpty)
            page.Paragraph($"No look is asked for at {Folded(line.Doubtful)}: what was found further on came past there, or may have, and a clean look would contradict it. A choice of looks that takes less may have been missed.");
    }

    private void Title()
    {
        PartId[] found = [.. question.Findings.Where(finding => finding.Found && question.Debris.Contains(finding.Debris)).Select(finding => finding.Part).Distinct()];
        string what = question.Failed.IsEmpty
            ? $"{Debris} found at {Joined(found)}"
            : FailureWords.Title(PlanFailures.Of(question.Failures.InOrderOf(question.Family), question.Debris), [.. question.Debris.Select(one => one.Name)], names.Of, page.Look);
        page.Subheading($"Stop line: {what}");
        page.Paragraph($"{question.Family.Title} ({question.Family.Id})");
        page.Paragraph(line.Looks.IsEmpty
            ? $"Looking saves nothing here: {Because(line.Silence, Debris)}. All that is reached and not cleared is treated: {Count(line.Treat.Length, "part")}."
            : $"{Count(line.Looks.Length, "look")} ({Minutes(line.Minutes.Looks)}). If {(line.Looks.Length == 1 ? "it is" : "all are")} clean, {Count(line.Clears.Length, "part")} can be left alone. Work saved: {Minutes(line.Minutes.Saved)}.");
    }

    /// <summary>Why no look is named, in words.</summary>
    internal static string Because(StopLineSilence silence, string debris) => silence switch
    {
        StopLineSilence.StandardForbids => "the shop's standard never lets a clean finding clear anything",
        StopLineSilence.NothingToSpare => "whatever is reached and not cleared has failed, was found with debris or is critical, and is treated whatever else is found",
        StopLineSilence.NowhereToLook => $"no place that the debris comes by shows {debris} well",
        StopLineSilence.FindsSpeakAgainst => $"every place that shows {debris} well lies on the way to where it was found",
        _ => "every choice of looks takes as long as what it could spare, or longer",
    };

    private void Looks()
    {
        if (line.Looks.IsEmpty)
            return;
        page.Heading("Look here, nearest to the failure first");
        for (int i = 0; i < line.Looks.Length; i++)
        {
            StopLineLook look = line.Looks[i];
            page.Paragraph($"{names.Of(look.Part.Value)} ({Minutes(look.Minutes)}){How(look.Part)}", indent: 8, lead: string.Create(CultureInfo.InvariantCulture, $"  [ ] {i + 1}"));
            if (!look.InTheWay.IsEmpty)
                page.Paragraph($"In its way, and counted: {Folded(look.InTheWay)}.", indent: 8);
            page.Paragraph(Spares(look), indent: 8);
        }

        if (!line.ClearsTogether.IsEmpty)
            page.Paragraph($"All of them clean together also spare {Folded(line.ClearsTogether)}.", indent: 8);
    }

    private string How(PartId part) => question.Family[part].Inspect is { How.Length: > 0 } look ? $": {look.How}" : "";

    private string Spares(StopLineLook look)
    {
        PartId[] beyond = [.. look.Clears.Where(part => part != look.Part)];
        bool isItself = beyond.Length < look.Clears.Length;
        return (isItself, beyond.Length) switch
        {
            (true, 0) => "Clean, it is left alone itself.",
            (true, _) => $"Clean, it is left alone itself, and so are {Folded(beyond)}.",
            (false, 0) => "Clean, it spares nothing by itself; it is critical and treated all the same.",
            _ => $"Clean, it spares {Folded(beyond)}; it is critical itself and treated all the same.",
        };
    }

    private void Stays()
    {
        page.Heading(line.Looks.IsEmpty ? "What is treated" : "What is treated although all looks are clean");
        Group(StopLineReason.Failed, "Failed");
        Group(StopLineReason.Found, "Debris found there");
        Group(StopLineReason.Critical, "Critical");
        Group(StopLineReason.BeforeTheLine, line.Looks.IsEmpty ? "The rest" : "Before the line");
        if (!line.ClearedAlready.IsEmpty)
            page.Row(2, ("Cleared already, left alone", 18), (names.FoldedAtStart(line.ClearedAlready.Select(part => part.Value)), 0));
    }

    private void Group(StopLineReason reason, string heading)
    {
        StopLinePart[] parts = [.. line.Treat.Where(part => part.Reason == reason)];
        if (parts.Length > 0)
            page.Row(2, (heading, 18), ($"{names.FoldedAtStart(parts.Select(part => part.Part.Value))} ({Minutes(parts.Sum(part => part.Minutes))})", 0));
    }

    private void Sums()
    {
        page.Heading("Work");
        if (line.Looks.IsEmpty)
        {
            page.Row(2, ("Treatment", 18), (Minutes(line.Minutes.Treatment), 0));
            page.Paragraph("At the parts themselves. What is in the way, and waiting for parts and workshops, is not counted.", indent: 2);
            return;
        }

        page.Row(2, ("Looks", 18), (Minutes(line.Minutes.Looks), 0));
        page.Row(2, ("Treatment", 18), (Minutes(line.Minutes.Treatment), 0));
        page.Row(2, ("Without looking", 18), (Minutes(line.Minutes.WithoutLooking), 0));
        page.Row(2, ("Saved", 18), (Minutes(line.Minutes.Saved), 0));
        page.Paragraph(
            "At the parts themselves. What is in the way of a look is counted with it, what is in the way of a treatment is not, so the saving is rather too low than too high. Waiting for parts and workshops is not counted.",
            indent: 2);
        if (!line.IsLeast && line.Doubtful.IsEmpty)
            page.Paragraph("Some place is on record as clean of one debris and not of the other, so a choice of looks that takes less may have been missed.", indent: 2);
    }

    private void Careful()
    {
        if (line.Looks.IsEmpty)
            return;
        page.Heading("Be careful");
        string looks = string.Join(' ', line.Looks.Select(look => $"--clean {look.Part.Value}"));
        page.Paragraph($"A clean look counts only where {Debris} that is there would have been seen: good light, every face looked at, {(question.Debris.Length == 1 ? "nothing" : "none of it")} wiped away before. In doubt it is not clean.", indent: 2);
        if (line.Looks.Length > 1)
            page.Paragraph("All of the looks, not some: each that is left out or doubtful puts what lies beyond it back on the list.", indent: 2);
        page.Paragraph($"All clean? Add {looks} and plan again.", indent: 2);
        page.Paragraph($"Found {Debris} {(line.Looks.Length == 1 ? "there" : "at one of them")}? Stop, and ask again with --found PART={question.Debris[0].Name}{(question.Debris.Length > 1 ? " or what it was" : "")}: the line then lies further out.", indent: 2);
    }

    private string Folded(IEnumerable<PartId> parts) => names.Folded(parts.Select(part => part.Value));

    private string Joined(IEnumerable<PartId> parts) => string.Join(", ", parts.Select(part => names.Of(part.Value)));

    private static string Count(int count, string word) => string.Create(CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    // From two hours on a person thinks in hours.
    private static string Minutes(double minutes) => minutes < 120
        ? string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min")
        : string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min, {minutes / 60:0.0} h");
}
