namespace Contam.Families.Quantities;

/// <summary>A velocity. Held in m/s; the default value is 0. Equal when the numbers are.</summary>
/// <param name="MetresPerSecond">The number in m/s.</param>
public readonly record struct Velocity(double MetresPerSecond) : IComparable<Velocity>
{
    /// <inheritdoc/>
    public int CompareTo(Velocity other) => MetresPerSecond.CompareTo(other.MetresPerSecond);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Velocity left, Velocity right) => left.MetresPerSecond < right.MetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Velocity left, Velocity right) => left.MetresPerSecond > right.MetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Velocity left, Velocity right) => left.MetresPerSecond <= right.MetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Velocity left, Velocity right) => left.MetresPerSecond >= right.MetresPerSecond;
}
