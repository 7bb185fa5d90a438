namespace Contam.Families.Quantities;

/// <summary>An angle. Held in radians; the default value is 0. Equal when the numbers are, so a whole turn is not 0: see <see cref="WithinTurn"/>.</summary>
/// <param name="Radians">The number in radians.</param>
public readonly record struct Angle(double Radians) : IComparable<Angle>
{
    /// <summary>The number in degrees.</summary>
    public double Degrees => Radians * (180 / Math.PI);

    /// <summary>An angle from degrees.</summary>
    public static Angle FromDegrees(double degrees) => new(degrees * (Math.PI / 180));

    /// <summary>The same direction from 0 (closed) to one turn (open).</summary>
    public Angle WithinTurn() => new(((Radians % Math.Tau) + Math.Tau) % Math.Tau);

    /// <inheritdoc/>
    public int CompareTo(Angle other) => Radians.CompareTo(other.Radians);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Angle left, Angle right) => left.Radians < right.Radians;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Angle left, Angle right) => left.Radians > right.Radians;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Angle left, Angle right) => left.Radians <= right.Radians;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Angle left, Angle right) => left.Radians >= right.Radians;
}
