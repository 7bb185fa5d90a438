namespace Contam.Families.Quantities;

/// <summary>A kinematic viscosity. Held in m²/s; the default value is 0. Equal when the numbers are.</summary>
/// <param name="SquareMetresPerSecond">The number in m²/s.</param>
public readonly record struct KinematicViscosity(double SquareMetresPerSecond) : IComparable<KinematicViscosity>
{
    /// <summary>The number in cSt (mm²/s).</summary>
    public double Centistokes => SquareMetresPerSecond * 1e6;

    /// <inheritdoc/>
    public int CompareTo(KinematicViscosity other) => SquareMetresPerSecond.CompareTo(other.SquareMetresPerSecond);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(KinematicViscosity left, KinematicViscosity right) => left.SquareMetresPerSecond < right.SquareMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(KinematicViscosity left, KinematicViscosity right) => left.SquareMetresPerSecond > right.SquareMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(KinematicViscosity left, KinematicViscosity right) => left.SquareMetresPerSecond <= right.SquareMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(KinematicViscosity left, KinematicViscosity right) => left.SquareMetresPerSecond >= right.SquareMetresPerSecond;
}
