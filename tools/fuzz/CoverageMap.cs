using System.Runtime.InteropServices;

namespace Contam.Fuzz;

/// <summary>
/// Which branches the readers have ever taken, and how often in one execution. An instrumented reader counts into a map of 64 KiB, one byte for
/// each pair of branches taken after one another (the scheme of the AFL fuzzers); counts are seen in eight classes.
/// </summary>
internal sealed unsafe class CoverageMap
{
    private const int Size = 1 << 16;
    private static readonly byte[] ClassOf = Classes();
    private readonly byte* counts = (byte*)NativeMemory.AlignedAlloc(Size, 64);
    private readonly byte[] ever = new byte[Size];

    /// <summary>A map that the instrumented readers of this process count into.</summary>
    public CoverageMap()
    {
        Begin();
        SharpFuzz.Common.Trace.SharedMem = counts;
    }

    /// <summary>Pairs of branches ever taken.</summary>
    public int Edges { get; private set; }

    /// <summary>Forgets the counts of the last execution.</summary>
    public void Begin()
    {
        new Span<byte>(counts, Size).Clear();
        SharpFuzz.Common.Trace.PrevLocation = 0;
    }

    /// <summary>Takes what was counted since the beginning into account; answers whether any of it is new.</summary>
    public bool Take()
    {
        bool isNew = false;
        ulong* words = (ulong*)counts;
        for (int word = 0; word < Size / 8; word++)
        {
            if (words[word] == 0)
                continue;
            for (int at = word * 8; at < (word * 8) + 8; at++)
            {
                byte seen = ClassOf[counts[at]];
                if ((seen & ~ever[at]) == 0)
                    continue;
                Edges += ever[at] == 0 ? 1 : 0;
                ever[at] |= seen;
                isNew = true;
            }
        }

        return isNew;
    }

    private static byte[] Classes()
    {
        byte[] classes = new byte[256];
        for (int count = 1; count < 256; count++)
        {
            classes[count] = count switch
            {
                1 => 1,
                2 => 2,
                3 => 4,
                < 8 => 8,
                < 16 => 16,
                < 32 => 32,
                < 128 => 64,
                _ => 128,
            };
        }

        return classes;
    }
}
