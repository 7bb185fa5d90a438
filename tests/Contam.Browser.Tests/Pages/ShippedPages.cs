using System.Collections.Concurrent;
using Contam.Cli.Tests;
using Contam.Support;

namespace Contam.Browser.Tests.Pages;

/// <summary>Every page that the command makes of a shipped family, each made once. A page is named as <c>plan harbour-diesel-i4</c>.</summary>
internal static class ShippedPages
{
    // For each family a failure that reaches most of it.
    private static readonly Dictionary<string, (string Failed, string Debris)> Failures = new(StringComparer.Ordinal)
    {
        ["barge-genset-v8"] = ("storage-tank", "metal"),
        ["creek-diesel-i4"] = ("lift-pump", "rubber"),
        ["dinghy-four-stroke"] = ("cylinder-head", "metal"),
        ["estuary-v6-outboard"] = ("oil-tank", "water"),
        ["flat-six-dry-sump"] = ("fuel-pump", "metal"),
        ["genset-diesel-i6"] = ("head-gasket", "water"),
        ["harbour-diesel-i4"] = ("oil-pump", "metal"),
        ["harbour-reverse-gear"] = ("output-seal", "rubber"),
        ["outboard-gearcase"] = ("driveshaft-water-seal", "rubber"),
        ["quay-diesel-v8"] = ("siphon-break", "rubber"),
        ["stern-trim-unit"] = ("trim-pump", "metal"),
        ["sterndrive-petrol-v6"] = ("fuel-tank", "rubber"),
    };

    private static readonly string[] Kinds = ["plan", "draw", "spread", "drill", "answers"];

    private static readonly ConcurrentDictionary<string, Lazy<string>> Made = new(StringComparer.Ordinal);

    /// <summary>For what is done on a page of a family: the six families with the shortest files. With <c>CONTAM_PAGES=all</c> every family.</summary>
    public static TheoryData<string> Families => WantsAll ? [.. FamilyNames] : [.. Shortest.Take(6)];

    /// <summary>Every page.</summary>
    public static TheoryData<string> All =>
    [
        .. FamilyNames.SelectMany(family => Kinds.Select(page => $"{page} {family}")),
        "audit all",
    ];

    /// <summary>For what takes long: a page of every kind, of the families with the shortest files. With <c>CONTAM_PAGES=all</c> every page.</summary>
    public static TheoryData<string> Some => WantsAll ? All : [.. Kinds.Zip(Shortest, (kind, family) => $"{kind} {family}"), "audit all"];

    private static bool WantsAll => Environment.GetEnvironmentVariable("CONTAM_PAGES") == "all";

    private static IEnumerable<string> FamilyNames => Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal);

    private static IEnumerable<string> Shortest => FamilyNames.OrderBy(family => new FileInfo(RepositoryFiles.At($"systems/families/{family}.yaml")).Length);

    /// <summary>The text of a page.</summary>
    public static string Of(string name) => Made.GetOrAdd(name, _ => new Lazy<string>(() => Make(name.Split(' ')[0], name.Split(' ')[1]))).Value;

    /// <summary>What the command prints for these words.</summary>
    public static string Printed(string words)
    {
        CommandSession session = CommandSession.Of(words);
        Assert.True(session.Out.StartsWith("<!DOCTYPE html>", StringComparison.Ordinal), session.Error);
        return session.Out;
    }

    private static string Make(string page, string family)
    {
        if (page == "audit")
            return Printed("audit systems/families --format html");
        (string failed, string debris) = Failures[family];
        string file = $"systems/families/{family}.yaml";
        string failure = $"{file} --failed {failed} --debris {debris} --format html";
        return page switch
        {
            "plan" => Printed($"plan {failure} --technicians 2 --looks 0"),
            "draw" => Printed($"draw {file} --format html"),
            "spread" => Printed($"draw {failure} --unfold"),
            "drill" => Printed($"drill {failure}"),
            "answers" => Printed($"drill {failure} --answers"),
            _ => throw new ArgumentException($"there is no page {page}", nameof(page)),
        };
    }
}
