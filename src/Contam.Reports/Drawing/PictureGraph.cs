using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Spread;

namespace Contam.Reports.Drawing;

/// <summary>One box of the picture: a part, or several repeated ones that are joined and marked alike.</summary>
/// <param name="Label">The name that a person reads.</param>
/// <param name="Parts">The parts, by number.</param>
/// <param name="Mark">What is said of each of them.</param>
internal sealed record PictureBox(string Label, ImmutableArray<Part> Parts, PictureMark Mark)
{
    /// <summary>The ids of its parts, with a space between.</summary>
    public string Ids => string.Join(' ', Parts.Select(part => part.Id.Value));
}

/// <summary>One line of the picture.</summary>
/// <param name="From">The place of the box that it leaves.</param>
/// <param name="To">The place of the box that it enters.</param>
/// <param name="Circuit">The place of its circuit in <see cref="PictureGraph.Circuits"/>.</param>
/// <param name="Joint">The joint, or the first of those folded into it.</param>
/// <param name="Waits">What it waits for, in words; empty for a joint that is always open.</param>
internal sealed record PictureLine(int From, int To, int Circuit, Joint Joint, string Waits);

/// <summary>What is drawn: the boxes and lines of a family, before anything has a place. The picture in every form is made from it.</summary>
/// <param name="Boxes">In the order of the family.</param>
/// <param name="Lines">In the order of the family.</param>
/// <param name="Circuits">The circuits that have a line, in the order of the family: name, and fluid where said.</param>
/// <param name="Starts">The boxes at which loops begin: what a fluid is kept in, circuit by circuit.</param>
internal sealed record PictureGraph(ImmutableArray<PictureBox> Boxes, ImmutableArray<PictureLine> Lines, ImmutableArray<string> Circuits, ImmutableArray<int> Starts)
{
    /// <summary>The graph of a family. Cost: circuits × joints for each sort of repeated part, else linear.</summary>
    public static PictureGraph Of(Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, PictureOptions options)
    {
        PictureMark[] marks = [.. family.Parts.Select(part => PictureMark.Of(part, spreads, failed, options))];
        var boxes = ImmutableArray.CreateBuilder<PictureBox>();
        int[] boxOf = new int[family.Parts.Length];
        Array.Fill(boxOf, -1);
        Dictionary<string, ImmutableArray<Part>> folds = options.Unfold ? [] : Folds(family, marks);
        HashSet<PartId>? only = options.Only is { } some ? [.. some] : null;
        bool IsDrawn(PartId id) => only is null || only.Contains(id);
        for (int i = 0; i < family.Parts.Length; i++)
        {
            Part part = family.Parts[i];
            if (boxOf[i] >= 0 || !IsDrawn(part.Id))
                continue;
            ImmutableArray<Part> together = part.RepeatOf is { } repeat && folds.TryGetValue(repeat, out ImmutableArray<Part> fold) && fold.All(one => IsDrawn(one.Id)) ? fold : [part];
            foreach (Part one in together)
                boxOf[family.IndexOf(one.Id)] = boxes.Count;
            boxes.Add(new PictureBox(LabelOf(together), together, marks[i]));
        }

        Joint[] joints = [.. family.Joints.Where(joint => IsDrawn(joint.From) && IsDrawn(joint.To))];
        string[] names = [.. joints.Select(joint => joint.Circuit).Distinct(StringComparer.Ordinal)];
        string[] circuits = [.. family.Circuits.Select(circuit => circuit.Name).Where(names.Contains).Concat(names.Except(family.Circuits.Select(circuit => circuit.Name), StringComparer.Ordinal))];
        var known = new HashSet<(int, int, int, string, ParticleSize?)>();
        var lines = ImmutableArray.CreateBuilder<PictureLine>();
        foreach (Joint joint in joints)
        {
            (int from, int to) = (boxOf[family.IndexOf(joint.From)], boxOf[family.IndexOf(joint.To)]);
            int circuit = Array.IndexOf(circuits, joint.Circuit);
            string waits = WaitsOf(family, joint, boxOf, boxes);
            if (known.Add((from, to, circuit, waits, joint.Passage)))
                lines.Add(new PictureLine(from, to, circuit, joint, waits));
        }

        IEnumerable<int> starts = family.Circuits.SelectMany(circuit => circuit.Parts).Where(id => IsDrawn(id) && family[id].Kind.IsReservoir).Select(id => boxOf[family.IndexOf(id)]).Distinct();
        return new PictureGraph(boxes.ToImmutable(), lines.ToImmutable(), [.. circuits.Select(name => TitleOf(family, name))], [.. starts]);
    }

    private static Dictionary<string, ImmutableArray<Part>> Folds(Family family, PictureMark[] marks)
    {
        var folds = new Dictionary<string, ImmutableArray<Part>>(StringComparer.Ordinal);
        ILookup<string, Joint> joints = family.Joints.ToLookup(joint => joint.Circuit, StringComparer.Ordinal);
        foreach (IGrouping<string, Part> repeat in family.Parts.Where(part => part.RepeatOf is not null).GroupBy(part => part.RepeatOf!, StringComparer.Ordinal))
        {
            Part[] parts = [.. repeat.OrderBy(part => part.RepeatIndex)];
            bool isOne = parts.Length > 1
                && CircuitFold.AreContiguous(parts)
                && parts.All(part => marks[family.IndexOf(part.Id)] == marks[family.IndexOf(parts[0].Id)])
                && joints.All(circuit => CircuitFold.AreJoinedAlike(family, parts, [.. circuit]));
            if (isOne)
                folds.Add(repeat.Key, [.. parts]);
        }

        return folds;
    }

    // Injector 1 and its fellows are called Injector 1–6 where their names differ in the number only.
    private static string LabelOf(ImmutableArray<Part> parts)
    {
        if (parts.Length == 1)
            return parts[0].Name;
        string range = RepeatFolding.Range(parts[0].RepeatIndex, parts[^1].RepeatIndex);
        string tail = " " + parts[0].RepeatIndex.ToString(CultureInfo.InvariantCulture);
        string stem = parts[0].Name.EndsWith(tail, StringComparison.Ordinal) ? parts[0].Name[..^tail.Length] : "";
        bool isNumbered = stem.Length > 0 && parts.All(part => part.Name == string.Create(CultureInfo.InvariantCulture, $"{stem} {part.RepeatIndex}"));
        return isNumbered ? $"{stem} {range}" : $"{parts[0].RepeatOf} {range}";
    }

    private static string WaitsOf(Family family, Joint joint, int[] boxOf, IReadOnlyList<PictureBox> boxes)
    {
        string? failed = joint.OnlyIfFailed is not { } part ? null : family.Find(part) is not { } known ? part.Value : boxOf[family.IndexOf(part)] is >= 0 and var box ? boxes[box].Label : known.Name;
        return string.Join(", ", JointWords.Waits(failed, joint.When, family.States));
    }

    private static string TitleOf(Family family, string name) =>
        family.Circuits.FirstOrDefault(circuit => circuit.Name == name)?.Fluid is { } fluid && fluid != name ? $"{name} ({fluid})" : name;
}
