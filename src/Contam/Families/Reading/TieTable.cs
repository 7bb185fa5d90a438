using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>For every part the parts that it is tied to, in the order in which they were put in.</summary>
internal sealed class TieTable(ImmutableArray<Part> parts)
{
    private readonly List<(int Other, Tie Tie)>?[] ties = new List<(int, Tie)>?[parts.Length];
    private readonly Dictionary<PartId, int> indexOf = IndexOf(parts);

    /// <summary>What a part is tied to.</summary>
    public IReadOnlyList<(int Other, Tie Tie)> Of(int part) => ties[part] ?? (IReadOnlyList<(int, Tie)>)[];

    /// <summary>Ties a part to another. An id that was not found has had its problem and ties nothing.</summary>
    public void Add(int part, PartId other, Tie tie)
    {
        if (indexOf.TryGetValue(other, out int found))
            (ties[part] ??= []).Add((found, tie));
    }

    /// <summary>The same, with the part named and the other known.</summary>
    public void AddBack(PartId part, int other, Tie tie)
    {
        if (indexOf.TryGetValue(part, out int found))
            (ties[found] ??= []).Add((other, tie));
    }

    private static Dictionary<PartId, int> IndexOf(ImmutableArray<Part> parts)
    {
        var indexOf = new Dictionary<PartId, int>(parts.Length);
        for (int part = 0; part < parts.Length; part++)
            indexOf[parts[part].Id] = part;
        return indexOf;
    }
}
