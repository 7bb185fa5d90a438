using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Drills;

/// <summary>What an exercise is made from.</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Standard">The standard, its layers already joined: what is done with every part, and whether clean findings count.</param>
/// <param name="Failed">The failed parts, at least one, each of the family.</param>
/// <param name="Debris">What they shed, at least one.</param>
public sealed record DrillRequest(Family Family, ShopStandard Standard, ImmutableArray<PartId> Failed, ImmutableArray<Debris> Debris)
{
    /// <summary>Which exercise of the many that there are: the same number gives the same questions.</summary>
    public ulong Seed { get; init; } = 1;
}
