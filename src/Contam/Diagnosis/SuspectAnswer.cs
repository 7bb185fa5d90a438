using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>Where debris could be coming from, given what was seen. Immutable; <see cref="Suspecting"/> makes it.</summary>
public sealed class SuspectAnswer
{
    internal SuspectAnswer(FindingsModel model, ImmutableArray<Suspect> suspects, SmallestSets together, ImmutableArray<Finding> unexplained)
    {
        Model = model;
        Suspects = suspects;
        Together = together.Sets;
        TogetherIsComplete = together.IsComplete;
        TogetherIsSmallest = together.IsSmallest;
        Unexplained = unexplained;
        Contradictions = SuspectContradiction.Of(model);
    }

    /// <summary>What was asked.</summary>
    public SuspectQuestion Question => Model.Question;

    /// <summary>Every part that sheds this debris, by falling share, ties in file order. Empty where the family names none.</summary>
    public ImmutableArray<Suspect> Suspects { get; }

    /// <summary>
    /// Where no single part accounts for every find: the smallest sets of parts that do, each in file order; the likelier set first, then file order.
    /// Empty where one part is enough. At most <see cref="SmallestSets.MostSets"/>.
    /// </summary>
    public ImmutableArray<ImmutableArray<PartId>> Together { get; }

    /// <summary>Whether <see cref="Together"/> holds all sets of that size.</summary>
    public bool TogetherIsComplete { get; }

    /// <summary>Whether it is proven that no smaller set accounts for the finds.</summary>
    public bool TogetherIsSmallest { get; }

    /// <summary>Finds to which no way leads from any suspect, in the order given.</summary>
    public ImmutableArray<Finding> Unexplained { get; }

    /// <summary>Finds that no suspect can have sent there if every clean look was right, in the order given.</summary>
    public ImmutableArray<SuspectContradiction> Contradictions { get; }

    /// <summary>Whether at least one find is accounted for by some suspect.</summary>
    public bool ExplainsAnything => Suspects.Any(suspect => suspect.ExplainsSome);

    internal FindingsModel Model { get; }

    /// <summary>
    /// The parts that a plan takes for failed, in file order: every suspect with at least this share; where several parts must have shed together also the
    /// members of <see cref="Together"/>, and where that list is not complete every suspect that accounts for some find; the same where no suspect has the share.
    /// </summary>
    /// <param name="share">From 0 to 1.</param>
    public ImmutableArray<PartId> CountedAsFailed(double share)
    {
        // The first has the largest share.
        bool isSpreadThin = Suspects.IsEmpty || !LookTable.IsAtLeast(Suspects[0].Share, share);
        HashSet<PartId> needed = !isSpreadThin && (Together.IsEmpty || TogetherIsComplete)
            ? [.. Together.SelectMany(set => set)]
            : [.. Suspects.Where(suspect => suspect.ExplainsSome).Select(suspect => suspect.Part)];
        return [.. Suspects.Where(suspect => LookTable.IsAtLeast(suspect.Share, share) || needed.Contains(suspect.Part)).Select(suspect => suspect.Part).OrderBy(Question.Family.IndexOf)];
    }
}
