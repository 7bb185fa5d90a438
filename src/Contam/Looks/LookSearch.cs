using System.Numerics;

namespace Contam.Looks;

/// <summary>
/// The choice of units that is to be expected to take least; of equals that with fewest units, then that whose first units stand first.
/// <para>
/// Up to <see cref="MostForAll"/> units every choice is tried. Of more, a search goes from no look and from given ones to the best choice with one unit
/// more, fewer, or another, until none is better; what no choice falls below is said beside it (<see cref="ChoiceModel.Bound"/>).
/// </para>
/// </summary>
internal static class LookSearch
{
    /// <summary>The most units of which every choice is tried.</summary>
    public const int MostForAll = 12;

    /// <param name="model">The sums.</param>
    /// <param name="most">The most units.</param>
    /// <param name="start">Where the search begins besides no look, as bits.</param>
    public static (ulong Chosen, bool IsAll) Least(ChoiceModel model, int most, ulong start)
    {
        int units = model.Units.Length;
        return units <= MostForAll ? (All(model, most), true) : (Searched(model, most, start), false);
    }

    /// <summary>What the search comes to, however many units there are.</summary>
    public static ulong Searched(ChoiceModel model, int most, ulong start)
    {
        ulong fromNone = Climb(model, most, 0);
        return BitOperations.PopCount(start) > most || start == 0 ? fromNone : Better(model, fromNone, Climb(model, most, start));
    }

    /// <summary>The best of all choices.</summary>
    public static ulong All(ChoiceModel model, int most)
    {
        ulong best = 0;
        double least = model.Expected(0);
        for (ulong choice = 1; choice < 1UL << model.Units.Length; choice++)
        {
            if (BitOperations.PopCount(choice) > most)
                continue;
            double expected = model.Expected(choice);
            if (!IsBetter(expected, choice, least, best))
                continue;
            (best, least) = (choice, expected);
        }

        return best;
    }

    private static ulong Climb(ChoiceModel model, int most, ulong start)
    {
        ulong best = start;
        double least = model.Expected(start);
        while (true)
        {
            (ulong next, double then) = BestOf(OneMoreOrFewer(best, model.Units.Length), best, least);
            if (next == best)
                (next, then) = BestOf(AnotherForOne(best, model.Units.Length), best, least);
            if (next == best)
                return best;
            (best, least) = (next, then);
        }

        (ulong Best, double Least) BestOf(IEnumerable<ulong> choices, ulong best, double least)
        {
            foreach (ulong choice in choices)
            {
                if (BitOperations.PopCount(choice) > most)
                    continue;
                double expected = model.Expected(choice);
                if (IsBetter(expected, choice, least, best))
                    (best, least) = (choice, expected);
            }

            return (best, least);
        }
    }

    private static IEnumerable<ulong> OneMoreOrFewer(ulong choice, int units)
    {
        for (int unit = 0; unit < units; unit++)
            yield return choice ^ 1UL << unit;
    }

    private static IEnumerable<ulong> AnotherForOne(ulong choice, int units)
    {
        for (int other = 0; other < units; other++)
        {
            if ((choice >> other & 1) == 0)
                continue;
            for (int unit = 0; unit < units; unit++)
            {
                if ((choice >> unit & 1) == 0)
                    yield return choice ^ 1UL << other ^ 1UL << unit;
            }
        }
    }

    private static ulong Better(ChoiceModel model, ulong one, ulong other) => IsBetter(model.Expected(other), other, model.Expected(one), one) ? other : one;

    private static bool IsBetter(double expected, ulong choice, double least, ulong best)
    {
        if (expected != least)
            return expected < least;
        int fewer = BitOperations.PopCount(best).CompareTo(BitOperations.PopCount(choice));
        // Of two that differ, that which has the lowest unit in which they do.
        return fewer != 0 ? fewer > 0 : choice != best && (choice & (choice ^ best) & (~(choice ^ best) + 1)) != 0;
    }
}
