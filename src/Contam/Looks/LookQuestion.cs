using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Looks;

/// <summary>What is asked: what each part needs, and on which looks it hangs.</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Standard">The standard, its layers already joined.</param>
/// <param name="Failures">The failed parts, each of the family, with what each shed; may be empty where something was found.</param>
/// <param name="Debris">The debris asked about, at least one, each once.</param>
internal sealed record LookQuestion(Family Family, ShopStandard Standard, ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris)
{
    /// <summary>The failed parts, each once, in the order given.</summary>
    public ImmutableArray<PartId> Failed => Failures.PartsOf();

    /// <summary>What was seen beforehand. Its places are settled: what is on record there is no look any more.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What spares a part that debris could have reached.</summary>
    public Func<Part, Sparing> SparedBy { get; init; } = static part => part.ClearedBy switch
    {
        ClearedBy.Nothing => Sparing.Nothing,
        ClearedBy.TwoLooks => Sparing.TwoLooks,
        _ => Sparing.OneLook,
    };

    /// <summary>The question of how far one debris has gone: the one place where the failures are handed to the spread.</summary>
    public SpreadQuestion SpreadOf(Debris debris) => new(Family, Failures, debris)
    {
        Findings = Findings,
        AcceptsCleanFindings = Standard.CleanFindings != CleanFindings.Never,
    };
}

/// <summary>What spares a part that debris could have reached.</summary>
internal enum Sparing
{
    /// <summary>One clean place on every way to it; its own counts.</summary>
    OneLook,

    /// <summary>Two clean places on every way to it; its own counts as one.</summary>
    TwoLooks,

    /// <summary>Nothing: it is treated whenever there is any way to it.</summary>
    Nothing,
}
