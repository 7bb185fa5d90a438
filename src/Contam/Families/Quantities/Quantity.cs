using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Contam.Families.Quantities;

/// <summary>
/// Reads quantities as people write them: a number, at most one space, a unit (<c>25 um</c>, <c>0.7bar</c>, <c>1.5e3 L/h</c>).
/// The number is ASCII digits, if need be with a point and more digits, if need be with an exponent. Only a temperature may be negative.
/// The arithmetic is decimal, so that what has a short decimal form in one unit has its exact value in another.
/// </summary>
public static class Quantity
{
    /// <summary>Texts longer than this are not looked at.</summary>
    private const int LongestText = 64;

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">The text, without space around it.</param>
    /// <param name="dimension">What it must measure.</param>
    /// <param name="si">Its value in the SI unit of <paramref name="dimension"/>; 0 where it is not one.</param>
    /// <param name="error">Why it is not one; <c>null</c> where it is.</param>
    /// <returns>Whether it is one.</returns>
    public static bool TryParse(string text, Dimension dimension, out double si, out QuantityError? error)
    {
        bool read = TryParseExactly(text, dimension, out decimal exact, out error);
        si = (double)exact;
        return read;
    }

    /// <summary>Reads a length.</summary>
    public static bool TryParse(string text, out Length length, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.Length, out decimal si, out error);
        length = new Length((double)si);
        return read;
    }

    /// <summary>Reads a volume.</summary>
    public static bool TryParse(string text, out Volume volume, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.Volume, out decimal si, out error);
        volume = new Volume((double)si);
        return read;
    }

    /// <summary>Reads a pressure.</summary>
    public static bool TryParse(string text, out Pressure pressure, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.Pressure, out decimal si, out error);
        pressure = new Pressure((double)si);
        return read;
    }

    /// <summary>Reads a kinematic viscosity.</summary>
    public static bool TryParse(string text, out KinematicViscosity viscosity, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.KinematicViscosity, out decimal si, out error);
        viscosity = new KinematicViscosity((double)si);
        return read;
    }

    /// <summary>Reads a density.</summary>
    public static bool TryParse(string text, out Density density, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.Density, out decimal si, out error);
        density = new Density((double)si);
        return read;
    }

    /// <summary>Reads a temperature.</summary>
    public static bool TryParse(string text, out Temperature temperature, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.Temperature, out decimal si, out error);
        temperature = new Temperature((double)si);
        return read;
    }

    /// <summary>Reads a flow.</summary>
    public static bool TryParse(string text, out FlowRate flow, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = TryParseExactly(text, Dimension.FlowRate, out decimal si, out error);
        flow = new FlowRate((double)si);
        return read;
    }

    /// <summary>Reads a time; at most some 29 000 years.</summary>
    public static bool TryParse(string text, out TimeSpan time, [NotNullWhen(false)] out QuantityError? error)
    {
        time = TimeSpan.Zero;
        if (!TryParseExactly(text, Dimension.Duration, out decimal seconds, out error))
            return false;
        decimal ticks = seconds <= TimeSpan.MaxValue.Ticks / TimeSpan.TicksPerSecond ? decimal.Round(seconds * TimeSpan.TicksPerSecond) : decimal.MaxValue;
        if (ticks > long.MaxValue)
        {
            error = new QuantityError(QuantityFault.OutOfRange, 0);
            return false;
        }

        time = TimeSpan.FromTicks((long)ticks);
        return true;
    }

    /// <summary>The value in the SI unit as a decimal number, as the text has it.</summary>
    internal static bool TryParseExactly(string text, Dimension dimension, out decimal si, [NotNullWhen(false)] out QuantityError? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        si = 0;
        if (text.Length == 0)
            return Fails(QuantityFault.Empty, 0, out error);
        if (text.Length > LongestText)
            return Fails(QuantityFault.NotANumber, 0, out error);

        int end = NumberEnd(text);
        if (end < 0)
            return Fails(QuantityFault.NotANumber, 0, out error);
        if (TryFindBadNumber(text, end, out error))
            return false;

        int unitStart = end < text.Length && text[end] == ' ' ? end + 1 : end;
        if (TryFindBadUnit(text, unitStart, dimension, out Unit? unit, out error))
            return false;
        if (text[0] == '-' && dimension != Dimension.Temperature)
            return Fails(QuantityFault.Negative, 0, out error);

        return TryConvert(text[..end], unit, out si, out error);
    }

    /// <summary>Where the number that the text begins with ends, or -1 where it begins with none.</summary>
    private static int NumberEnd(string text)
    {
        int at = text[0] == '-' ? 1 : 0;
        int whole = DigitsEnd(text, at);
        if (whole == at)
            return -1;
        at = whole;
        if (at < text.Length && text[at] == '.' && DigitsEnd(text, at + 1) is int fraction && fraction > at + 1)
            at = fraction;
        if (at < text.Length && text[at] is 'e' or 'E')
        {
            int sign = at + 1 < text.Length && text[at + 1] is '+' or '-' ? at + 2 : at + 1;
            int exponent = DigitsEnd(text, sign);
            if (exponent > sign)
                at = exponent;
        }

        return at;
    }

    private static int DigitsEnd(string text, int at)
    {
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return at;
    }

    private static bool TryFindBadNumber(string text, int end, [NotNullWhen(true)] out QuantityError? error)
    {
        error = null;
        if (end == text.Length)
            return false;
        bool digitFollows = end + 1 < text.Length && char.IsAsciiDigit(text[end + 1]);
        if (text[end] == ',')
            error = new QuantityError(QuantityFault.DecimalComma, end);
        else if (text[end] is '.')
            error = new QuantityError(digitFollows ? QuantityFault.GroupedDigits : QuantityFault.NotANumber, end);
        else if (digitFollows && text[end] is ' ' or '\'' or '_' or '\u00A0' or '\u202F')
            error = new QuantityError(QuantityFault.GroupedDigits, end);
        return error is not null;
    }

    private static bool TryFindBadUnit(
        string text, int start, Dimension dimension, [NotNullWhen(false)] out Unit? unit, [NotNullWhen(true)] out QuantityError? error)
    {
        unit = null;
        error = null;
        string symbol = text[start..];
        if (symbol.Trim().Length == 0)
            error = new QuantityError(QuantityFault.MissingUnit, text.Length);
        else if (symbol != symbol.Trim())
            error = new QuantityError(QuantityFault.ExtraSpace, char.IsWhiteSpace(symbol[0]) ? start : start + symbol.TrimEnd().Length);
        else if (UnitTable.Find(symbol) is not Unit found)
            error = new QuantityError(QuantityFault.UnknownUnit, start, symbol, NearUnit(symbol, dimension));
        else if (found.Dimension != dimension)
            error = new QuantityError(QuantityFault.WrongDimension, start, symbol);
        else
            unit = found;
        return unit is null;
    }

    private static bool TryConvert(string number, Unit unit, out decimal si, [NotNullWhen(false)] out QuantityError? error)
    {
        si = 0;
        const NumberStyles Strict = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (!decimal.TryParse(number, Strict, CultureInfo.InvariantCulture, out decimal said))
            return Fails(QuantityFault.OutOfRange, 0, out error);
        try
        {
            si = unit.ToSi(said);
        }
        catch (OverflowException)
        {
            return Fails(QuantityFault.OutOfRange, 0, out error);
        }

        // A number that is not 0 but too small to hold must not turn into 0: a passage of 0 lets nothing through.
        bool vanished = si == 0 && HasDigitAboveZero(number);
        bool belowAbsoluteZero = si < 0;
        if (unit.Dimension == Dimension.Temperature ? belowAbsoluteZero : vanished)
        {
            si = 0;
            return Fails(QuantityFault.OutOfRange, 0, out error);
        }

        error = null;
        return true;
    }

    private static bool HasDigitAboveZero(string number)
    {
        int exponent = number.AsSpan().IndexOfAny('e', 'E');
        return number.AsSpan(0, exponent < 0 ? number.Length : exponent).ContainsAnyInRange('1', '9');
    }

    private static string? NearUnit(string symbol, Dimension dimension)
    {
        IEnumerable<string> fitting = UnitTable.Of(dimension).Select(unit => unit.Symbol);
        return fitting.FirstOrDefault(unit => string.Equals(unit, symbol, StringComparison.OrdinalIgnoreCase)) ?? NearName.Of(symbol, fitting);
    }

    private static bool Fails(QuantityFault fault, int offset, out QuantityError error)
    {
        error = new QuantityError(fault, offset);
        return false;
    }
}
