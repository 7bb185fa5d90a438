using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>On which looks something hangs, as bits: the first look is bit 0.</summary>
/// <param name="OnlyIf">It is done where any of these counts as found; none for always.</param>
/// <param name="Unless">It is struck where any of these counts as found.</param>
internal readonly record struct HangsOn(int OnlyIf, int Unless)
{
    /// <summary>Whether it is done where these looks count as found.</summary>
    internal bool IsMet(int countsAsFound) => (OnlyIf == 0 || (OnlyIf & countsAsFound) != 0) && (Unless & countsAsFound) == 0;

    /// <summary>All looks that it names.</summary>
    internal int Named => OnlyIf | Unless;

    /// <summary>Reads a condition; <c>null</c> where it names a look that is none, which is then <paramref name="unknown"/>.</summary>
    internal static HangsOn? Read(IReadOnlyDictionary<string, int> looks, ImmutableArray<string> onlyIf, ImmutableArray<string> unless, out string? unknown)
    {
        unknown = onlyIf.OrEmpty().Concat(unless.OrEmpty()).FirstOrDefault(letter => letter is null || !looks.ContainsKey(letter));
        if (unknown is not null || onlyIf.OrEmpty().Concat(unless.OrEmpty()).Contains(null!))
            return null;
        return new HangsOn(Bits(onlyIf), Bits(unless));

        int Bits(ImmutableArray<string> letters) => letters.OrEmpty().Aggregate(0, (bits, letter) => bits | (1 << looks[letter]));
    }
}
