using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Drills;

/// <summary>What an exercise is made from.</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Standard">The standard, its layers already joined: what is done with every part, and whether clean findings count.</param>
/// <param name="Failures">The failed parts, at least one, each of the family, with what each shed.</param>
/// <param name="Debris">What is followed, at least one.</param>
public sealed record DrillRequest(Family Family, ShopStandard Standard, ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris)
{
    /// <summary>The failed parts, each once, in the order given.</summary>
    public ImmutableArray<PartId> Failed => Failures.PartsOf();

    /// <summary>The failed parts that shed this debris, or any that is asked about; in the order given.</summary>
    public ImmutableArray<PartId> SourcesOf(Debris? debris = null) =>
        Failures.RemoveAll(failure => !(debris is null ? Debris.Any(failure.Sheds) : failure.Sheds(debris))).PartsOf();

    /// <summary>Which exercise of the many that there are: the same number gives the same questions.</summary>
    public ulong Seed { get; init; } = 1;
}
