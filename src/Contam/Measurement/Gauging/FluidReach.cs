using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;

namespace Contam.Measurement.Gauging;

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
        HashSet<PartId> reached = ReachByName.From(from, family.Joints
            .Where(joint => joint.OnlyIfFailed is null && (joint.When & family.States) != 0 && circuits.Contains(joint.Circuit))
            .Select(joint => (joint.From, joint.To)));
        return [.. family.Parts.Where(part => reached.Contains(part.Id))];
    }
}
