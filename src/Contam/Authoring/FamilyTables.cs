using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Authoring;

/// <summary>A table: titles, and rows of as many cells.</summary>
public sealed record Table(ImmutableArray<string> Titles, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>A family as a table of its joints and one of its parts, repeats written out. Columns that nothing stands in are left out.</summary>
public static class FamilyTables
{
    /// <summary>The joints, in the order of the family.</summary>
    public static Table Joints(Family family)
    {
        ArgumentNullException.ThrowIfNull(family);
        var fluidOf = family.Circuits.ToDictionary(circuit => circuit.Name, circuit => circuit.Fluid ?? "", StringComparer.Ordinal);
        return Of(TableColumns.Joints, 3, family.Joints.Select(joint => new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["circuit"] = joint.Circuit,
            ["from"] = joint.From.Value,
            ["to"] = joint.To.Value,
            ["fluid"] = fluidOf.GetValueOrDefault(joint.Circuit, ""),
            ["when"] = joint.When == EngineStates.All ? "" : joint.When == EngineStates.None ? "never" : string.Join("; ", Families.Reading.EngineStateWords.Of(joint.When)),
            ["passage"] = Size(joint.Passage),
            ["only-if-failed"] = joint.OnlyIfFailed?.Value ?? "",
            ["link"] = joint.IsLink ? "yes" : "",
        }));
    }

    /// <summary>The parts, in the order of the family.</summary>
    public static Table Parts(Family family)
    {
        ArgumentNullException.ThrowIfNull(family);
        return Of(TableColumns.Parts, 2, family.Parts.Select(CellsOf));
    }

    /// <summary>What a table says of a part, by the title of the column.</summary>
    internal static Dictionary<string, string> CellsOf(Part part) => new(StringComparer.Ordinal)
    {
        ["id"] = part.Id.Value,
        ["kind"] = part.Kind.Name,
        ["name"] = part.Name == DefaultName(part.Id.Value) ? "" : part.Name,
        ["sheds"] = string.Join("; ", part.Sheds.Select(Shed)),
        ["holds"] = string.Join("; ", part.Holds.Select(hold => $"{hold.Debris.Name} {(hold.Above == ParticleSize.Zero ? "all" : Size(hold.Above))}")),
        ["rating"] = !part.RatingIsSaid ? "" : part.HasAbsoluteRating ? "absolute" : "nominal",
        ["bypass"] = part.HasBypass ? "yes" : "",
        ["passage"] = Size(part.Passage),
        ["clearance"] = Size(part.Clearance),
        ["cleared-by"] = part.ClearedBy == part.Kind.ClearedBy ? "" : part.ClearedBy switch { ClearedBy.Nothing => "nothing", ClearedBy.TwoLooks => "two-looks", _ => "one-look" },
        ["test-at"] = part.TestAt == part.Kind.TestAt ? "" : part.TestAt switch { TestAt.BuiltUp => "built-up", TestAt.Fitted => "fitted", _ => "bench" },
        ["removable"] = part.IsRemovable == part.Kind.IsRemovable ? "" : YesNo(part.IsRemovable),
        ["access"] = Ids(part.Access),
        ["stands-on"] = Ids(part.StandsOn),
        ["rides-on"] = part.RidesOn?.Value ?? "",
        ["together"] = Ids([.. part.Together.Where(one => one != part.Id)]),
        ["assembly"] = part.Assembly?.Value ?? "",
        ["seals"] = part.Seals.SequenceEqual(part.Kind.Seals) ? "" : part.Seals.IsEmpty ? "none" : string.Join("; ", part.Seals),
        ["look-minutes"] = Number(part.Inspect?.Minutes),
        ["look-shows"] = part.Inspect?.Shows.ToString().ToLowerInvariant() ?? "",
        ["look-how"] = part.Inspect?.How ?? "",
        ["look-access"] = part.Inspect?.Access is { } access ? access.IsEmpty ? "none" : Ids(access) : "",
        ["look-uses-up"] = part.Inspect?.UsesUp is { } usesUp ? YesNo(usesUp) : "",
        ["look-takes-off"] = part.Inspect is { TakesOff: true } ? "yes" : "",
        ["away-days"] = part.SendOut is { } away ? away.Days is { } days ? Number(days) : "unknown" : "",
        ["away-who"] = part.SendOut?.Who ?? "",
        ["minutes"] = string.Join("; ", Tasks(part.Minutes).Where(task => task.Minutes is not null).Select(task => $"{task.Name} {Number(task.Minutes)}")),
        ["lead"] = part.Lead is { } lead ? Duration(lead) : "",
        ["volume"] = part.Volume is { } volume ? Exact<Volume>(volume.CubicMetres, Quantity.TryParse, volume, ("L", 1000m), ("m3", 1m)) : "",
        ["bore"] = part.Bore is { } bore ? Exact<Length>(bore.Metres, Quantity.TryParse, bore, ("mm", 1000m), ("m", 1m)) : "",
        ["length"] = part.Length is { } length ? Exact<Length>(length.Metres, Quantity.TryParse, length, ("m", 1m)) : "",
        ["meant"] = string.Join("; ", part.Meant.Select(meant => $"{meant.Code}={meant.Why}")),
    };

    /// <summary>The name of a part whose file says none.</summary>
    internal static string DefaultName(string id) => char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');

    internal static IEnumerable<(string Name, double? Minutes)> Tasks(TaskMinutes minutes) =>
    [
        ("inspect", minutes.Inspect), ("remove", minutes.Remove), ("flush", minutes.Flush), ("clean", minutes.Clean), ("test", minutes.Test), ("replace", minutes.Replace), ("refit", minutes.Refit),
    ];

    private static Table Of(ImmutableArray<TableColumn> columns, int always, IEnumerable<Dictionary<string, string>> rows)
    {
        Dictionary<string, string>[] all = [.. rows];
        ImmutableArray<string> titles = [.. columns.Select(column => column.Title).Where((title, index) => index < always || all.Any(row => row.GetValueOrDefault(title, "").Length > 0))];
        return new Table(titles, [.. all.Select(row => titles.Select(title => row.GetValueOrDefault(title, "")).ToImmutableArray())]);
    }

    private static string Shed(Shed shed)
    {
        var words = new List<string> { shed.Debris.Name, shed.Likely.ToString().ToLowerInvariant() };
        if (!shed.UpTo.IsUnlimited)
            words.Add(Size(shed.UpTo));
        if (shed.Magnetic is { } magnetic)
            words.Add(magnetic ? "magnetic" : "not-magnetic");
        if (shed.Form is { } form)
            words.Add(form.ToString().ToLowerInvariant());
        return string.Join(' ', words);
    }

    private static string Ids(ImmutableArray<PartId> parts) => string.Join("; ", parts);

    private static string YesNo(bool value) => value ? "yes" : "no";

    private static string Size(ParticleSize? size) => size is { IsUnlimited: false } said ? Number(said.Micrometres) + " um" : "";

    private static string Number(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static string Duration(TimeSpan time)
    {
        foreach ((string unit, long ticks) in new[] { ("d", TimeSpan.TicksPerDay), ("h", TimeSpan.TicksPerHour), ("min", TimeSpan.TicksPerMinute) })
        {
            if (time.Ticks % ticks == 0)
                return string.Create(CultureInfo.InvariantCulture, $"{time.Ticks / ticks} {unit}");
        }

        return ((decimal)time.Ticks / TimeSpan.TicksPerSecond).ToString(CultureInfo.InvariantCulture) + " s";
    }

    private delegate bool Parser<T>(string text, out T value, out QuantityError? error);

    /// <summary>The figure in the first unit in which it reads back as itself; in the SI unit where there is none.</summary>
    private static string Exact<T>(double si, Parser<T> parse, T value, params ReadOnlySpan<(string Unit, decimal Factor)> units)
    {
        foreach ((string unit, decimal factor) in units)
        {
            string text = $"{(Math.Abs(si) < 1e9 ? Number((double)((decimal)si * factor)) : "")} {unit}";
            if (parse(text, out T read, out _) && EqualityComparer<T>.Default.Equals(read, value))
                return text;
        }

        return $"{Number(si)} {units[^1].Unit}";
    }
}
