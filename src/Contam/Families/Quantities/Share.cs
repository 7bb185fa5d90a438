namespace Contam.Families.Quantities;

/// <summary>A part of a whole: of one, in percent, or in parts per million. Held as a fraction of 1; the default value is 0. Equal when the numbers are.</summary>
/// <param name="OfOne">The number as a fraction of 1.</param>
public readonly record struct Share(double OfOne) : IComparable<Share>
{
    /// <summary>The number in %.</summary>
    public double Percent => OfOne * 100;

    /// <summary>The number in parts per million.</summary>
    public double PartsPerMillion => OfOne * 1e6;

    /// <summary>A share from %.</summary>
    public static Share FromPercent(double percent) => new(percent / 100);

    /// <summary>A share from parts per million.</summary>
    public static Share FromPartsPerMillion(double partsPerMillion) => new(partsPerMillion / 1e6);

    /// <inheritdoc/>
    public int CompareTo(Share other) => OfOne.CompareTo(other.OfOne);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(Share left, Share right) => left.OfOne < right.OfOne;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(Share left, Share right) => left.OfOne > right.OfOne;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(Share left, Share right) => left.OfOne <= right.OfOne;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(Share left, Share right) => left.OfOne >= right.OfOne;
}
