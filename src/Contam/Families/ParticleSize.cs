using System.Diagnostics.CodeAnalysis;
using Contam.Families.Quantities;

namespace Contam.Families;

/// <summary>
/// The size of a particle, or the largest that something lets on, in µm: from 0 (nothing gets on) to unlimited.
/// The default value is 0. Never negative, never NaN.
/// </summary>
public readonly record struct ParticleSize : IComparable<ParticleSize>
{
    private ParticleSize(double micrometres) => Micrometres = micrometres;

    /// <summary>Any particle at all.</summary>
    public static ParticleSize Unlimited { get; } = new(double.PositiveInfinity);

    /// <summary>No particle.</summary>
    public static ParticleSize Zero { get; }

    /// <summary>The size in µm; positive infinity for unlimited.</summary>
    public double Micrometres { get; }

    /// <summary>Whether there is no upper size.</summary>
    public bool IsUnlimited => double.IsPositiveInfinity(Micrometres);

    /// <summary>A size from µm.</summary>
    /// <param name="micrometres">At least 0; positive infinity for unlimited.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative or not a number.</exception>
    public static ParticleSize FromMicrometres(double micrometres)
    {
        if (!(micrometres >= 0))
            throw new ArgumentOutOfRangeException(nameof(micrometres), micrometres, "A particle size is at least 0 µm.");
        return new ParticleSize(micrometres);
    }

    /// <summary>Reads a length as a particle size, exact in µm.</summary>
    /// <param name="text">As people write it, for instance <c>25 um</c>.</param>
    /// <param name="size">The size; zero where it is not one.</param>
    /// <param name="error">Why it is not one; <c>null</c> where it is.</param>
    /// <returns>Whether it is one.</returns>
    public static bool TryParse(string text, out ParticleSize size, [NotNullWhen(false)] out QuantityError? error)
    {
        bool read = Quantity.TryParseExactly(text, Dimension.Length, out decimal metres, out error);
        // A length that decimal can hold in metres may be too large to hold in µm; as a double it fits.
        size = metres < 1e20m ? FromMicrometres((double)(metres * 1000000)) : FromMicrometres((double)metres * 1e6);
        return read;
    }

    /// <summary>The smaller of two sizes.</summary>
    public static ParticleSize Min(ParticleSize left, ParticleSize right) => left <= right ? left : right;

    /// <inheritdoc/>
    public int CompareTo(ParticleSize other) => Micrometres.CompareTo(other.Micrometres);

    /// <summary><c>unlimited</c>, or the number in µm.</summary>
    public override string ToString() => IsUnlimited ? "unlimited" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Micrometres} µm");

    /// <summary>Whether <paramref name="left"/> is the smaller size.</summary>
    public static bool operator <(ParticleSize left, ParticleSize right) => left.Micrometres < right.Micrometres;

    /// <summary>Whether <paramref name="left"/> is the larger size.</summary>
    public static bool operator >(ParticleSize left, ParticleSize right) => left.Micrometres > right.Micrometres;

    /// <summary>Whether <paramref name="left"/> is not the larger size.</summary>
    public static bool operator <=(ParticleSize left, ParticleSize right) => left.Micrometres <= right.Micrometres;

    /// <summary>Whether <paramref name="left"/> is not the smaller size.</summary>
    public static bool operator >=(ParticleSize left, ParticleSize right) => left.Micrometres >= right.Micrometres;
}
