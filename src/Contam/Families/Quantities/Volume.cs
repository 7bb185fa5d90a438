namespace Contam.Families.Quantities;

/// <summary>A volume. Held in m³; the default value is 0. Equal when the numbers are.</summary>
/// <param name="CubicMetres">The number in m³.</param>
public readonly record struct Volume(double CubicMetres) : IComparable<Volume>
{
    /// <summary>The number in L.</summary>
    public double Litres => CubicMetres * 1e3;

    /// <inheritdoc/>
    public int CompareTo(Volume other) => CubicMetres.CompareTo(other.CubicMetres);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Volume left, Volume right) => left.CubicMetres < right.CubicMetres;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Volume left, Volume right) => left.CubicMetres > right.CubicMetres;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Volume left, Volume right) => left.CubicMetres <= right.CubicMetres;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Volume left, Volume right) => left.CubicMetres >= right.CubicMetres;
}
