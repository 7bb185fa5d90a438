namespace Contam.Families.Quantities;

/// <summary>A volume in a time. Held in m³/s; the default value is 0. Equal when the numbers are.</summary>
/// <param name="CubicMetresPerSecond">The number in m³/s.</param>
public readonly record struct FlowRate(double CubicMetresPerSecond) : IComparable<FlowRate>
{
    /// <summary>The number in L/min.</summary>
    public double LitresPerMinute => CubicMetresPerSecond * 60000;

    /// <inheritdoc/>
    public int CompareTo(FlowRate other) => CubicMetresPerSecond.CompareTo(other.CubicMetresPerSecond);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(FlowRate left, FlowRate right) => left.CubicMetresPerSecond < right.CubicMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(FlowRate left, FlowRate right) => left.CubicMetresPerSecond > right.CubicMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(FlowRate left, FlowRate right) => left.CubicMetresPerSecond <= right.CubicMetresPerSecond;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(FlowRate left, FlowRate right) => left.CubicMetresPerSecond >= right.CubicMetresPerSecond;
}
