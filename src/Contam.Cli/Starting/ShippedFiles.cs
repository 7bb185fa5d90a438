using System.Text;
using System.Text.RegularExpressions;

namespace Contam.Cli.Starting;

/// <summary>The families, modules and schemas that come with the command, to begin a family of one's own from.</summary>
internal static partial class ShippedFiles
{
    /// <summary>The families' ids, in ordinal order.</summary>
    public static string[] Families => NamesIn("families/", ".yaml");

    /// <summary>The modules' names, in ordinal order.</summary>
    public static string[] Modules => NamesIn("modules/", ".yaml");

    /// <summary>The schemas that a family's folder needs, by file name, in ordinal order.</summary>
    public static string[] Schemas => NamesIn("schema/", ".schema.json");

    public static string Family(string id) => TextOf($"families/{id}.yaml");

    public static string Module(string name) => TextOf($"modules/{name}.yaml");

    /// <summary>These modules and all that they use, in ordinal order, each once.</summary>
    public static string[] WithWhatTheyUse(IEnumerable<string> modules)
    {
        var all = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(modules);
        while (open.TryPop(out string? module))
        {
            if (!all.Add(module))
                continue;
            foreach (string used in UsedBy(Module(module)))
                open.Push(used);
        }

        return [.. all];
    }

    /// <summary>The modules that a shipped family or module names, in the order of its text.</summary>
    public static IEnumerable<string> UsedBy(string text) => Use().Matches(text).Select(match => match.Groups[1].Value);

    /// <summary>The standards' names, in ordinal order.</summary>
    public static string[] Standards => NamesIn("standards/", ".yaml");

    public static string Standard(string name) => TextOf($"standards/{name}.yaml");

    public static string Schema(string name) => TextOf($"schema/{name}.schema.json");

    private static string[] NamesIn(string folder, string ending) =>
    [
        .. typeof(ShippedFiles).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(folder, StringComparison.Ordinal) && name.EndsWith(ending, StringComparison.Ordinal))
            .Select(name => name[folder.Length..^ending.Length])
            .Order(StringComparer.Ordinal),
    ];

    private static string TextOf(string resource)
    {
        using Stream stream = typeof(ShippedFiles).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"{resource} is missing from the command");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    // A use as the shipped files write it: at the beginning of a line or of a brace.
    [GeneratedRegex(@"^ *- \{?module: (?:\.\./)?(?:modules/)?([a-z0-9-]+)\.yaml", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Use();
}
