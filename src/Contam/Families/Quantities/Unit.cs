namespace Contam.Families.Quantities;

/// <summary>A unit as it is written, with what one of it is in the SI unit of its dimension.</summary>
/// <param name="Symbol">How it is written; letters count as written, upper or lower case.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">How many SI units one of it is: the numerator.</param>
/// <param name="Divisor">The denominator, for units whose factor has no end as a decimal number.</param>
/// <param name="Offset">Added to the number before it is multiplied: for temperatures.</param>
internal sealed record Unit(string Symbol, Dimension Dimension, decimal Factor, decimal Divisor = 1, decimal Offset = 0)
{
    /// <summary>Whether people are told of it first in a message; other spellings are understood, not advertised.</summary>
    public bool IsOffered { get; init; }

    /// <summary>The SI value of so many of this unit.</summary>
    /// <exception cref="OverflowException">It is too large to hold.</exception>
    public decimal ToSi(decimal number) => (number + Offset) * Factor / Divisor;
}
