using System.Security.Cryptography;
using System.Text;

namespace Contam.Families;

/// <summary>
/// A text that is worked out when it is first asked for. Two are equal where the texts are.
/// Hashes are such: what makes them is a large library, and loading it takes as long as a whole empty program, while most answers name no hash.
/// </summary>
internal sealed class LaterText : IEquatable<LaterText>
{
    private readonly Lazy<string> text;

    private LaterText(Lazy<string> text) => this.text = text;

    /// <summary>The text.</summary>
    public string Value => text.Value;

    /// <summary>A text that is known.</summary>
    public static LaterText Of(string text) => new(new Lazy<string>(text));

    /// <summary>A text that this works out.</summary>
    public static LaterText From(Func<string> text) => new(new Lazy<string>(text));

    /// <summary>SHA-256 of these bytes, in lower-case hexadecimal.</summary>
    public static LaterText HashOf(Func<byte[]> bytes) => From(() => Convert.ToHexStringLower(SHA256.HashData(bytes())));

    /// <summary>SHA-256 of a text's UTF-8 bytes, in lower-case hexadecimal.</summary>
    public static LaterText HashOf(Func<string> text) => HashOf(() => Encoding.UTF8.GetBytes(text()));

    public bool Equals(LaterText? other) => other is not null && Value == other.Value;

    public override bool Equals(object? obj) => Equals(obj as LaterText);

    public override int GetHashCode() => Value.GetHashCode(StringComparison.Ordinal);
}
