using Contam.Families;

namespace Contam.Support.Generation;

/// <summary>Draws from a seeded source of chance.</summary>
public static class Draw
{
    // Few sizes, so that equal ones, which are where mistakes hide, are common.
    private static readonly double[] Sizes = [1, 5, 10, 20, 20, 25, 50, 50, 100, 250, 400, 1000];
    private static readonly double[] Minutes = [0, 5, 7.5, 10, 20, 45, 120];

    /// <summary>One of these, each as likely as the others.</summary>
    public static T Of<T>(this Random random, IReadOnlyList<T> choices)
    {
        ArgumentNullException.ThrowIfNull(random);
        ArgumentNullException.ThrowIfNull(choices);
        return choices[random.Next(choices.Count)];
    }

    /// <summary>All of these in any order.</summary>
    public static T[] Shuffled<T>(this Random random, IEnumerable<T> items)
    {
        ArgumentNullException.ThrowIfNull(random);
        T[] shuffled = [.. items];
        random.Shuffle(shuffled);
        return shuffled;
    }

    /// <summary>Whether something happens that happens at this rate, from 0 (never) to 1.</summary>
    internal static bool Happens(this Random random, double rate) => random.NextDouble() < rate;

    internal static ParticleSize Size(this Random random) =>
        ParticleSize.FromMicrometres(random.Happens(0.9) ? random.Of(Sizes) : random.Next(1, 2000) / 2.0);

    internal static TaskMinutes TaskMinutes(this Random random)
    {
        double? Some() => random.Happens(0.6) ? random.Of(Minutes) : null;
        return new() { Inspect = Some(), Remove = Some(), Flush = Some(), Clean = Some(), Test = Some(), Replace = Some(), Refit = Some() };
    }
}
