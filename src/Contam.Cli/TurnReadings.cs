using System.Collections.Immutable;
using System.Globalization;
using Contam.Families.Quantities;
using Contam.Measurement.Gauging;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>Readings round a turn: places as hours on a clock, in degrees, or none for evenly spread.</summary>
internal static class TurnReadings
{
    private const string Forms = "Write 12:0.02mm 3:0.05mm for hours on a clock, 90deg:0.02mm for degrees, or the readings alone where they are evenly spread.";

    public static (ImmutableArray<RunOutReading> Readings, TurnMarks Marks) Of(ImmutableArray<ReadingText> typed)
    {
        TurnMarks[] marks = [.. typed.Select(reading => MarkOf(reading.Place))];
        if (marks.Distinct().Count() > 1)
            throw new WrongUseException($"the places round the turn are said in more than one way. {Forms}");
        return (
            [.. typed.Select((reading, i) => new RunOutReading(Angle.FromDegrees(DegreesOf(reading.Place, i, typed.Length)), new Length(reading.Si)))],
            marks[0]);
    }

    private static TurnMarks MarkOf(string? place) =>
        place is null ? TurnMarks.Even : WithoutDegrees(place) is null ? TurnMarks.Clock : TurnMarks.Degrees;

    private static double DegreesOf(string? place, int index, int count)
    {
        if (place is null)
            return 360.0 * index / count;
        if (WithoutDegrees(place) is { } degrees)
            return NumberOf(degrees, -3600, 3600) ?? throw Unknown(place, "degrees were expected");
        string[] hourAndMinute = place.Split(':');
        double? hour = NumberOf(hourAndMinute[0], 0, 12);
        double? minute = hourAndMinute.Length == 1 ? 0 : hourAndMinute.Length == 2 ? NumberOf(hourAndMinute[1], 0, 59) : null;
        return hour is { } h && minute is { } m ? (h + (m / 60)) % 12 * 30 : throw Unknown(place, "an hour from 12 round to 12 was expected");
    }

    private static double? NumberOf(string text, double least, double most) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most ? value : null;

    private static string? WithoutDegrees(string place)
    {
        foreach (string unit in (ReadOnlySpan<string>)["degrees", "deg", "°"])
        {
            if (place.EndsWith(unit, StringComparison.Ordinal))
                return place[..^unit.Length].TrimEnd();
        }

        return null;
    }

    private static WrongUseException Unknown(string place, string expected) =>
        new($"the place {Wording.Quoted(place)} is not one: {expected}. {Forms}");
}
