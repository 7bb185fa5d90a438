using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;
using Contam.Graphs;

namespace Contam.Spread;

/// <summary>
/// Which parts every part's failure reaches, for the failure of each part by itself, all at once.
/// <para>
/// What is reached does not depend on the debris: a barrier lowers the grade and the size, and never takes a part off the list (see <see cref="Spreading"/>).
/// So one set stands for a failure with every debris.
/// </para>
/// <para>
/// Definition: the set of <c>f</c> holds <c>v</c> when a path leads from <c>f</c> to <c>v</c> over joints that some state of the engine opens and that wait
/// for no failure, or for that of <c>f</c>.
/// </para>
/// <para>
/// Method: loops are drawn together (<see cref="StronglyConnectedComponents"/>), since what reaches one part of a loop reaches all of it; then, along the flow, every
/// component takes over the sources of those that lead to it, 64 to a word. Sources are taken in blocks, so that memory stays within
/// <see cref="BlockBits"/>; up to 30,000 parts one block holds them all. A part whose failure opens joints of its own stands in a graph of its own, and is
/// searched from by itself.
/// </para>
/// <para>
/// Cost: for n parts and m joints, n (n + m) / 64 steps, and n + m for every part whose failure opens joints; at most 113 MB of sets at a time. Literature:
/// Purdom, "A transitive closure algorithm", BIT 10, 1970.
/// </para>
/// </summary>
public static class ReachSets
{
    /// <summary>How many bits of sets are held at a time: 30,000 sources times 30,000 parts.</summary>
    public const long BlockBits = 30_000L * 30_000L;

    /// <summary>The sets, in blocks of failed parts in the order of the family; each block is to be read before the next is asked for.</summary>
    /// <param name="family">The family.</param>
    public static IEnumerable<ReachBlock> Of(Family family) => Of(family, BlockBits);

    /// <summary>The sets, with at most so many bits of them at a time, or those of one failed part where that is more.</summary>
    internal static IEnumerable<ReachBlock> Of(Family family, long blockBits)
    {
        ArgumentNullException.ThrowIfNull(family);
        int parts = family.Parts.Length;
        if (parts == 0)
            yield break;

        PackedGraph graph = SpreadGraph.Pack(family, joint => SpreadGraph.IsOpen(family, joint, ImmutableHashSet<PartId>.Empty));
        StronglyConnectedComponents loops = StronglyConnectedComponents.Of(graph);
        PackedGraph between = Between(graph, loops);
        ILookup<int, Joint> opens = family.Joints
            .Where(joint => joint.OnlyIfFailed is not null && (joint.When & family.States) != EngineStates.None)
            .ToLookup(joint => family.IndexOf(joint.OnlyIfFailed!.Value));
        int size = (int)Math.Clamp(blockBits / parts, 1, parts);
        for (int first = 0; first < parts; first += size)
            yield return Block(family, graph, loops, between, opens, first, Math.Min(size, parts - first));
    }

    /// <summary>The joints between components, each pair once.</summary>
    private static PackedGraph Between(PackedGraph graph, StronglyConnectedComponents loops)
    {
        var from = new List<int>();
        var to = new List<int>();
        for (int vertex = 0; vertex < graph.VertexCount; vertex++)
        {
            for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
            {
                if (loops.Component[vertex] == loops.Component[graph.Target[place]])
                    continue;
                from.Add(loops.Component[vertex]);
                to.Add(loops.Component[graph.Target[place]]);
            }
        }

        return PackedGraph.Of(loops.Count, from.ToArray(), to.ToArray());
    }

    private static ReachBlock Block(Family family, PackedGraph graph, StronglyConnectedComponents loops, PackedGraph between, ILookup<int, Joint> opens, int first, int count)
    {
        int words = (count + 63) / 64;
        ulong[] sets = new ulong[(long)words * loops.Count];
        for (int source = 0; source < count; source++)
            sets[(long)loops.Component[first + source] * words + source / 64] |= 1UL << (source % 64);

        // Every joint leads to a lower number, so whatever reaches a component is there when its turn comes.
        for (int component = loops.Count - 1; component >= 0; component--)
        {
            Span<ulong> own = sets.AsSpan(component * words, words);
            for (int place = between.First[component]; place < between.First[component + 1]; place++)
                Join(sets.AsSpan(between.Target[place] * words, words), own);
        }

        var searched = new Dictionary<int, bool[]>();
        for (int source = first; source < first + count; source++)
        {
            if (opens.Contains(source))
                searched[source] = WithOwnJoints(family, graph, source, opens[source]);
        }

        return new ReachBlock(family, first, count, loops.Component, sets, searched);
    }

    private static void Join(Span<ulong> into, ReadOnlySpan<ulong> other)
    {
        int word = 0;
        for (int width = Vector<ulong>.Count; word + width <= into.Length; word += width)
            (new Vector<ulong>(into[word..]) | new Vector<ulong>(other[word..])).CopyTo(into[word..]);
        for (; word < into.Length; word++)
            into[word] |= other[word];
    }

    private static bool[] WithOwnJoints(Family family, PackedGraph graph, int source, IEnumerable<Joint> opened)
    {
        ILookup<int, int> beyond = opened.ToLookup(joint => family.JointFrom[joint.Id], joint => family.JointTo[joint.Id]);
        return Reachable.From(graph, [source], alsoTo: vertex => beyond[vertex]);
    }
}
