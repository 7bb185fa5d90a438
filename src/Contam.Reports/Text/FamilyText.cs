using System.Globalization;
using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>What is in a family, for people: its circuits, parts and seals.</summary>
public static class FamilyText
{
    /// <summary>Writes the family.</summary>
    public static void Write(Family family, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        var names = new Names(family);
        page.Subheading(family.Title.Length > 0 ? $"{family.Title} ({family.Id})" : family.Id);
        if (family.About.Length > 0)
            page.Paragraph(family.About);
        page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{family.Parts.Length} parts, {family.Joints.Length} joints, {family.Circuits.Length} circuits."));

        page.Heading("Circuits");
        foreach (Circuit circuit in family.Circuits)
            page.Row(2, (circuit.Name, 12), (string.Create(CultureInfo.InvariantCulture, $"{circuit.Parts.Length} parts{(circuit.Fluid is null ? "" : ", " + circuit.Fluid)}"), 0));

        page.Heading("Parts");
        ILookup<PartId, string> circuitsOf = family.Circuits.SelectMany(circuit => circuit.Parts.Select(part => (part, circuit.Name))).ToLookup(pair => pair.part, pair => pair.Name);
        foreach (List<Part> group in RepeatFolding.Fold(family.Parts, part => part.RepeatIndex, part => $"{part.RepeatOf} {part.Kind.Name} {string.Join(',', circuitsOf[part.Id])}"))
        {
            Part first = group[0];
            string name = group.Count == 1 ? first.Id.Value : $"{first.RepeatOf}-{RepeatFolding.Range(first.RepeatIndex, group[^1].RepeatIndex)}";
            page.Row(2, (name, 25), (first.Kind.Name, 15), (string.Join(", ", circuitsOf[first.Id]), 12), (Notes(first), 0));
        }

        page.Heading("Seals renewed when opened");
        foreach (IGrouping<string, string> seal in family.Parts.SelectMany(part => part.Seals).GroupBy(seal => seal, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal))
            page.Row(2, (string.Create(CultureInfo.InvariantCulture, $"{seal.Count()} ×"), 5), (seal.Key, 0));
    }

    private static string Notes(Part part)
    {
        var notes = new List<string>();
        if (part.ClearedBy != ClearedBy.OneLook)
            notes.Add(part.ClearedBy == ClearedBy.Nothing ? "cleared by nothing" : "cleared by two looks");
        if (!part.Sheds.IsEmpty)
            notes.Add("sheds " + string.Join(", ", part.Sheds.Select(shed => shed.Debris.Name)));
        if (!part.Holds.IsEmpty)
            notes.Add(part.HasAbsoluteRating && !part.HasBypass ? "holds " + string.Join(", ", part.Holds.Select(hold => hold.Debris.Name)) : "holds, not relied on");
        if (part.Inspect is { } look)
            notes.Add($"shows {look.Shows.ToString().ToLowerInvariant()}");
        return string.Join("; ", notes);
    }
}
