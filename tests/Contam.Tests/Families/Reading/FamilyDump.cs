using System.Globalization;
using System.Text;
using Contam.Families;

namespace Contam.Tests.Families.Reading;

/// <summary>A family as text, every value with its place; what says nothing is left out.</summary>
internal static class FamilyDump
{
    public static string Of(Family family)
    {
        var text = new StringBuilder();
        Line(text, $"family {family.Id} | {family.Title} | {family.About} | {family.States} | {family.Machine} | {family.File} | {family.Sha256}");
        foreach (Fluid fluid in family.Fluids)
        {
            Line(text, $"fluid {fluid.Id} @{fluid.Place.Line}:{fluid.Place.Column} {fluid.Density?.KilogramsPerCubicMetre} kg/m3, "
                + string.Join(", ", fluid.Viscosity.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.At.Kelvin} K {point.Viscosity.SquareMetresPerSecond} m2/s"))));
        }

        foreach (Part part in family.Parts)
            Line(text, $"part {part.Id} | {part.Name} | {part.Kind.Name} @{Short(part.Place)}{Details(part)}");
        foreach (Circuit circuit in family.Circuits)
            Line(text, $"circuit {circuit.Name} {circuit.Fluid} @{Short(circuit.Place)} [{string.Join(' ', circuit.Parts)}] ends [{string.Join(' ', circuit.RunEnds)}]");
        foreach (Joint joint in family.Joints)
        {
            Line(text, $"joint {joint.Id} {joint.From} > {joint.To} {joint.Circuit} @{Short(joint.Place)}"
                + (joint.When == EngineStates.All ? "" : $" when {joint.When}")
                + (joint.OnlyIfFailed is PartId failed ? $" if {failed} failed" : "")
                + (joint.Passage is ParticleSize passage ? $" passage {passage}" : "")
                + (joint.IsLink ? " link" : ""));
        }

        foreach (Limit limit in family.Limits)
        {
            Line(text, $"limit {limit.Id} {limit.Part} {limit.Measures} good {Side(limit.Good)} reject {(limit.Reject is Threshold reject ? Side(reject) : "-")} "
                + $"| {limit.Source} @{Short(limit.Place)} at {limit.At?.Pascals} Pa over {limit.Over}");
        }

        return text.ToString();
    }

    private static string Details(Part part)
    {
        var said = new List<string>();
        if (part.RepeatOf is not null)
            said.Add($"number {part.RepeatIndex} of {part.RepeatOf}");
        said.AddRange(part.Sheds.Select(shed => $"sheds {shed.Debris.Name} {shed.Likely} up to {shed.UpTo} magnetic {shed.Magnetic?.ToString() ?? "-"} form {shed.Form?.ToString() ?? "-"} @{Short(shed.Place)}"));
        said.AddRange(part.Holds.Select(hold => $"holds {hold.Debris.Name} above {hold.Above} @{Short(hold.Place)}"));
        if (part.RatingIsSaid)
            said.Add(part.HasAbsoluteRating ? "absolute" : "nominal");
        if (part.HasBypass)
            said.Add("bypass");
        if (part.Passage is ParticleSize passage)
            said.Add($"passage {passage}");
        if (part.Clearance is ParticleSize clearance)
            said.Add($"clearance {clearance}");
        if (part.ClearedBy != ClearedBy.OneLook)
            said.Add($"cleared by {part.ClearedBy}");
        if (part.TestAt != TestAt.Bench)
            said.Add($"tested {part.TestAt}");
        said.Add(part.IsRemovable ? "removable" : "in place");
        if (!part.Access.IsEmpty)
            said.Add($"access {string.Join(' ', part.Access)}");
        if (!part.StandsOn.IsEmpty)
            said.Add($"stands on {string.Join(' ', part.StandsOn)}");
        if (part.RidesOn is PartId carrier)
            said.Add($"rides on {carrier}");
        if (!part.Together.IsEmpty)
            said.Add($"together {string.Join(' ', part.Together)}");
        if (part.Assembly is PartId whole)
            said.Add($"inside of {whole}");
        if (!part.Seals.IsEmpty)
            said.Add($"seals {string.Join(' ', part.Seals)}");
        if (part.Inspect is Inspection look)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"look {look.Minutes} min {look.Shows} '{look.How}' @{Short(look.Place)}{(part.LookUsesUp ? " uses up" : "")}{(part.LookTakesOff ? " takes off" : "")}{(part.LookOpens ? "" : " opens nothing")}"));
        if (part.SendOut is SendOut away)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"away {away.Days} d '{away.Who}' @{Short(away.Place)}"));
        if (part.Minutes != TaskMinutes.None)
            said.Add(part.Minutes.ToString());
        if (part.Lead is TimeSpan lead)
            said.Add($"lead {lead}");
        if (part.Volume is { } volume)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"volume {volume.CubicMetres} m3"));
        if (part.Bore is { } bore)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"bore {bore.Metres} m"));
        if (part.Length is { } length)
            said.Add(string.Create(CultureInfo.InvariantCulture, $"length {length.Metres} m"));
        return string.Concat(said.Select(one => "\n  " + one));
    }

    private static string Side(Threshold side) => string.Create(CultureInfo.InvariantCulture, $"{side.Comparison} {side.Value} '{side.Text}' {side.Code}");

    private static string Short(SourceSpan? place) => place is SourceSpan at ? string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(at.File)}:{at.Line}:{at.Column}") : "-";

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
