namespace Contam.Families.Quantities;

/// <summary>What is wrong with the text of a quantity.</summary>
public enum QuantityFault
{
    /// <summary>There is nothing.</summary>
    Empty,

    /// <summary>It does not begin with a number, written as digits with a point if need be.</summary>
    NotANumber,

    /// <summary>A comma stands where a decimal point is due.</summary>
    DecimalComma,

    /// <summary>A space or another mark parts the digits.</summary>
    GroupedDigits,

    /// <summary>More than one space stands around or inside it.</summary>
    ExtraSpace,

    /// <summary>The number has no unit.</summary>
    MissingUnit,

    /// <summary>No unit is written like this.</summary>
    UnknownUnit,

    /// <summary>The unit measures something else.</summary>
    WrongDimension,

    /// <summary>The number is negative.</summary>
    Negative,

    /// <summary>The number is too large or too small to hold, or below absolute zero.</summary>
    OutOfRange,
}

/// <summary>Why a text is not a quantity, and where.</summary>
/// <param name="Fault">What is wrong.</param>
/// <param name="Offset">The zero-based place in the text of the first character that is wrong; the text's length where something is missing at its end.</param>
/// <param name="Found">The unit that was found, for <see cref="QuantityFault.UnknownUnit"/> and <see cref="QuantityFault.WrongDimension"/>; else empty.</param>
/// <param name="Near">A unit that was likely meant, or <c>null</c>.</param>
public sealed record QuantityError(QuantityFault Fault, int Offset, string Found = "", string? Near = null);
