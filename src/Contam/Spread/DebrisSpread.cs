using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Spread;

/// <summary>What is asked: how far has this debris gone?</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Failed">The failed parts, each of the family; repeats are ignored.</param>
/// <param name="Debris">The debris that every failed part is taken to shed.</param>
public sealed record SpreadQuestion(Family Family, ImmutableArray<PartId> Failed, Debris Debris)
{
    /// <summary>What was seen; findings of other debris are ignored.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Whether the shop's standard lets a clean finding clear.</summary>
    public bool AcceptsCleanFindings { get; init; } = true;
}

/// <summary>A part that the debris reaches or could have reached.</summary>
/// <param name="Part">The part.</param>
/// <param name="Grade">How far.</param>
/// <param name="Reach">The largest particle that can get here.</param>
/// <param name="From">The source that the hops lead back to.</param>
/// <param name="Via">The part that the debris came through last; <c>null</c> for a source itself.</param>
public sealed record ReachedPart(PartId Part, Grade Grade, ParticleSize Reach, PartId From, PartId? Via);

/// <summary>Parts that only closed conditional joints would reach.</summary>
/// <param name="IfFailed">If this part has failed,</param>
/// <param name="AlsoFailed">and these with it (usually none),</param>
/// <param name="Parts">then these are reached too; family order.</param>
public sealed record ConditionalReach(PartId IfFailed, ImmutableArray<PartId> AlsoFailed, ImmutableArray<PartId> Parts);
