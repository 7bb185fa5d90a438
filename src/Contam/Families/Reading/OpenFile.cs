namespace Contam.Families.Reading;

/// <summary>A file that is being read.</summary>
/// <param name="RealPath">Where it really is, links followed.</param>
/// <param name="Name">Its name in places.</param>
internal sealed record OpenFile(string RealPath, string Name)
{
    /// <summary>Its text, where it is one that comes with the program; <c>null</c> for a file on disk.</summary>
    public string? ShippedText { get; init; }
}
