namespace Contam.Families.Reading;

/// <summary>A file that is being read.</summary>
/// <param name="RealPath">Where it really is, links followed.</param>
/// <param name="Name">Its name in places.</param>
internal sealed record OpenFile(string RealPath, string Name);
