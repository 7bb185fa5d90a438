namespace Contam.Families;

/// <summary>What somebody saw at a part.</summary>
/// <param name="Part">The part that was looked at.</param>
/// <param name="Debris">The debris looked for.</param>
/// <param name="Found">Whether it was found; else the part was clean of it.</param>
public sealed record Finding(PartId Part, Debris Debris, bool Found)
{
    /// <summary>The size of what was found, or <c>null</c> for not said.</summary>
    public ParticleSize? Size { get; init; }

    /// <summary>What it looks like, or <c>null</c> for not said.</summary>
    public DebrisForm? Form { get; init; }

    /// <summary>Whether it is magnetic, or <c>null</c> for not said.</summary>
    public bool? Magnetic { get; init; }

    /// <summary>Who looked, or <c>null</c>.</summary>
    public string? By { get; init; }

    /// <summary>When, as written, or <c>null</c>.</summary>
    public string? When { get; init; }
}
