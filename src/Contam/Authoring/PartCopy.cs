using Contam.Families;

namespace Contam.Authoring;

/// <summary>What a part that is like another has of it: all but its name, and where it sits.</summary>
internal static class PartCopy
{
    /// <summary>Keys and values, as they are written in a file.</summary>
    public static IEnumerable<(string Key, string Value)> Of(Part part)
    {
        yield return ("kind", part.Kind.Name);
        if (part.Sheds.Length > 0)
            yield return ("sheds", $"{{{string.Join(", ", part.Sheds.Select(Shed))}}}");
        if (part.Holds.Length > 0)
            yield return ("holds", $"{{{string.Join(", ", part.Holds.Select(hold => $"{hold.Debris.Name}: {(hold.Above == ParticleSize.Zero ? "all" : Size(hold.Above))}"))}}}");
        if (part.RatingIsSaid)
            yield return ("rating", part.HasAbsoluteRating ? "absolute" : "nominal");
        if (part.HasBypass)
            yield return ("bypass", "true");
        if (part.Clearance is { } clearance)
            yield return ("clearance", Size(clearance));
        if (part.Passage is { } passage)
            yield return ("passage", Size(passage));
        if (part.Inspect is { Minutes: { } minutes } look)
            yield return ("inspect", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{{minutes: {minutes}, shows: {look.Shows.ToString().ToLowerInvariant()}{(look.How.Length > 0 ? ", how: " + YamlWords.Of(look.How) : "")}}}"));
    }

    private static string Shed(Shed shed)
    {
        string likely = shed.Likely.ToString().ToLowerInvariant();
        var keys = new List<string> { $"likely: {likely}" };
        if (!shed.UpTo.IsUnlimited)
            keys.Add($"up-to: {Size(shed.UpTo)}");
        if (shed.Magnetic is { } magnetic)
            keys.Add($"magnetic: {(magnetic ? "true" : "false")}");
        if (shed.Form is { } form)
            keys.Add($"form: {form.ToString().ToLowerInvariant()}");
        return keys.Count == 1 ? $"{shed.Debris.Name}: {likely}" : $"{shed.Debris.Name}: {{{string.Join(", ", keys)}}}";
    }

    private static string Size(ParticleSize size) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{size.Micrometres:R} um");
}
