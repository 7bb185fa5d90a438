namespace Contam.Families.Reading.Sheets;

/// <summary>What one reading may still take in, over all its files.</summary>
/// <param name="limits">Where it starts.</param>
internal sealed class ReadBudget(ReadLimits limits)
{
    /// <summary>The limits themselves.</summary>
    public ReadLimits Limits { get; } = limits;

    /// <summary>The modules that come with the program; <c>null</c> for none.</summary>
    public IShippedFiles? Shipped { get; init; }

    /// <summary>Bytes that may still be read.</summary>
    public int BytesLeft { get; set; } = limits.FileBytes;

    /// <summary>Values that may still be read.</summary>
    public int ValuesLeft { get; set; } = limits.Values;
}
