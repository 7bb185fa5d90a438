using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Contam.Families;

namespace Contam.Reports.Json;

/// <summary>What is in a family, as JSON: the contract <c>contam-parts/1</c>.</summary>
public static class FamilyJson
{
    /// <summary>The family as JSON, closed by a newline.</summary>
    public static string Write(Family family)
    {
        ArgumentNullException.ThrowIfNull(family);
        ILookup<PartId, string> circuitsOf = family.Circuits.SelectMany(circuit => circuit.Parts.Select(part => (part, circuit.Name))).ToLookup(pair => pair.part, pair => pair.Name);
        return ReportJson.Write(
            new PartsAnswer(
                "contam-parts/1",
                family.Id,
                [.. family.Parts.Select(part => new PartsPart(part.Id.Value, part.Name, part.Kind.Name, [.. circuitsOf[part.Id]]))],
                [.. family.Joints.Select(joint => new PartsJoint(joint.From.Value, joint.To.Value, joint.Circuit, StatesOf(joint.When), joint.OnlyIfFailed?.Value))]),
            ReportJson.Context.PartsAnswer);
    }

    internal static ImmutableArray<string> StatesOf(EngineStates states) =>
    [
        .. new[] { (EngineStates.Running, "running"), (EngineStates.Cranking, "cranking"), (EngineStates.Stopped, "stopped") }
            .Where(pair => states.HasFlag(pair.Item1))
            .Select(pair => pair.Item2),
    ];
}

internal sealed record PartsAnswer(string Format, string Family, ImmutableArray<PartsPart> Parts, ImmutableArray<PartsJoint> Joints);

internal sealed record PartsPart(string Id, string Name, string Kind, ImmutableArray<string> Circuits);

internal sealed record PartsJoint(string From, string To, string Circuit, [property: JsonPropertyName("when")] ImmutableArray<string> When, string? OnlyIfFailed);
