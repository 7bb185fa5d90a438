namespace Contam.Families.Reading.Shapes;

/// <summary>A key that was read once and is read no more.</summary>
/// <param name="Name">The key.</param>
/// <param name="Mend">What to write instead.</param>
internal sealed record FormerKey(string Name, string Mend);
