namespace Contam.Families.Quantities;

/// <summary>A pressure, or a difference of pressures. Held in Pa; the default value is 0. Equal when the numbers are.</summary>
/// <param name="Pascals">The number in Pa.</param>
public readonly record struct Pressure(double Pascals) : IComparable<Pressure>
{
    /// <summary>The number in bar.</summary>
    public double Bar => Pascals * 1e-5;

    /// <summary>The number in kPa.</summary>
    public double Kilopascals => Pascals * 1e-3;

    /// <inheritdoc/>
    public int CompareTo(Pressure other) => Pascals.CompareTo(other.Pascals);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Pressure left, Pressure right) => left.Pascals < right.Pascals;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Pressure left, Pressure right) => left.Pascals > right.Pascals;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Pressure left, Pressure right) => left.Pascals <= right.Pascals;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Pressure left, Pressure right) => left.Pascals >= right.Pascals;
}
