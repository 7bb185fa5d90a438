using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>A deciding look.</summary>
/// <param name="Places">Where to look, in the order of the family; several are like places that are due together.</param>
/// <param name="Debris">The debris that it is for: what gets to any of its places.</param>
/// <param name="Due">When it is made: on earlier looks only.</param>
/// <param name="Clears">What may be left alone on the strength of it: the parts whose condition names it, in the order of the family.</param>
internal sealed record DecidingLook(ImmutableArray<PartId> Places, ImmutableArray<Debris> Debris, LookCondition Due, ImmutableArray<PartId> Clears)
{
    /// <summary>Whether nothing that can come about makes it due, because what is on record clears every way to it.</summary>
    public bool IsNeverDue { get; init; }
}

/// <summary>What holds with the looks held fixed.</summary>
/// <param name="Looks">In order of work: the first is A.</param>
/// <param name="Parts">Every part that debris reaches or could have reached, in the order of the family.</param>
/// <param name="Histories">Every way in which the looks can come out, that with all of them clean first; <c>null</c> where there are more than <see cref="Looks.Histories.Most"/>.</param>
internal sealed record DecidedPlan(ImmutableArray<DecidingLook> Looks, ImmutableArray<PartLooks> Parts, ImmutableArray<LookHistory>? Histories);
