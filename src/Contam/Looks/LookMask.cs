using System.Collections.Immutable;
using System.Numerics;

namespace Contam.Looks;

/// <summary>
/// A set of looks as bits: what has it depends on debris being found at any of them. 0 stands for never, <see cref="Always"/> for whatever is seen,
/// and nothing stands beside that.
/// </summary>
internal static class LookMask
{
    /// <summary>The most looks that there may be, which is the number of letters.</summary>
    public const int Most = 16;

    /// <summary>Whatever is seen.</summary>
    public const int Always = 1 << 30;

    /// <summary>This look alone.</summary>
    public static int Of(int look) => 1 << look;

    /// <summary>Either.</summary>
    public static int Or(int one, int other) => ((one | other) & Always) != 0 ? Always : one | other;

    /// <summary>Whether it comes about where these looks, as bits, count as having found debris.</summary>
    public static bool IsMet(int mask, int found) => mask == Always || (mask & found) != 0;

    /// <summary>The looks of it, rising; none for <see cref="Always"/>.</summary>
    public static ImmutableArray<int> Looks(int mask)
    {
        var looks = ImmutableArray.CreateBuilder<int>();
        for (int left = mask & ~Always; left != 0; left &= left - 1)
            looks.Add(BitOperations.TrailingZeroCount(left));
        return looks.ToImmutable();
    }

    /// <summary>As a condition. 0, which never comes about, has none.</summary>
    public static LookCondition ToCondition(int onlyIf, int unless = 0) => onlyIf == 0
        ? throw new ArgumentOutOfRangeException(nameof(onlyIf), "what never comes about has no condition")
        : new LookCondition { OnlyIf = Looks(onlyIf), Unless = Looks(unless) };
}
