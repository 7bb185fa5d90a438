using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Contam.Cli.Starting;

/// <summary>The text of a new family: that of a shipped one under a new id, or one that uses modules; with comments that teach.</summary>
internal static partial class FamilyDraft
{
    private const int CountToBeginWith = 4;

    private static readonly (string Key, string[] Lesson)[] Lessons =
    [
        ("title", ["The title is for people. What the engine is, in a line or two, comes after it."]),
        ("use", ["Modules: groups of parts that several engines share. `counts` says how many there are of each part that is written with #."]),
        ("adjust", ["What is different here about a part that a module brings. Only the keys that differ are named."]),
        ("fluids", ["What runs in the circuits. Density and two viscosities let `contam flush` say how long to flush."]),
        ("parts", [
            "Every part that debris can reach: pumps, hoses, galleries, bearings, filters, tanks. A part left out is a part missed.",
            "  kind      what sort of part it is; it brings times and usual seals",
            "  sheds     what comes out of it when it fails, how likely, and up to what size",
            "  holds     what it holds back above a size; relied on only with `rating: absolute` and no `bypass`",
            "  inspect   how it is looked at, how long that takes, and how well it shows debris",
            "  access    what must be off before it",
            "  seals     what is renewed whenever it is opened; [] where nothing is",
        ]),
        ("circuits", [
            "How each fluid runs. A run is a list of parts in flow order; a part may stand in several runs.",
            "Follow one hose at a time with a finger, and the way home too: a forgotten return is a missed part.",
        ]),
        ("links", ["Joints that need more said: `both-ways: true`, `when: running`, or `only-if-failed: PART` for a way that opens when a part gives up."]),
        ("limits", ["What readings are judged by: good, reject, and where the figure comes from. Every figure here is to be replaced by the maker's."]),
    ];

    /// <summary>A shipped family under a new id.</summary>
    public static string Like(string shipped, string id)
    {
        string[] lines = ShippedFiles.Family(shipped).Split('\n');
        int body = Array.FindIndex(lines, line => line.StartsWith("format:", StringComparison.Ordinal));
        var text = new StringBuilder();
        Head(text, $"Begun from {shipped}, which is invented: every part, joint and figure is to be held against the engine that stands before you.");
        foreach (string line in lines[body..])
        {
            Teach(text, line);
            text.Append(line.StartsWith("family:", StringComparison.Ordinal) ? $"family: {id}" : line.Replace("../modules/", "modules/", StringComparison.Ordinal)).Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>A family that uses these modules, four of each part that is counted.</summary>
    public static string With(IReadOnlyList<string> modules, string id)
    {
        var text = new StringBuilder();
        Head(text, "Begun from modules. What they need besides stands at the head of each file in modules/.");
        text.Append("format: 1\n").Append(CultureInfo.InvariantCulture, $"family: {id}\n");
        Teach(text, "title:");
        text.Append(CultureInfo.InvariantCulture, $"title: New family {id}\nabout: What it is, in a line or two.\n\n");
        Teach(text, "use:");
        text.Append("use:\n");
        foreach (string module in modules)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - module: modules/{module}.yaml\n");
            string[] counted = [.. ShippedFiles.WithWhatTheyUse([module]).SelectMany(used => CountedPart().Matches(ShippedFiles.Module(used))).Select(match => match.Groups[1].Value).Distinct(StringComparer.Ordinal)];
            if (counted.Length > 0)
                text.Append(CultureInfo.InvariantCulture, $"    counts: {{{string.Join(", ", counted.Select(part => $"{part}: {CountToBeginWith}"))}}}\n");
        }

        text.Append('\n');
        Teach(text, "parts:");
        text.Append("# parts:\n#   fuel-tank:\n#     kind: tank\n#     volume: 60 L\n#     inspect: {minutes: 10, shows: good, how: draw half a litre from the bottom into a clear jar}\n\n");
        Teach(text, "circuits:");
        text.Append("# circuits:\n#   fuel:\n#     runs:\n#       - [fuel-tank, fuel-filter]\n");
        return text.ToString();
    }

    private static void Head(StringBuilder text, string origin) => text
        .Append("# yaml-language-server: $schema=schema/family.schema.json\n")
        .Append(CultureInfo.InvariantCulture, $"# {origin}\n")
        .Append("# The line above tells an editor the keys: it offers them, and marks mistakes as you type. `contam check` says the same at the bench.\n");

    private static void Teach(StringBuilder text, string line)
    {
        foreach (string lesson in Lessons.Where(one => line.StartsWith(one.Key + ":", StringComparison.Ordinal)).SelectMany(one => one.Lesson))
            text.Append("# ").Append(lesson).Append('\n');
    }

    [GeneratedRegex("^  ([a-z0-9-]+)-#:", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex CountedPart();
}
