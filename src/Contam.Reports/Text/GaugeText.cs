using System.Globalization;
using Contam.Families;
using Contam.Measurement;
using Contam.Measurement.Gauging;
using Contam.Measurement.Wording;

namespace Contam.Reports.Text;

/// <summary>A verdict on readings for a person at the bench: the verdict first, then the figures, a plot, what it bears on, what next.</summary>
public static class GaugeText
{
    /// <summary>Writes the answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="family">The family of the limit, for names.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="look">How wide, and whether in colour. Figures are in the unit that the readings were given in.</param>
    public static void Write(GaugeAnswer answer, Family family, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        var names = new Names(family);
        page.Subheading($"{Word(answer)}  {names.Of(answer.Limit.Part.Value)}, {MeasureText.Of(answer.Limit.Measures)}");
        page.Paragraph(Sentence(answer.Judgement.Because + (answer.Margin.Length > 0 ? "; " + answer.Margin : "")));
        if (WhatNow(answer.Judgement.Verdict) is { } now)
            page.Paragraph(answer.Judgement.Verdict == Verdict.Marginal ? "Warning: " + char.ToLowerInvariant(now[0]) + now[1..] : now);
        if (answer.Code is { } code)
            page.Paragraph($"Code {code}.");
        page.Paragraph(LimitOf(answer.Limit, answer.Unit));
        Figures(page, answer);
        TurnPlot.Write(page, writer, answer);
        Parts(page, answer, names);
        Clauses(page, "Note", answer.Notes);
        Clauses(page, "Taken as given", answer.Assumed);
    }

    internal static string? WhatNow(Verdict verdict) => verdict switch
    {
        Verdict.Marginal => "It may be used, but it is on its way out. Measure it again after the first running hours, or renew it now.",
        Verdict.Undecided => "This does not prove it good. Measure again with a finer meter or as the limit asks, or treat it as rejected.",
        Verdict.Reject => "Not to be used as it is.",
        _ => null,
    };

    private static string Word(GaugeAnswer answer) => answer.Judgement.Verdict switch
    {
        Verdict.Good => answer.HoldsAlthoughWaterGotIn ? "GOOD, AND YET WATER GOT IN" : "GOOD",
        Verdict.Marginal => "MARGINAL",
        Verdict.Reject => "REJECT",
        _ => "UNDECIDED",
    };

    private static string LimitOf(Limit limit, ReadingUnit? unit)
    {
        string reject = limit.Reject is null ? "all else is rejected" : $"reject {Side(limit.Reject, unit)}";
        string source = limit.Source.Length > 0 ? $" ({limit.Source})" : "";
        return $"Limit {limit.Id}: good {Side(limit.Good, unit)}, {reject}{source}.";
    }

    // A limit in another unit than the readings is said in theirs too.
    private static string Side(Threshold threshold, ReadingUnit? unit) =>
        unit is null || threshold.Text.EndsWith(" " + unit.Symbol, StringComparison.Ordinal) ? threshold.Text : $"{threshold.Text} ({unit.Show(threshold.Value)})";

    private static void Figures(TextPage page, GaugeAnswer answer)
    {
        page.Heading("Figures");
        // The margins stand in the verdict's own sentence.
        foreach (GaugeFigure figure in answer.Figures.Where(figure => !figure.Name.StartsWith("marginTo", StringComparison.Ordinal)))
        {
            // What lies ten thousand times below the largest figure of the same unit is the arithmetic's, and not the meter's.
            double largest = answer.Figures.Where(other => other.Unit == figure.Unit).Max(other => Math.Abs(other.Value));
            double shown = Math.Abs(figure.Value) < 1e-4 * largest ? 0 : figure.Value;
            page.Row(2, (figure.Label, 27), ($"{Number(shown)} {figure.ShownUnit}", 17), (figure.Meaning, 0));
        }
    }

    private static void Parts(TextPage page, GaugeAnswer answer, Names names)
    {
        if (answer.Parts.IsEmpty)
            return;
        page.Heading("Bears on");
        page.Paragraph(Sentence(answer.PartsMean)[..^1] + ":");
        foreach (IGrouping<string, GaugedPart> alike in answer.Parts.GroupBy(part => part.Meaning, StringComparer.Ordinal))
            page.Row(2, (names.FoldedAtStart(alike.Select(part => part.Part.Value)), 30), (alike.Key, 0));
    }

    private static void Clauses(TextPage page, string heading, IReadOnlyCollection<string> clauses)
    {
        if (clauses.Count == 0)
            return;
        page.Heading(heading);
        foreach (string clause in clauses)
            page.Paragraph(Sentence(clause), indent: 2, lead: "-");
    }

    private static string Sentence(string clause) => char.ToUpperInvariant(clause[0]) + clause[1..] + ".";

    /// <summary>Four figures, so that nobody takes the tenth digit of a dial for real; whole numbers whole.</summary>
    internal static string Number(double value) => value == 0 || double.IsInteger(value) && Math.Abs(value) < 1e9
        ? value.ToString("0", CultureInfo.InvariantCulture)
        : decimal.TryParse(value.ToString("E3", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture, out decimal short4) && short4 != 0
            ? short4.ToString("0.##########", CultureInfo.InvariantCulture)
            : value.ToString("G4", CultureInfo.InvariantCulture);
}
