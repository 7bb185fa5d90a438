namespace Contam.Families;

/// <summary>
/// A place in a file that a person wrote. Line and column are one-based; the column counts characters.
/// Two places are equal when file, line and column are. Where there is no place, callers use <c>null</c>, never line 0.
/// </summary>
/// <param name="File">The file's name as the person gave it, with <c>/</c> between folders.</param>
/// <param name="Line">One-based line.</param>
/// <param name="Column">One-based column.</param>
public readonly record struct SourceSpan(string File, int Line, int Column)
{
    /// <summary>The place as <c>file:line:column</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
}
