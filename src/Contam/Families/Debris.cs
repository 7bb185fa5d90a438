namespace Contam.Families;

/// <summary>
/// A sort of debris: metal, rubber, water, or a shop's own. Compared by name.
/// </summary>
/// <param name="Name">Kebab-case name, for instance <c>metal</c>.</param>
/// <param name="HasSize">Whether its particles have a size in µm. Debris without size is held back wholly or not at all.</param>
/// <param name="IsHard">Whether a <c>passage</c> narrower than a particle holds it. Soft debris squeezes through.</param>
public sealed record Debris(string Name, bool HasSize, bool IsHard)
{
    /// <summary>Metal: has a size, hard.</summary>
    public static Debris Metal { get; } = new("metal", HasSize: true, IsHard: true);

    /// <summary>Rubber: has a size, soft.</summary>
    public static Debris Rubber { get; } = new("rubber", HasSize: true, IsHard: false);

    /// <summary>Water: no size, soft.</summary>
    public static Debris Water { get; } = new("water", HasSize: false, IsHard: false);
}
