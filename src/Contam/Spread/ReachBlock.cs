using Contam.Families;

namespace Contam.Spread;

/// <summary>Which parts each of some failures reaches; <see cref="ReachSets"/> makes it.</summary>
public sealed class ReachBlock
{
    private readonly Family family;
    private readonly int[] component;
    private readonly ulong[] sets;
    private readonly Dictionary<int, bool[]> searched;
    private readonly int words;

    internal ReachBlock(Family family, int first, int count, int[] component, ulong[] sets, Dictionary<int, bool[]> searched)
    {
        this.family = family;
        this.component = component;
        this.sets = sets;
        this.searched = searched;
        words = (count + 63) / 64;
        First = first;
        Count = count;
    }

    /// <summary>The place in the family of the first failed part of the block.</summary>
    public int First { get; }

    /// <summary>How many failed parts it holds, one after another in the order of the family.</summary>
    public int Count { get; }

    /// <summary>Whether the failure of one part reaches another; a part reaches itself.</summary>
    /// <param name="failed">The place in the family of the failed part, from <see cref="First"/> on, before <see cref="First"/> + <see cref="Count"/>.</param>
    /// <param name="part">The place in the family of the other.</param>
    /// <exception cref="ArgumentOutOfRangeException">The failed part is not of this block, or the other not of the family.</exception>
    public bool Reaches(int failed, int part)
    {
        int source = failed - First;
        ArgumentOutOfRangeException.ThrowIfNegative(source, nameof(failed));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(source, Count, nameof(failed));
        ArgumentOutOfRangeException.ThrowIfNegative(part);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(part, component.Length);
        return searched.TryGetValue(failed, out bool[]? own)
            ? own[part]
            : (sets[component[part] * words + source / 64] >> (source % 64) & 1) != 0;
    }

    /// <summary>The parts that a failure reaches, itself included, in the order of the family.</summary>
    /// <param name="failed">The place in the family of the failed part; of this block.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not of this block.</exception>
    public IEnumerable<PartId> From(int failed) => family.Parts.Where((_, part) => Reaches(failed, part)).Select(part => part.Id);
}
