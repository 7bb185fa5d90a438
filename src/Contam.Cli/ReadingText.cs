using System.Collections.Immutable;
using Contam.Families.Quantities;
using Contam.Measurement;

namespace Contam.Cli;

/// <summary>One reading as it was typed.</summary>
/// <param name="Place">What stands before its last colon: a place round the turn; <c>null</c> for none.</param>
/// <param name="Si">The figure in the SI unit, with its sign.</param>
/// <param name="Unit">Its unit.</param>
internal sealed record ReadingText(string? Place, double Si, ReadingUnit Unit)
{
    /// <summary>The readings, all in one unit.</summary>
    /// <param name="texts">As typed, at least one.</param>
    /// <param name="dimension">What they measure.</param>
    /// <param name="maySink">Whether a minus may stand before a figure.</param>
    public static ImmutableArray<ReadingText> All(IReadOnlyList<string> texts, Dimension dimension, bool maySink)
    {
        ImmutableArray<ReadingText> readings = [.. texts.Select((text, i) => One(i, text, dimension, maySink))];
        foreach (ReadingText reading in readings)
        {
            if (reading.Unit.PerSi != readings[0].Unit.PerSi)
                throw new WrongUseException($"the readings are in {readings[0].Unit.Symbol} and {reading.Unit.Symbol}. Write all of them in one unit, as the meter shows them.");
        }

        return readings;
    }

    /// <summary>What the unit of a reading measures; <c>null</c> where it has none that is known.</summary>
    public static Dimension? DimensionOf(string text)
    {
        string figure = Unsigned(AfterPlace(text));
        return UnitTable.Find(figure[NumberEnd(figure)..].Trim())?.Dimension;
    }

    /// <summary>The unit of a figure without sign that was read as a quantity.</summary>
    public static ReadingUnit UnitOf(string figure, Dimension dimension) => ReadingUnit.Find(figure[NumberEnd(figure)..].Trim(), dimension)!;

    private static ReadingText One(int index, string text, Dimension dimension, bool maySink)
    {
        string figure = AfterPlace(text);
        bool sinks = figure.StartsWith('-') || figure.StartsWith('\u2212');
        string plain = SpelledOut(maySink || figure.StartsWith('+') ? Unsigned(figure) : figure);
        double si = Typed.Si(FormattableString.Invariant($"reading {index + 1}"), plain, dimension);
        return new ReadingText(text.Contains(':', StringComparison.Ordinal) ? text[..text.LastIndexOf(':')] : null, sinks ? -si : si, UnitOf(plain, dimension));
    }

    private static string AfterPlace(string text) => text[(text.LastIndexOf(':') + 1)..].Trim();

    private static string Unsigned(string figure) => figure.Length > 0 && figure[0] is '-' or '+' or '\u2212' ? figure[1..] : figure;

    // The unit table has the short form alone.
    private static string SpelledOut(string figure)
    {
        foreach (string spelling in (ReadOnlySpan<string>)["inches", "inch", "\""])
        {
            if (figure.EndsWith(spelling, StringComparison.Ordinal))
                return figure[..^spelling.Length] + "in";
        }

        return figure;
    }

    private static int NumberEnd(string figure)
    {
        int at = 0;
        while (at < figure.Length && (char.IsAsciiDigit(figure[at]) || figure[at] == '.'))
            at++;
        int exponent = at + 1 < figure.Length && figure[at] is 'e' or 'E' ? at + (figure[at + 1] is '+' or '-' ? 2 : 1) : figure.Length;
        if (exponent >= figure.Length || !char.IsAsciiDigit(figure[exponent]))
            return at;
        at = exponent;
        while (at < figure.Length && char.IsAsciiDigit(figure[at]))
            at++;
        return at;
    }
}
