namespace Contam.Families.Quantities;

/// <summary>A length. Held in m; the default value is 0. Equal when the numbers are.</summary>
/// <param name="Metres">The number in m.</param>
public readonly record struct Length(double Metres) : IComparable<Length>
{
    /// <summary>The number in mm.</summary>
    public double Millimetres => Metres * 1e3;

    /// <summary>The number in µm.</summary>
    public double Micrometres => Metres * 1e6;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Metres.CompareTo(other.Metres);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Length left, Length right) => left.Metres < right.Metres;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Length left, Length right) => left.Metres > right.Metres;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Length left, Length right) => left.Metres <= right.Metres;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Length left, Length right) => left.Metres >= right.Metres;
}
