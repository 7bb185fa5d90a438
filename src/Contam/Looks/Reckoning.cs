using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// By which looks each part is exposed to a debris, as far as treatment goes, and by which it is only guarded. More than comes about where the looks alone cannot
/// say it, never less.
/// </summary>
internal sealed class Reckoning
{
    private readonly FixedLooks looks;
    private readonly ImmutableArray<OneDebris> each;

    private Reckoning(FixedLooks looks, Disproofs disproofs, ImmutableArray<OneDebris> each)
    {
        this.looks = looks;
        Disproofs = disproofs;
        this.each = each;
    }

    public Disproofs Disproofs { get; }

    public static Reckoning Of(FixedLooks looks)
    {
        bool[][] isPlain = [.. looks.Ways.Select(Narrows.HasNone)];
        // Which looks hang on which must be known before it is known what may be void; it is found once with the most that may be.
        var disproofs = Disproofs.Of(looks, isPlain, isMadeOnlyWhenDue: false);
        if (!disproofs.AreNone && looks.Ways.Length == 1 && HangOnEarlierOnly(looks, new LookFlow(looks, 0, disproofs)))
            disproofs = Disproofs.Of(looks, isPlain, isMadeOnlyWhenDue: true);
        return new Reckoning(looks, disproofs, [.. looks.Ways.Select((ways, debris) => new OneDebris(looks, debris, isPlain[debris], disproofs))]);
    }

    private static bool HangOnEarlierOnly(FixedLooks looks, LookFlow flow) =>
        looks.Family.Parts.All(part => looks.Question.SparedBy(part) != Sparing.TwoLooks)
        && looks.Places.Select((places, look) => places.All(place => flow.Coming[place] is var due && (due == LookMask.Always || due < LookMask.Of(look)))).All(isSo => isSo);

    /// <summary>By which looks the debris comes as far as a part at all; for a place, by which the look there is due.</summary>
    public int Coming(int debris, int vertex) => each[debris].Flow.Coming[vertex];

    /// <summary>By which looks a part is treated for a debris as exposed; 0 for never.</summary>
    public int Exposed(int debris, int vertex) => each[debris].Exposed(vertex);

    /// <summary>By which looks it is treated as guarded, and which of them make it exposed for certain; 0 for never.</summary>
    public (int OnlyIf, int Unless) Guarded(int debris, int vertex) => each[debris].Guarded(vertex);

    /// <summary>The looks that some part needs which takes two: these are made although nothing before them was found.</summary>
    public int MadeAnyway()
    {
        int made = 0;
        for (int vertex = 0; vertex < looks.Family.Parts.Length; vertex++)
        {
            if (looks.Question.SparedBy(looks.Family.Parts[vertex]) != Sparing.TwoLooks)
                continue;
            int needed = 0;
            for (int debris = 0; debris < each.Length; debris++)
                needed = LookMask.Or(needed, Exposed(debris, vertex));
            if (needed != LookMask.Always)
                made |= needed;
        }

        return made;
    }

    private sealed class OneDebris
    {
        private readonly FixedLooks looks;
        private readonly DebrisWays ways;
        private readonly bool[] isPlain;
        private readonly int[] fullSize;
        private readonly int[] fromFinds;
        private readonly int surelyFound;
        private readonly Dictionary<int, int[]> atLeast = [];

        public OneDebris(FixedLooks looks, int debris, bool[] isPlain, Disproofs disproofs)
        {
            this.looks = looks;
            ways = looks.Ways[debris];
            this.isPlain = isPlain;
            Flow = new LookFlow(looks, debris, disproofs);
            fullSize = Flow.FullSize();
            fromFinds = Flow.FromFindsAlone();
            // Where a look counts as found, this debris was found at all of its places for certain: there is one debris and one place, and the look is never void.
            if (looks.Ways.Length == 1)
                surelyFound = Enumerable.Range(0, looks.Count).Where(look => looks.Places[look].Length == 1 && disproofs.IsNeverVoid(look)).Sum(LookMask.Of);
        }

        public LookFlow Flow { get; }

        public int Exposed(int vertex)
        {
            if (!ways.IsReached[vertex])
                return 0;
            Part part = looks.Family.Parts[vertex];
            switch (looks.Question.SparedBy(part))
            {
                case Sparing.Nothing:
                    return LookMask.Always;
                case Sparing.TwoLooks:
                    return LastTwoLooks.Of(vertex, ways, Flow);
            }

            if (Flow.IsStop(vertex))
                return Flow.Reached(vertex);
            return part.Clearance is { } clearance ? LookMask.Or(fullSize[vertex], AtLeast(clearance)[vertex]) : fullSize[vertex];
        }

        public (int OnlyIf, int Unless) Guarded(int vertex)
        {
            Part part = looks.Family.Parts[vertex];
            if (!ways.IsReached[vertex] || isPlain[vertex] || looks.Question.SparedBy(part) != Sparing.OneLook || Exposed(vertex) == LookMask.Always)
                return (0, 0);
            int reached = Flow.Reached(vertex);
            // A place on record as clean is no find where a look makes the record void.
            int surely = surelyFound & (looks.IsPlace(vertex) ? Flow.OpenedBy(vertex) : fromFinds[vertex]);
            int onlyIf = reached & ~surely;
            return onlyIf == 0 ? (0, 0) : (onlyIf, surely);
        }

        private int[] AtLeast(ParticleSize size)
        {
            int level = ways.LevelOf(size);
            if (!atLeast.TryGetValue(level, out int[]? known))
                atLeast[level] = known = Flow.AtLeast(level);
            return known;
        }
    }
}
