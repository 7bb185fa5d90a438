using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Contam.Families.Reading.Shapes;

/// <summary>
/// A list that grows by pieces and is copied once, when it is whole. One that grows by doubling would leave half of itself lying in large blocks, which
/// the runtime gives back late.
/// </summary>
internal sealed class Pieces<T>
{
    private const int MostInPiece = 1024;

    private readonly List<T[]> full = [];
    private T[] last = [];
    private int inLast;

    /// <summary>Puts an item behind the others.</summary>
    public void Add(T item)
    {
        if (inLast == last.Length)
        {
            if (inLast == MostInPiece)
            {
                full.Add(last);
                (last, inLast) = (new T[MostInPiece], 0);
            }
            else
            {
                Array.Resize(ref last, Math.Max(4, 2 * inLast));
            }
        }

        last[inLast++] = item;
    }

    /// <summary>All items, in their order.</summary>
    public ImmutableArray<T> ToImmutable()
    {
        if (full.Count == 0 && inLast == last.Length)
            return ImmutableCollectionsMarshal.AsImmutableArray(last);
        var all = new T[(full.Count * MostInPiece) + inLast];
        for (int piece = 0; piece < full.Count; piece++)
            full[piece].CopyTo(all, piece * MostInPiece);
        last.AsSpan(0, inLast).CopyTo(all.AsSpan(full.Count * MostInPiece));
        return ImmutableCollectionsMarshal.AsImmutableArray(all);
    }
}
