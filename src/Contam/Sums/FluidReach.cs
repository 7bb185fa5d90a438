using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Sums;

/// <summary>Where a part's fluid goes in an engine in which nothing else has failed.</summary>
internal static class FluidReach
{
    /// <summary>
    /// The part itself and every part that its fluid comes to along its own circuits, over joints that are open while nothing has failed,
    /// in some state that this engine has; in file order. Linear in parts and joints.
    /// </summary>
    internal static ImmutableArray<Part> From(Family family, PartId from)
    {
        var circuits = family.Circuits.Where(circuit => circuit.Parts.Contains(from)).Select(circuit => circuit.Name).ToHashSet(StringComparer.Ordinal);
        ILookup<PartId, PartId> next = family.Joints
            .Where(joint => joint.OnlyIfFailed is null && (joint.When & family.States) != 0 && circuits.Contains(joint.Circuit))
            .ToLookup(joint => joint.From, joint => joint.To);
        var reached = new HashSet<PartId> { from };
        var due = new Queue<PartId>(reached);
        while (due.TryDequeue(out PartId at))
        {
            foreach (PartId to in next[at])
            {
                if (reached.Add(to))
                    due.Enqueue(to);
            }
        }

        return [.. family.Parts.Where(part => reached.Contains(part.Id))];
    }
}
