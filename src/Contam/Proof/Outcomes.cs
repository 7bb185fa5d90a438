using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>
/// Every way in which the looks of a plan can come out. In order of work, a look that is due comes out clean or found; one that hangs on looks none of which counts
/// as found is not due. Where finds made before would disprove a clean outcome at once, the look is not made and counts as found. A clean look that a later find
/// disproves counts as found too, and so does every look that comes to be due only when all are made.
/// </summary>
internal sealed class Outcomes
{
    /// <summary>The most that a plan may have.</summary>
    internal const int Most = 256;

    private readonly PlanLooks looks;
    private readonly IReadOnlyList<LookDisproof> disproofs;
    private readonly List<PlayedHistory> all = [];
    private readonly Dictionary<(int Clean, int Found), int> known = [];

    private Outcomes(PlanLooks looks, IReadOnlyList<LookDisproof> disproofs)
    {
        this.looks = looks;
        this.disproofs = disproofs;
    }

    /// <summary>All of them; <c>null</c> where they are more than <see cref="Most"/>. Cost: that of the disproof for each look of each.</summary>
    internal static ImmutableArray<PlayedHistory>? Of(PlanLooks looks, IReadOnlyList<LookDisproof> disproofs)
    {
        var outcomes = new Outcomes(looks, disproofs);
        return outcomes.Next(0, default) ? [.. outcomes.all] : null;
    }

    /// <summary>Goes on from a look with what has come out before; whether they are not too many.</summary>
    private bool Next(int look, PlayedHistory before)
    {
        if (look == looks.All.Length)
        {
            all.Add(Closed(before));
            return all.Count <= Most;
        }

        int bit = 1 << look;
        PlayedHistory now = before with { Void = VoidOf(before) };
        if (!looks.Due[look].IsMet(now.CountsAsFound))
            return Next(look + 1, before);
        PlayedHistory clean = before with { Clean = before.Clean | bit };
        if ((VoidOf(clean) & bit) != 0)
            return Next(look + 1, before with { Settled = before.Settled | bit });
        return Next(look + 1, clean) && Next(look + 1, before with { Found = before.Found | bit });
    }

    private PlayedHistory Closed(PlayedHistory history)
    {
        history = history with { Void = VoidOf(history) };
        for (int left = -1; left != 0;)
        {
            int counts = history.CountsAsFound;
            left = Enumerable.Range(0, looks.All.Length)
                .Where(look => ((history.Made | history.Settled) & (1 << look)) == 0 && looks.Due[look].IsMet(counts))
                .Aggregate(0, (bits, look) => bits | (1 << look));
            history = history with { Settled = history.Settled | left };
        }

        return history;
    }

    /// <summary>The clean looks of which some place is disproved for some debris.</summary>
    private int VoidOf(PlayedHistory history)
    {
        if (history.Clean == 0)
            return 0;
        if (known.TryGetValue((history.Clean, history.Found), out int disproved))
            return disproved;
        foreach (LookDisproof disproof in disproofs)
        {
            HashSet<int> places = disproof.Of(history.Clean, history.Found);
            for (int look = 0; look < looks.All.Length && places.Count > 0; look++)
            {
                if ((history.Clean & (1 << look)) != 0 && looks.IsFor(look, disproof.Debris) && looks.Places[look].Any(places.Contains))
                    disproved |= 1 << look;
            }
        }

        return known[(history.Clean, history.Found)] = disproved;
    }
}
