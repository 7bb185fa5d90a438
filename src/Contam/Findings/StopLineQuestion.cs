using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Findings;

/// <summary>What is asked: where to look so that, all of it found clean, the rest can be left alone for the least work?</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Standard">The standard, its layers already joined: what is done with every part, how long it takes, and whether clean findings count.</param>
/// <param name="Failed">The failed parts, each of the family; may be empty where something was found.</param>
/// <param name="Debris">What they shed, at least one. A look is for all of it.</param>
public sealed record StopLineQuestion(Family Family, ShopStandard Standard, ImmutableArray<PartId> Failed, ImmutableArray<Debris> Debris)
{
    /// <summary>What was seen so far; the line is found from there.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];
}
