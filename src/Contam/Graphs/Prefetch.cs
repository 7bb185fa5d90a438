using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics.X86;

namespace Contam.Graphs;

/// <summary>Asks for memory before it is needed. Nothing is read or changed by it, and where the processor is not told so, nothing happens.</summary>
internal static class Prefetch
{
    /// <summary>Fetches the item at this place, which may be one past the end. Should the array be moved meanwhile, something else is fetched, and no harm is done.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static unsafe void Item<T>(T[] items, int place)
        where T : unmanaged
    {
        if (Sse.IsSupported)
            Sse.Prefetch0(Unsafe.AsPointer(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(items), place)));
    }
}
