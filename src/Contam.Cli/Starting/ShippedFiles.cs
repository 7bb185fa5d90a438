using System.Text;

namespace Contam.Cli.Starting;

/// <summary>The families, modules and schemas that come with the command, to begin a family of one's own from.</summary>
internal static class ShippedFiles
{
    /// <summary>The families' ids, in ordinal order.</summary>
    public static string[] Families => NamesIn("families/", ".yaml");

    /// <summary>The modules' names, in ordinal order.</summary>
    public static string[] Modules => NamesIn("modules/", ".yaml");

    /// <summary>The schemas that a family's folder needs, by file name, in ordinal order.</summary>
    public static string[] Schemas => NamesIn("schema/", ".schema.json");

    public static string Family(string id) => TextOf($"families/{id}.yaml");

    public static string Module(string name) => TextOf($"modules/{name}.yaml");

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
}
