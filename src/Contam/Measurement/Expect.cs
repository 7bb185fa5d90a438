using System.Globalization;

namespace Contam.Measurement;

/// <summary>
/// The questions that every sum asks of its figures, and how the answers are worded. Each gives <c>null</c> where the
/// figure will do. Not-a-number never does; infinity never does.
/// </summary>
internal static class Expect
{
    /// <summary>The longest time that is answered in minutes; what takes longer is not a job but a mistake in the figures.</summary>
    private static readonly TimeSpan LongestTime = TimeSpan.FromDays(3650);

    /// <summary>Above 0 and finite.</summary>
    internal static Fault? Positive(string what, double value, string unit) =>
        value > 0 && double.IsFinite(value) ? null : Wrong(what, value, unit, $"more than 0{Spaced(unit)} was expected");

    /// <summary>At least 0 and finite.</summary>
    internal static Fault? NotNegative(string what, double value, string unit) =>
        value >= 0 && double.IsFinite(value) ? null : Wrong(what, value, unit, $"at least 0{Spaced(unit)} was expected");

    /// <summary>At least <paramref name="least"/>, at most <paramref name="most"/>.</summary>
    internal static Fault? Between(string what, double value, double least, double most, string unit) =>
        value >= least && value <= most ? null : Wrong(what, value, unit, $"{Show(least)} to {Show(most)}{Spaced(unit)} was expected");

    /// <summary>Any number.</summary>
    internal static Fault? Finite(string what, double value, string unit) =>
        double.IsFinite(value) ? null : Wrong(what, value, unit, "a number was expected");

    /// <summary>A figure that was worked out and is a number, else the fault that the figures given lead beyond what can be computed.</summary>
    internal static Fault? Computable(string what, double value) =>
        double.IsFinite(value) ? null : new Fault($"{what} comes out beyond what can be computed from these figures; look at their units");

    /// <summary>A time in seconds as a time, where it is of a length that somebody could wait.</summary>
    internal static Sum<TimeSpan> Time(string what, double seconds)
    {
        if (Computable(what, seconds) is { } fault)
            return fault;
        return seconds <= LongestTime.TotalSeconds
            ? TimeSpan.FromSeconds(seconds)
            : new Fault($"{what} comes out longer than ten years; look at the flow and the volume");
    }

    /// <summary>A number for people: six figures at most, no trailing zeros, the same in every culture; powers of ten only where it would be very long.</summary>
    internal static string Show(double value)
    {
        string figures = value.ToString("E5", CultureInfo.InvariantCulture);
        bool isShort = value == 0 || (Math.Abs(value) >= 1e-6 && Math.Abs(value) < 1e12);
        return isShort
            ? decimal.Parse(figures, NumberStyles.Float, CultureInfo.InvariantCulture).ToString("0.###########", CultureInfo.InvariantCulture)
            : value.ToString("G6", CultureInfo.InvariantCulture);
    }

    /// <summary>How many of something: <c>1 reading</c>, <c>2 readings</c>.</summary>
    internal static string Count(int count, string one, string several) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : several)}");

    private static Fault Wrong(string what, double value, string unit, string expected)
    {
        string given = double.IsNaN(value) ? "not a number" : double.IsInfinity(value) ? "infinite" : Show(value) + Spaced(unit);
        return new Fault($"{what} is {given}; {expected}");
    }

    private static string Spaced(string unit) => unit.Length == 0 ? "" : " " + unit;
}
