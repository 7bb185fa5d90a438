namespace Contam.Drills;

/// <summary>Draws wrong choices of several sorts.</summary>
internal static class Mixed
{
    /// <summary>At most so many, each once: one of each sort in turn, and round again.</summary>
    public static List<T> Of<T>(DrillDice dice, int most, params ReadOnlySpan<IReadOnlyCollection<T>> sorts)
        where T : notnull
    {
        var shuffled = new List<Queue<T>>();
        foreach (IReadOnlyCollection<T> sort in sorts)
            shuffled.Add(new Queue<T>(dice.Shuffled(sort)));
        var drawn = new List<T>();
        while (drawn.Count < most && shuffled.Any(sort => sort.Count > 0))
        {
            foreach (Queue<T> sort in shuffled)
            {
                if (drawn.Count < most && sort.TryDequeue(out T? one) && !drawn.Contains(one))
                    drawn.Add(one);
            }
        }

        return drawn;
    }
}
