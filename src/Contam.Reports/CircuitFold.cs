using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;

namespace Contam.Reports;

/// <summary>One joint of a folded circuit.</summary>
/// <param name="From">The place of the vertex upstream.</param>
/// <param name="To">The place of the vertex downstream.</param>
/// <param name="Joint">The joint, or the first of several that differ in nothing but the number of a repeated part.</param>
/// <param name="IfFailed">The part that it waits for, as folded; <c>null</c> for none.</param>
internal sealed record FoldedJoint(int From, int To, Joint Joint, string? IfFailed);

/// <summary>
/// A circuit with repeated parts folded into one vertex where every one of them is joined alike, number to number or to the same parts.
/// </summary>
/// <param name="Vertices">In the order in which the runs name them: what each is called, for instance <c>injector-1–4</c>, and its parts.</param>
/// <param name="Joints">In the order of the family.</param>
internal sealed record CircuitFold(ImmutableArray<(string Label, ImmutableArray<Part> Parts)> Vertices, ImmutableArray<FoldedJoint> Joints)
{
    /// <summary>Folds a circuit. Cost: linear in its parts and joints, but for sorting the joints of each part.</summary>
    public static CircuitFold Of(Family family, Circuit circuit)
    {
        Joint[] joints = [.. family.Joints.Where(joint => joint.Circuit == circuit.Name)];
        ILookup<string, Part> repeats = circuit.Parts.Select(id => family[id]).Where(part => part.RepeatOf is not null).ToLookup(part => part.RepeatOf!, StringComparer.Ordinal);
        var folded = repeats.Where(repeat => repeat.Count() > 1 && AreContiguous([.. repeat]) && AreJoinedAlike(family, [.. repeat], joints)).Select(repeat => repeat.Key).ToHashSet(StringComparer.Ordinal);
        var vertices = ImmutableArray.CreateBuilder<(string, ImmutableArray<Part>)>();
        var placeOf = new Dictionary<PartId, int>();
        foreach (Part part in circuit.Parts.Select(id => family[id]))
        {
            if (placeOf.ContainsKey(part.Id))
                continue;
            ImmutableArray<Part> together = part.RepeatOf is { } repeat && folded.Contains(repeat) ? [.. repeats[repeat].OrderBy(one => one.RepeatIndex)] : [part];
            foreach (Part one in together)
                placeOf.Add(one.Id, vertices.Count);
            vertices.Add((LabelOf(together), together));
        }

        var known = new HashSet<(int, int, EngineStates, string?, ParticleSize?)>();
        var edges = ImmutableArray.CreateBuilder<FoldedJoint>();
        foreach (Joint joint in joints)
        {
            string? ifFailed = joint.OnlyIfFailed is { } failed ? ConditionOf(family, failed, joint, folded) : null;
            (int from, int to) = (placeOf[joint.From], placeOf[joint.To]);
            if (known.Add((from, to, joint.When, ifFailed, joint.Passage)))
                edges.Add(new FoldedJoint(from, to, joint, ifFailed));
        }

        return new CircuitFold(vertices.ToImmutable(), edges.ToImmutable());
    }

    private static string LabelOf(ImmutableArray<Part> parts) => parts.Length == 1
        ? parts[0].Id.Value
        : $"{parts[0].RepeatOf}-{RepeatFolding.Range(parts[0].RepeatIndex, parts[^1].RepeatIndex)}";

    internal static bool AreContiguous(Part[] parts)
    {
        int[] numbers = [.. parts.Select(part => part.RepeatIndex).Order()];
        return numbers[^1] - numbers[0] == numbers.Length - 1;
    }

    internal static bool AreJoinedAlike(Family family, Part[] parts, Joint[] joints)
    {
        var own = parts.ToDictionary(part => part.Id, _ => new List<string>());
        foreach (Joint joint in joints)
        {
            if (own.TryGetValue(joint.From, out List<string>? onward))
                onward.Add("to " + Signature(family, joint, family[joint.From], joint.To));
            if (own.TryGetValue(joint.To, out List<string>? back))
                back.Add("from " + Signature(family, joint, family[joint.To], joint.From));
        }

        string first = string.Join('\n', own[parts[0].Id].Order(StringComparer.Ordinal));
        return parts.All(part => string.Join('\n', own[part.Id].Order(StringComparer.Ordinal)) == first);
    }

    // What a joint is like, seen from one of the repeated parts: its own number is written as #.
    private static string Signature(Family family, Joint joint, Part seenFrom, PartId other) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Relative(family, other, seenFrom)} {(int)joint.When} {joint.Passage?.Micrometres} {(joint.OnlyIfFailed is { } failed ? Relative(family, failed, seenFrom) : "")}");

    private static string Relative(Family family, PartId id, Part seenFrom)
    {
        Part part = family[id];
        return part.RepeatOf is { } repeat && part.RepeatIndex == seenFrom.RepeatIndex ? repeat + "-#" : id.Value;
    }

    // A part that a joint waits for is told by "#" where it bears the number of the folded part that is joined.
    private static string ConditionOf(Family family, PartId failed, Joint joint, HashSet<string> folded)
    {
        foreach (PartId end in (ReadOnlySpan<PartId>)[joint.From, joint.To])
        {
            Part part = family[end];
            if (part.RepeatOf is { } repeat && folded.Contains(repeat) && family[failed].RepeatOf is not null)
                return Relative(family, failed, part);
        }

        return failed.Value;
    }
}
