namespace Contam.Families.Quantities;

/// <summary>A temperature on the absolute scale. The default value is absolute zero. Equal when the numbers are.</summary>
/// <param name="Kelvin">The number in K, at least 0.</param>
public readonly record struct Temperature(double Kelvin) : IComparable<Temperature>
{
    /// <summary>The number in °C.</summary>
    public double Celsius => Kelvin - 273.15;

    /// <summary>A temperature from °C.</summary>
    public static Temperature FromCelsius(double celsius) => new(celsius + 273.15);

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => Kelvin.CompareTo(other.Kelvin);

    /// <summary>Whether <paramref name="left"/> is colder.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.Kelvin < right.Kelvin;

    /// <summary>Whether <paramref name="left"/> is hotter.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.Kelvin > right.Kelvin;

    /// <summary>Whether <paramref name="left"/> is not hotter.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.Kelvin <= right.Kelvin;

    /// <summary>Whether <paramref name="left"/> is not colder.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.Kelvin >= right.Kelvin;
}
