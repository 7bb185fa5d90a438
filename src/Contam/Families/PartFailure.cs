using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>A part that has failed, and what it shed. A part converts to a failure of which no more is said.</summary>
/// <param name="Part">The part.</param>
public sealed record PartFailure(PartId Part)
{
    /// <summary>What it shed; empty for nothing, <c>null</c> where that is not said, so that it is taken to have shed every debris that is asked about.</summary>
    public ImmutableArray<Debris>? Debris { get; init; }

    /// <summary>
    /// The largest particle seen from this failure, above zero; <c>null</c> for not said, so that the family's figure holds. A size that is said replaces the
    /// family's, be it larger or smaller. It bears on debris that has a size.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The size is zero or unlimited.</exception>
    public ParticleSize? UpTo
    {
        get;
        init => field = value is { IsUnlimited: true } || value == ParticleSize.Zero
            ? throw new ArgumentOutOfRangeException(nameof(value), value, "What was seen of a failure has a size above zero.")
            : value;
    }

    /// <summary>Whether it is said of this failure that it shed nothing.</summary>
    public bool ShedNothing => Debris is { IsEmpty: true };

    /// <summary>A failure of which no more is said than the part.</summary>
    public static implicit operator PartFailure(PartId part) => new(part);

    /// <summary>A failure of which no more is said than the part.</summary>
    public static PartFailure FromPartId(PartId part) => new(part);

    /// <summary>Whether it shed this debris.</summary>
    public bool Sheds(Debris debris) => Debris is not { } said || said.Contains(debris);

    /// <summary>The largest particle of a debris that it shed: what was seen, else what the family says, else any.</summary>
    /// <param name="part">The part itself.</param>
    /// <param name="debris">A debris that it shed.</param>
    public ParticleSize SizeOf(Part part, Debris debris)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(debris);
        return debris.HasSize ? UpTo ?? part.ShedOf(debris)?.UpTo ?? ParticleSize.Unlimited : ParticleSize.Unlimited;
    }

    /// <summary>Whether both say the same.</summary>
    public bool Equals(PartFailure? other) => other is not null && Part == other.Part && UpTo == other.UpTo
        && (Debris is { } own ? other.Debris is { } others && own.SequenceEqual(others) : other.Debris is null);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Part, UpTo, Debris?.Length);
}

/// <summary>Failures as a question takes them.</summary>
public static class PartFailures
{
    /// <summary>The parts that failed, each once, in the order given.</summary>
    public static ImmutableArray<PartId> PartsOf(this ImmutableArray<PartFailure> failures) =>
        failures.IsDefaultOrEmpty ? [] : [.. failures.Select(failure => failure.Part).Distinct()];

    /// <summary>The failures, each once, in the order of the family; those of one part in the order given.</summary>
    public static ImmutableArray<PartFailure> InOrderOf(this ImmutableArray<PartFailure> failures, Family family) =>
        failures.IsDefaultOrEmpty ? [] : [.. failures.Distinct().OrderBy(failure => family.IndexOf(failure.Part))];
}
