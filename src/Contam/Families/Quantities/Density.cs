namespace Contam.Families.Quantities;

/// <summary>A density. Held in kg/m³; the default value is 0. Equal when the numbers are.</summary>
/// <param name="KilogramsPerCubicMetre">The number in kg/m³.</param>
public readonly record struct Density(double KilogramsPerCubicMetre) : IComparable<Density>
{
    /// <inheritdoc/>
    public int CompareTo(Density other) => KilogramsPerCubicMetre.CompareTo(other.KilogramsPerCubicMetre);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Density left, Density right) => left.KilogramsPerCubicMetre < right.KilogramsPerCubicMetre;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Density left, Density right) => left.KilogramsPerCubicMetre > right.KilogramsPerCubicMetre;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Density left, Density right) => left.KilogramsPerCubicMetre <= right.KilogramsPerCubicMetre;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Density left, Density right) => left.KilogramsPerCubicMetre >= right.KilogramsPerCubicMetre;
}
