using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Tests.Systems;

/// <summary>The modules that the shipped families share.</summary>
public partial class ShippedModules
{
    public static TheoryData<string> Modules => [.. Directory.GetFiles(RepositoryFiles.At("systems/modules"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileName(file)!)];

    [Theory]
    [MemberData(nameof(Modules))]
    public void Are_used_by_two_families_at_least(string module)
    {
        string[] users = [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Where(file => Uses(File.ReadAllText(file), "../modules/", module))];
        Assert.True(users.Length >= 2, $"{module} is used by {users.Length}");
    }

    // By itself, or by a module that it uses.
    private static bool Uses(string text, string before, string module) =>
        text.Contains($"module: {before}{module}", StringComparison.Ordinal)
        || Modules.Select(row => (string)row.Data).Any(other => other != module
            && text.Contains($"module: {before}{other}", StringComparison.Ordinal)
            && Uses(File.ReadAllText(RepositoryFiles.At($"systems/modules/{other}")), "", module));

    [Fact]
    public void Are_named_in_the_guide()
    {
        string guide = File.ReadAllText(RepositoryFiles.At("systems/README.md"));
        Assert.All(Directory.GetFiles(RepositoryFiles.At("systems/modules"), "*.yaml"), file => Assert.Contains($"| `{Path.GetFileNameWithoutExtension(file)}` |", guide, StringComparison.Ordinal));
        Assert.All(Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml"), file => Assert.Contains($"### `{Path.GetFileNameWithoutExtension(file)}`", guide, StringComparison.Ordinal));
    }

    [Fact]
    public void Name_their_schema_in_the_first_line_like_every_file()
    {
        foreach ((string folder, string schema) in new[] { ("families", "family"), ("modules", "module"), ("standards", "standard") })
        {
            Assert.All(
                Directory.GetFiles(RepositoryFiles.At("systems/" + folder), "*.yaml"),
                file => Assert.Equal($"# yaml-language-server: $schema=../schema/{schema}.schema.json", File.ReadLines(file).First()));
        }
    }

    [Fact]
    public void Give_every_part_a_name_of_its_own_where_they_are_used_twice()
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/quay-diesel-v8.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        Assert.Equal(family.Parts.Length, family.Parts.Select(part => part.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal("Starboard high-pressure injection pump", family[new PartId("starboard-injection-pump")].Name);
        Assert.Equal("Port big-end bearing 3", family[new PartId("port-rod-bearing-3")].Name);
        Assert.Equal("Oil pick-up strainer", family[new PartId("oil-strainer")].Name);
    }

    [Theory]
    [MemberData(nameof(ShippedFamilies.Families), MemberType = typeof(ShippedFamilies))]
    public void Are_counted_rightly_in_the_guide(string name)
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        string guide = File.ReadAllText(RepositoryFiles.At("systems/README.md"));
        string section = guide[guide.IndexOf($"### `{name}`", StringComparison.Ordinal)..];
        Assert.Equal($"{family.Parts.Length} parts", Count().Match(section).Value);
    }

    [GeneratedRegex("[0-9]+ parts")]
    private static partial Regex Count();
}
