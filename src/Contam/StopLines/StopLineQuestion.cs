using System.Collections.Immutable;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Treatment;

namespace Contam.StopLines;

/// <summary>What is asked: where to look so that, all of it found clean, the rest can be left alone for the least work?</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Standard">The standard, its layers already joined: what is done with every part, how long it takes, and whether clean findings count.</param>
/// <param name="Failures">The failed parts, each of the family, with what each shed; may be empty where something was found.</param>
/// <param name="Debris">The debris that is followed, at least one. A look is for all of it.</param>
public sealed record StopLineQuestion(Family Family, ShopStandard Standard, ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris)
{
    /// <summary>The failed parts, each once, in the order given.</summary>
    public ImmutableArray<PartId> Failed => Failures.PartsOf();

    /// <summary>What was seen so far; the line is found from there.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>
    /// The shop's own counts; <c>null</c> for none. The family is then one with the words that the looks have earned (<see cref="LookHistory.AppliedTo"/>), and
    /// this serves to say so.
    /// </summary>
    public LookHistory? History { get; init; }

    /// <summary>The family with its own words, where <see cref="Family"/> has others; else <c>null</c>.</summary>
    public Family? WithOwnWords { get; init; }

    /// <summary>The same question with the words that a shop's looks have earned instead of the family's own.</summary>
    public StopLineQuestion With(LookHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return this with { Family = history.AppliedTo(Family, Debris), History = history, WithOwnWords = Family };
    }
}
