using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Why;

/// <summary>One hop of a path.</summary>
/// <param name="From">The part upstream.</param>
/// <param name="To">The part downstream.</param>
/// <param name="Circuit">The circuit of the joint.</param>
/// <param name="When">The engine states in which it passes.</param>
/// <param name="LetsOn">The largest particle that the joint, and the part upstream where it is not a source, let on.</param>
/// <param name="Place">Where the joint is written.</param>
public sealed record Hop(PartId From, PartId To, string Circuit, EngineStates When, ParticleSize LetsOn, SourceSpan Place);

/// <summary>A part on the path that holds the debris back, or would.</summary>
/// <param name="Part">The part.</param>
/// <param name="Holds">The largest particle that it is said to let on.</param>
/// <param name="IsReliedOn">Whether it is relied on.</param>
/// <param name="Because">Why, or why not.</param>
public sealed record BarrierPassed(PartId Part, ParticleSize Holds, bool IsReliedOn, string Because);

/// <summary>
/// How one debris gets to one part, or what keeps it clear. Immutable; <see cref="Explaining"/> makes it.
/// </summary>
/// <param name="Part">The part that was asked about.</param>
/// <param name="Debris">The debris.</param>
public sealed record Explanation(PartId Part, Debris Debris)
{
    /// <summary>How far, or <c>null</c> where the part is clear.</summary>
    public Grade? Grade { get; init; }

    /// <summary>The largest particle that arrives, or <c>null</c> where the part is clear.</summary>
    public ParticleSize? Reach { get; init; }

    /// <summary>The largest particle that the source sheds from which the path comes, or <c>null</c> where the part is clear.</summary>
    public ParticleSize? Shed { get; init; }

    /// <summary>The path, from a source to the part; empty where the part is a source by itself or is clear.</summary>
    public ImmutableArray<Hop> Hops { get; init; } = [];

    /// <summary>Parts on the path that hold this debris, relied on or not.</summary>
    public ImmutableArray<BarrierPassed> Barriers { get; init; } = [];

    /// <summary>The clean findings that clear the part, where it is cleared.</summary>
    public ImmutableArray<Finding> ClearedBy { get; init; } = [];

    /// <summary>Every find of the question that disproves a clean look or speaks for a source besides the failed parts.</summary>
    public ImmutableArray<Contradiction> Contradictions { get; init; } = [];

    /// <summary>The last single part that all debris must pass on its way here, over any open joint; <c>null</c> where the ways share none.</summary>
    public PartId? LastSinglePart { get; init; }

    /// <summary>The fewest parts that would have to hold to keep this one clean, nearest to the failure; empty where it is a source or is joined to one straight.</summary>
    public ImmutableArray<PartId> Cut { get; init; } = [];

    /// <summary>Whether a joint leads here straight from a source, so that no part between can hold.</summary>
    public bool IsJoinedToSource { get; init; }

    /// <summary>How many ways in share no part: the size of the cut, and one for a joint straight from a source.</summary>
    public int Ways => Cut.Length + (IsJoinedToSource ? 1 : 0);

    /// <summary>What the part gets for this debris; empty where it is clear or cleared.</summary>
    public ImmutableArray<TreatmentKind> Treatments { get; init; } = [];

    /// <summary>The rule that gave the treatment; <c>null</c> for the fallback, and where there is no treatment.</summary>
    public Rule? Rule { get; init; }

    /// <summary>What keeps the part clear; <c>null</c> where it is reached.</summary>
    public NotReached? NotReached { get; init; }
}

/// <summary>What keeps a part clear.</summary>
/// <param name="Upstream">Every part with a way to it over open joints, nearest first; none of them is reached.</param>
/// <param name="Closed">Closed conditional joints that lead from a reached part to it or to something upstream of it.</param>
public sealed record NotReached(ImmutableArray<PartId> Upstream, ImmutableArray<Joint> Closed);
