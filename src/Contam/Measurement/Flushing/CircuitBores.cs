using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// The bores that a flush of a circuit runs through, and what the circuit holds. How the flow divides is not described in a family, so it
/// is assumed: the parts that repeat one description share the flow evenly, and every other part has all of it. A fork into different parts
/// gives each of them less than that, so what is said of them is the most that the flow can do there.
/// </summary>
public static class CircuitBores
{
    /// <summary>The parts of these that say a bore, in their order; each with as many branches as it has fellows among them.</summary>
    /// <param name="parts">The parts that are flushed in one go.</param>
    public static ImmutableArray<BoreToFlush> Of(IEnumerable<Part> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        Part[] bored = [.. parts.Where(part => part.Bore is not null)];
        ILookup<string, Part> fellows = bored.Where(part => part.RepeatOf is not null).ToLookup(part => part.RepeatOf!, StringComparer.Ordinal);
        return
        [
            .. bored.Select(part => new BoreToFlush(part.Id, part.Bore!.Value)
            {
                Branches = part.RepeatOf is { } repeat ? fellows[repeat].Count() : 1,
                Length = part.Length,
            }),
        ];
    }

    /// <summary>The same for every part of a circuit, in flow order.</summary>
    public static ImmutableArray<BoreToFlush> Of(Family family, Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(circuit);
        return Of(OnRuns(family, circuit));
    }

    /// <summary>
    /// The parts that the circuit's fluid runs through, in flow order. A part that only a link brings to the circuit (what a cracked cooler
    /// would let the oil into) is not flushed with it.
    /// </summary>
    internal static ImmutableArray<Part> OnRuns(Family family, Circuit circuit)
    {
        var onRuns = new HashSet<PartId>();
        foreach (Joint joint in family.Joints)
        {
            if (joint.IsLink || joint.Circuit != circuit.Name)
                continue;
            onRuns.Add(joint.From);
            onRuns.Add(joint.To);
        }

        return [.. circuit.Parts.Where(onRuns.Contains).Select(part => family[part])];
    }

    /// <summary>What the parts of a circuit hold that say so; <c>null</c> where none does. The least that the circuit holds.</summary>
    public static Volume? VolumeOf(Family family, Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(circuit);
        double[] volumes = [.. OnRuns(family, circuit).Select(part => part.Volume?.CubicMetres).OfType<double>()];
        return volumes.Length == 0 ? null : new Volume(volumes.Sum());
    }
}
