using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Support;

namespace Contam.Tests.House;

/// <summary>
/// The table of DEVELOPERS.md that says what each folder of the library must not know. A cell says <c>all but</c> and the few it may know, or the few that it
/// must not. A name that ends in <c>/</c> is a folder of the table, without those below it; any other is a package.
/// </summary>
internal sealed partial record FolderTable(ImmutableArray<FolderTable.Row> Rows)
{
    /// <summary>What the library stands on beside .NET.</summary>
    public static readonly ImmutableArray<string> Packages = ["QuikGraph", "YamlDotNet"];

    /// <summary>One line of the table.</summary>
    /// <param name="Folder">From <c>src/Contam</c>, with <c>/</c> at its end.</param>
    /// <param name="Forbidden">Every folder and package that it must not know.</param>
    internal sealed record Row(string Folder, ImmutableArray<string> Forbidden)
    {
        public string Namespace => NamespaceOf(Folder);
    }

    public static FolderTable Read()
    {
        string text = File.ReadAllText(RepositoryFiles.At("DEVELOPERS.md"));
        string table = text[text.IndexOf("| folder | holds | must not know |", StringComparison.Ordinal)..];
        table = table[..table.IndexOf("\n\n", StringComparison.Ordinal)];
        (string Folder, string Cell)[] lines =
        [
            .. table.Split('\n').Skip(2).Select(line => line.Split('|')).Select(cells => (Named().Match(cells[1]).Groups["name"].Value, cells[3].Trim())),
        ];
        ImmutableArray<string> all = [.. lines.Select(line => line.Folder), .. Packages];
        return new FolderTable([.. lines.Select(line => new Row(line.Folder, ForbiddenBy(line.Folder, line.Cell, all)))]);
    }

    /// <summary>The folders with code in them, as the table would name them.</summary>
    public static string[] OnDisk()
    {
        string root = RepositoryFiles.At("src/Contam");
        return
        [
            .. Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(root, Path.GetDirectoryName(file)!).Replace('\\', '/') + "/")
                .Where(folder => folder != "./" && !folder.StartsWith("obj/", StringComparison.Ordinal) && !folder.StartsWith("bin/", StringComparison.Ordinal))
                .Distinct().Order(StringComparer.Ordinal),
        ];
    }

    /// <summary>The full names of the library's types in a folder itself.</summary>
    public static string[] TypesIn(string folder) => [.. typeof(Family).Assembly.GetTypes().Where(type => !type.IsNested && type.Namespace == NamespaceOf(folder)).Select(type => type.FullName!)];

    private static string NamespaceOf(string folder) => "Contam." + folder.TrimEnd('/').Replace('/', '.');

    private static ImmutableArray<string> ForbiddenBy(string folder, string cell, ImmutableArray<string> all)
    {
        string[] named = [.. Named().Matches(cell).Select(match => match.Groups["name"].Value)];
        Assert.True(named.Length > 0 || cell == "all", $"the row of {folder} names nothing that can be checked: {cell}");
        Assert.All(named, name => Assert.Contains(name, all));
        return cell.StartsWith("all", StringComparison.Ordinal) ? [.. all.Except(named).Where(one => one != folder)] : [.. named];
    }

    [GeneratedRegex("`(?<name>[A-Za-z/]+)`")]
    private static partial Regex Named();
}
