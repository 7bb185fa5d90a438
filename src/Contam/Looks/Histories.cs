using System.Collections.Immutable;

namespace Contam.Looks;

/// <summary>
/// Every way in which the looks can come out, one after the other as they are made, clean before found.
/// <para>
/// A look that is due is clean or found. Where a find made before would make a clean outcome void at once, it is not made and counts as found. When all are
/// made, a look that came to be due only since then counts as found too. A look that finds something is taken to find every debris that it is for at
/// every place.
/// </para>
/// <para>Cost: that of the voiding for each history, where anything could be void; else the number of histories times looks.</para>
/// </summary>
internal sealed class Histories
{
    /// <summary>The most that a plan may have.</summary>
    public const int Most = 256;

    private readonly FixedLooks looks;
    private readonly ImmutableArray<int> due;
    private readonly KnownVoids? voids;
    private readonly ImmutableArray<LookHistory>.Builder all = ImmutableArray.CreateBuilder<LookHistory>();

    private Histories(FixedLooks looks, ImmutableArray<int> due, bool nothingIsVoid)
    {
        this.looks = looks;
        this.due = due;
        voids = nothingIsVoid ? null : new KnownVoids(looks);
    }

    /// <summary>All of them, at most <see cref="Most"/>; <c>null</c> where there are more.</summary>
    public static ImmutableArray<LookHistory>? Of(FixedLooks looks, ImmutableArray<int> due, bool nothingIsVoid)
    {
        var histories = new Histories(looks, due, nothingIsVoid);
        return histories.GoOn(0, 0, 0, 0) ? histories.all.ToImmutable() : null;
    }

    /// <summary>Whether they are not too many so far.</summary>
    private bool GoOn(int look, int clean, int found, int settled)
    {
        if (look == looks.Count)
            return Finish(clean, found, settled);
        int isVoid = VoidLooks(clean, found);
        if (!LookMask.IsMet(due[look], found | settled | isVoid))
            return GoOn(look + 1, clean, found, settled);
        int bit = LookMask.Of(look);
        if ((VoidLooks(clean | bit, found) & bit) != 0)
            return GoOn(look + 1, clean, found, settled | bit);
        return GoOn(look + 1, clean | bit, found, settled) && GoOn(look + 1, clean, found | bit, settled);
    }

    private bool Finish(int clean, int found, int settled)
    {
        if (all.Count == Most)
            return false;
        int isVoid = VoidLooks(clean, found);
        bool isMore = true;
        while (isMore)
        {
            isMore = false;
            for (int look = 0; look < looks.Count; look++)
            {
                int bit = LookMask.Of(look);
                if (((clean | found | settled) & bit) != 0 || !LookMask.IsMet(due[look], found | settled | isVoid))
                    continue;
                settled |= bit;
                isMore = true;
            }
        }

        all.Add(new LookHistory([.. Enumerable.Range(0, looks.Count).Select(LookMask.Of).Select(bit =>
            (found & bit) != 0 ? LookOutcome.Found
            : (settled & bit) != 0 ? LookOutcome.Settled
            : (clean & bit) == 0 ? LookOutcome.NotDue
            : (isVoid & bit) != 0 ? LookOutcome.Void
            : LookOutcome.Clean)]));
        return true;
    }

    private int VoidLooks(int clean, int found) => clean == 0 || voids is null ? 0 : voids.Of(clean, found);
}
