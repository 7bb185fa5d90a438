namespace Contam.Families.Quantities;

/// <summary>Particles of a size and larger in a fluid. Held per mL and not per m³, because the steps of ISO 4406 are written so and a count that lies on a step must not be moved off it by a conversion; the default value is 0. Equal when the numbers are.</summary>
/// <param name="PerMillilitre">The number of particles in a mL.</param>
public readonly record struct ParticleConcentration(double PerMillilitre) : IComparable<ParticleConcentration>
{
    /// <inheritdoc/>
    public int CompareTo(ParticleConcentration other) => PerMillilitre.CompareTo(other.PerMillilitre);

    /// <summary>Whether <paramref name="left"/> is less.</summary>
    public static bool operator <(ParticleConcentration left, ParticleConcentration right) => left.PerMillilitre < right.PerMillilitre;

    /// <summary>Whether <paramref name="left"/> is more.</summary>
    public static bool operator >(ParticleConcentration left, ParticleConcentration right) => left.PerMillilitre > right.PerMillilitre;

    /// <summary>Whether <paramref name="left"/> is not more.</summary>
    public static bool operator <=(ParticleConcentration left, ParticleConcentration right) => left.PerMillilitre <= right.PerMillilitre;

    /// <summary>Whether <paramref name="left"/> is not less.</summary>
    public static bool operator >=(ParticleConcentration left, ParticleConcentration right) => left.PerMillilitre >= right.PerMillilitre;
}
