using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Contam.Families;

namespace Contam.Support;

/// <summary>
/// Makes a family of parts and joints that stand in no file: numbers the joints, finds the circuits, sets the places and the hash.
/// The same parts and joints give an equal family.
/// </summary>
public static class SystemBuilder
{
    /// <summary>The id of every family made here.</summary>
    public const string FamilyId = "system";

    /// <summary>A family of these parts, in this order, and of these joints between them, in this order.</summary>
    /// <remarks>
    /// A circuit's parts are those of its joints that are not links, in order of first mention.
    /// A run ends at a part that some joint of the run leads to and none leads from.
    /// </remarks>
    public static Family Build(IEnumerable<Part> parts, IEnumerable<Joint> joints, EngineStates states = EngineStates.All)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(joints);
        ImmutableArray<Part> placedParts = [.. parts.Select((part, index) => part with { Place = ShopFloor.Written(index + 1) })];
        ImmutableArray<Joint> placedJoints =
            [.. joints.Select((joint, index) => joint with { Id = index, Place = ShopFloor.Written(placedParts.Length + index + 1) })];
        return new Family(FamilyId, placedParts, CircuitsOf(placedJoints), placedJoints)
        {
            Title = "Test system",
            States = states,
            Sha256 = HashOf(placedParts, placedJoints, states),
        };
    }

    /// <summary>The joints of this family that both parts still stand in, for a family of fewer parts.</summary>
    public static IEnumerable<Joint> JointsAmong(IEnumerable<Joint> joints, IEnumerable<Part> parts)
    {
        ArgumentNullException.ThrowIfNull(joints);
        HashSet<PartId> kept = [.. parts.Select(part => part.Id)];
        return joints.Where(joint => kept.Contains(joint.From) && kept.Contains(joint.To)
            && (joint.OnlyIfFailed is not { } condition || kept.Contains(condition)));
    }

    private static ImmutableArray<Circuit> CircuitsOf(ImmutableArray<Joint> joints)
    {
        var circuits = ImmutableArray.CreateBuilder<Circuit>();
        foreach (IGrouping<string, Joint> circuit in joints.GroupBy(joint => joint.Circuit, StringComparer.Ordinal))
        {
            Joint[] runs = [.. circuit.Where(joint => !joint.IsLink)];
            HashSet<PartId> leadOn = [.. runs.Select(joint => joint.From)];
            circuits.Add(new Circuit(circuit.Key, ShopFloor.Written(1))
            {
                Parts = [.. runs.SelectMany(joint => new[] { joint.From, joint.To }).Distinct()],
                RunEnds = [.. runs.Select(joint => joint.To).Where(part => !leadOn.Contains(part)).Distinct()],
            });
        }

        return circuits.ToImmutable();
    }

    // Stands in for the hash of a file: two systems that differ in a part or a joint have different ones.
    private static string HashOf(ImmutableArray<Part> parts, ImmutableArray<Joint> joints, EngineStates states)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{(int)states}\n");
        foreach (Part part in parts)
            text.Append(Notation.CaseWriter.PartText(part)).Append('\n');
        foreach (Joint joint in joints)
            text.Append(Notation.CaseWriter.JointText(joint)).Append('\n');
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
