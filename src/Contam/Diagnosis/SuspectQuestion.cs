using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Diagnosis;

/// <summary>What is asked: which part is this debris coming from?</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Debris">The debris; findings of other debris are ignored.</param>
/// <param name="Standard">The standard whose times say how long a look takes where the family does not.</param>
public sealed record SuspectQuestion(Family Family, Debris Debris, ShopStandard Standard)
{
    /// <summary>What was seen; may be empty, then the answer rests on how likely each part sheds.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>
    /// Parts that were seen to have failed: their conditional joints are open whatever the source is. That such a part failed is not taken as proof that
    /// this debris comes from it.
    /// </summary>
    public ImmutableArray<PartId> Failed { get; init; } = [];

    /// <summary>Places where a look was made and told nothing; they are not proposed again.</summary>
    public ImmutableArray<PartId> CannotTell { get; init; } = [];

    /// <summary>The shop's own counts, which say how surely a look shows debris; <c>null</c> for the words of the family alone.</summary>
    public LookHistory? History { get; init; }
}
