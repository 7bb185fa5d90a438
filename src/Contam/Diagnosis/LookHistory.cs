using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>What a shop's own looks at one place came to.</summary>
/// <param name="Part">The place.</param>
/// <param name="Debris">The debris that was looked for.</param>
/// <param name="Count">How often it was found there, of the looks that say something of it.</param>
public sealed record PlaceCount(PartId Part, Debris Debris, LookCount Count);

/// <summary>
/// A shop's own counts of what looks at the parts of one family showed, to be used instead of the words good, fair and poor.
/// <para>
/// The word still counts, as <see cref="WordWorth"/> looks would; that it is ten is our choice, no source: a handful of looks moves a chance, fifty outweigh
/// the word. A place without looks has the very figure of its word.
/// </para>
/// <para>
/// What is counted is how often debris was found where the failed part could send it at full size. It need not have gone there each time, so the counts
/// rather lower the chance that a look shows debris that is there: a clean look then clears less, which is the cautious side.
/// </para>
/// </summary>
public sealed class LookHistory
{
    /// <summary>How many looks a word counts as.</summary>
    public const int WordWorth = 10;

    private readonly Dictionary<(PartId Part, Debris Debris), LookCount> countAt = [];

    /// <summary>The history of these places.</summary>
    /// <param name="places">In the order in which they are to be told; each place and debris once.</param>
    /// <param name="jobs">From how many jobs they are.</param>
    public LookHistory(ImmutableArray<PlaceCount> places, int jobs)
    {
        Places = places;
        Jobs = jobs;
        foreach (PlaceCount place in places)
            countAt.Add((place.Part, place.Debris), place.Count);
    }

    /// <summary>Every place with a look that counts.</summary>
    public ImmutableArray<PlaceCount> Places { get; }

    /// <summary>From how many jobs the looks are.</summary>
    public int Jobs { get; }

    /// <summary>The looks at a place for this debris.</summary>
    public LookCount At(PartId part, Debris debris) => countAt.GetValueOrDefault((part, debris));

    /// <summary>The chance that a look at a part shows this debris, from the word of the family and the looks.</summary>
    public double ChanceToShow(Part part, Debris debris)
    {
        ArgumentNullException.ThrowIfNull(part);
        double word = Chances.ToShow(part.Inspect);
        return At(part.Id, debris) is { Looks: > 0 } count ? count.MeanAfter(word, WordWorth) : word;
    }

    /// <summary>
    /// The family with the word that the looks have earned at every place: the best one whose figure the chance reaches, for the debris that shows worst.
    /// Only the words differ; a place without looks keeps its own.
    /// </summary>
    public Family AppliedTo(Family family, ImmutableArray<Debris> debris)
    {
        ArgumentNullException.ThrowIfNull(family);
        return family.WithParts([.. family.Parts.Select(part => Earned(part, debris))]);
    }

    private Part Earned(Part part, ImmutableArray<Debris> debris)
    {
        if (part.Inspect is not { } look || debris.All(one => At(part.Id, one).Looks == 0))
            return part;
        double chance = debris.Min(one => ChanceToShow(part, one));
        Shows word = new[] { Shows.Good, Shows.Fair }.FirstOrDefault(word => LookTable.IsAtLeast(chance, Chances.ToShow(look with { Shows = word })), Shows.Poor);
        return word == look.Shows ? part : part with { Inspect = look with { Shows = word } };
    }
}
