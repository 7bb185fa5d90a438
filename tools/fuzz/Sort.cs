namespace Contam.Fuzz;

/// <summary>What a text is read as.</summary>
internal enum Sort
{
    /// <summary>A family file.</summary>
    Family,

    /// <summary>A module, used by a small family.</summary>
    Module,

    /// <summary>A shop standard.</summary>
    Standard,

    /// <summary>Findings about a small family.</summary>
    Findings,
}

/// <summary>A text to be read, and what as.</summary>
/// <param name="Sort">What it is read as.</param>
/// <param name="Bytes">The bytes of the file.</param>
internal sealed record Input(Sort Sort, byte[] Bytes)
{
    /// <summary>The text, or <c>null</c> where the bytes are no UTF-8.</summary>
    public string? Text { get; } = TextOf(Bytes);

    private static readonly System.Text.UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static string? TextOf(byte[] bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
