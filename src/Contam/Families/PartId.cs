namespace Contam.Families;

/// <summary>
/// The id of a part: kebab-case, unique in its family, compared by ordinal characters.
/// The default value holds no text and equals no part's id.
/// </summary>
/// <param name="Value">The id as written, for instance <c>injector-3</c>.</param>
public readonly record struct PartId(string Value) : IComparable<PartId>
{
    /// <inheritdoc/>
    public bool Equals(PartId other) => string.Equals(Value, other.Value, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => Value is null ? 0 : string.GetHashCode(Value, StringComparison.Ordinal);

    /// <inheritdoc/>
    public int CompareTo(PartId other) => string.CompareOrdinal(Value, other.Value);

    /// <summary>The id itself.</summary>
    public override string ToString() => Value ?? "";

    /// <summary>Whether <paramref name="left"/> stands before <paramref name="right"/>, by ordinal characters.</summary>
    public static bool operator <(PartId left, PartId right) => left.CompareTo(right) < 0;

    /// <summary>Whether <paramref name="left"/> stands after <paramref name="right"/>, by ordinal characters.</summary>
    public static bool operator >(PartId left, PartId right) => left.CompareTo(right) > 0;

    /// <summary>Whether <paramref name="left"/> does not stand after <paramref name="right"/>.</summary>
    public static bool operator <=(PartId left, PartId right) => left.CompareTo(right) <= 0;

    /// <summary>Whether <paramref name="left"/> does not stand before <paramref name="right"/>.</summary>
    public static bool operator >=(PartId left, PartId right) => left.CompareTo(right) >= 0;
}
