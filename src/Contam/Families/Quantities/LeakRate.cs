namespace Contam.Families.Quantities;

/// <summary>Gas that leaks, as pressure times volume in a time. Held in Pa·m³/s; the default value is 0. Equal when the numbers are.</summary>
/// <param name="PascalCubicMetresPerSecond">The number in Pa·m³/s.</param>
public readonly record struct LeakRate(double PascalCubicMetresPerSecond) : IComparable<LeakRate>
{
    /// <summary>The gas constant in J/(mol·K), exact since 2019 to the digits shown (SI brochure, 9th edition).</summary>
    private const double GasConstant = 8.314462618;

    /// <summary>The number in mbar·L/s.</summary>
    public double MillibarLitresPerSecond => PascalCubicMetresPerSecond * 10;

    /// <summary>The amount of gas in mol/s, for gas at this temperature.</summary>
    /// <param name="at">The temperature of the gas, above absolute zero.</param>
    public double MolesPerSecond(Temperature at) => PascalCubicMetresPerSecond / (GasConstant * at.Kelvin);

    /// <inheritdoc/>
    public int CompareTo(LeakRate other) => PascalCubicMetresPerSecond.CompareTo(other.PascalCubicMetresPerSecond);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(LeakRate left, LeakRate right) => left.PascalCubicMetresPerSecond < right.PascalCubicMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(LeakRate left, LeakRate right) => left.PascalCubicMetresPerSecond > right.PascalCubicMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(LeakRate left, LeakRate right) => left.PascalCubicMetresPerSecond <= right.PascalCubicMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(LeakRate left, LeakRate right) => left.PascalCubicMetresPerSecond >= right.PascalCubicMetresPerSecond;
}
