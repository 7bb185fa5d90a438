using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Spread;

namespace Contam.Reports;

/// <summary>
/// The circuits of a family as a Mermaid flow chart. A part stands in the box of the first circuit that names it. Where spreads are given, its
/// grade shows by shape, border and word as well as by colour. Ids of nodes are ours, and of what a person wrote only letters, digits, spaces and
/// a few marks are written as they are; the rest are character codes, so that no name can end a text or give an order to the reader.
/// </summary>
public static class Mermaid
{
    private const string Plain = " -,.";

    /// <summary>Writes the chart.</summary>
    /// <param name="family">The family.</param>
    /// <param name="spreads">How far each debris has gone; empty for the circuits alone.</param>
    /// <param name="failed">The failed parts.</param>
    /// <param name="looks">Where to look, said in their boxes; usually the looks of a stop line. Empty for none.</param>
    /// <param name="writer">Where it goes.</param>
    public static void Write(Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, ImmutableArray<PartId> looks, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write("flowchart LR\n");
        bool isMarked = !spreads.IsEmpty;
        var marks = family.Parts.Select(part => new Mark(part, spreads, failed.Contains(part.Id), looks.Contains(part.Id))).ToList();
        var placed = new bool[family.Parts.Length];
        for (int circuit = 0; circuit < family.Circuits.Length; circuit++)
        {
            Circuit named = family.Circuits[circuit];
            Box(writer, $"c{Number(circuit)}", named.Fluid is null ? named.Name : $"{named.Name}, {named.Fluid}", [.. named.Parts.Select(family.IndexOf)], marks, placed);
        }

        Box(writer, "loose", "on no circuit", [.. Enumerable.Range(0, family.Parts.Length)], marks, placed);
        foreach (Joint joint in family.Joints)
            writer.Write($"  p{Number(family.IndexOf(joint.From))} {Line(family, joint)} p{Number(family.IndexOf(joint.To))}\n");
        if (isMarked)
            Legend(writer, marks);
    }

    /// <summary>A text that stands between the quotes of a chart as it is and is shown as it was written; what a terminal would obey is a question mark.</summary>
    internal static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (Rune rune in TextPage.Harmless(text).EnumerateRunes())
        {
            bool isPlain = Rune.IsLetterOrDigit(rune) || (rune.IsAscii && Plain.Contains((char)rune.Value, StringComparison.Ordinal))
                || Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
            if (isPlain)
                escaped.Append(rune.ToString());
            else
                escaped.Append(CultureInfo.InvariantCulture, $"#{rune.Value};");
        }

        return escaped.ToString();
    }

    private static void Box(TextWriter writer, string id, string title, ImmutableArray<int> parts, List<Mark> marks, bool[] placed)
    {
        int[] here = [.. parts.Where(part => !placed[part])];
        if (here.Length == 0)
            return;
        writer.Write($"  subgraph {id}[\"{Escape(title)}\"]\n");
        foreach (int part in here)
        {
            placed[part] = true;
            writer.Write($"    p{Number(part)}{marks[part].Shape(Escape(marks[part].Label))}\n");
        }

        writer.Write("  end\n");
    }

    // Full: always open. Dotted: it waits for something, which stands on it.
    private static string Line(Family family, Joint joint)
    {
        string[] notes = [.. JointWords.Waits(joint.OnlyIfFailed?.Value, joint.When, family.States), .. JointWords.LetsOn(joint, TextLook.Plain)];
        string line = joint.OnlyIfFailed is null && joint.When == family.States ? "-->" : "-.->";
        return notes.Length == 0 ? line : $"{line}|\"{Escape(string.Join(", ", notes))}\"|";
    }

    private static void Legend(TextWriter writer, List<Mark> marks)
    {
        writer.Write("  classDef failed fill:#d55e00,color:#000000,stroke:#000000,stroke-width:4px\n");
        writer.Write("  classDef exposed fill:#f0b08a,color:#000000,stroke:#000000,stroke-width:3px\n");
        writer.Write("  classDef guarded fill:#f0e442,color:#000000,stroke:#000000,stroke-width:2px,stroke-dasharray:6 3\n");
        writer.Write("  classDef cleared fill:#9ad0f0,color:#000000,stroke:#000000,stroke-width:2px,stroke-dasharray:1 3\n");
        foreach (string grade in new[] { "failed", "exposed", "guarded", "cleared" })
        {
            string[] parts = [.. Enumerable.Range(0, marks.Count).Where(part => marks[part].Class == grade).Select(part => "p" + Number(part))];
            if (parts.Length > 0)
                writer.Write($"  class {string.Join(',', parts)} {grade}\n");
        }
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>How a part is shown: the worst of its grades gives its class, and with it the shape.</summary>
    private sealed class Mark
    {
        public Mark(Part part, ImmutableArray<DebrisSpread> spreads, bool isFailed, bool isLook)
        {
            (Debris Debris, ReachedPart Reached)[] reached = [.. spreads.Select(spread => (spread.Debris, Reached: spread.Find(part.Id))).Where(one => one.Reached is not null).Select(one => (one.Debris, one.Reached!))];
            Class = isFailed ? "failed" : reached.Length == 0 ? "" : WordOf(reached.Min(one => one.Reached.Grade));
            Label = string.Join(", ", reached.Select(one => $"{WordOf(one.Reached.Grade)} {one.Debris.Name}{SizeOf(one.Debris, one.Reached.Reach)}").Prepend(isFailed ? part.Name + ", failed" : part.Name).Concat(isLook ? ["look here"] : []));
        }

        public string Class { get; }

        public string Label { get; }

        public string Shape(string label) => Class switch
        {
            "failed" => $"{{{{\"{label}\"}}}}",
            "exposed" => $"[[\"{label}\"]]",
            "guarded" => $"(\"{label}\")",
            "cleared" => $"([\"{label}\"])",
            _ => $"[\"{label}\"]",
        };

        private static string WordOf(Grade grade) => grade.ToString().ToLowerInvariant();

        private static string SizeOf(Debris debris, ParticleSize reach) => !debris.HasSize || reach.IsUnlimited ? "" : string.Create(CultureInfo.InvariantCulture, $" up to {reach.Micrometres:0.##} µm");
    }
}
