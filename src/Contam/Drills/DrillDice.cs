using Contam.Procedure;

namespace Contam.Drills;

/// <summary>The chance of one question: the same for the same seed, whatever was asked before it.</summary>
internal sealed class DrillDice(ulong seed, DrillKind kind)
{
    // Eight numbers a seed, so that questions do not share theirs.
    private readonly FixedDice dice = new(unchecked((seed * 8) + (ulong)kind));

    /// <summary>Whether it happens.</summary>
    /// <param name="chance">From 0, never, to 1, always.</param>
    public bool Happens(double chance) => dice.Next() < chance;

    /// <summary>One of them.</summary>
    public T Pick<T>(IReadOnlyList<T> from) => from[(int)(dice.Next() * from.Count)];

    /// <summary>All of them in some order (Fisher and Yates, as in D. E. Knuth, The Art of Computer Programming, volume 2, algorithm P).</summary>
    public T[] Shuffled<T>(IEnumerable<T> from)
    {
        T[] shuffled = [.. from];
        for (int last = shuffled.Length - 1; last > 0; last--)
        {
            int other = (int)(dice.Next() * (last + 1));
            (shuffled[last], shuffled[other]) = (shuffled[other], shuffled[last]);
        }

        return shuffled;
    }
}
