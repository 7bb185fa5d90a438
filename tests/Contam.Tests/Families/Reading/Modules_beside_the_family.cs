using Contam.Families;
using Contam.Families.Reading;
using Contam.Problems;

namespace Contam.Tests.Families.Reading;

/// <summary>
/// A family keeps its modules in <c>../modules</c>, as the shipped ones do, wherever a shop puts the two folders; and nothing else that lies outside is read.
/// The folder called <c>systems</c> has tests of its own.
/// </summary>
public class Modules_beside_the_family
{
    private const string Module = "format: 1\nparts:\n  pump: {kind: pump}\n";

    [Theory]
    [InlineData("ours/engines/f.yaml", "../modules/m.yaml", "ours/modules/m.yaml")]
    [InlineData("f/f.yaml", "../modules/deep/m.yaml", "modules/deep/m.yaml")]
    [InlineData("f/f.yaml", "m.yaml", "f/m.yaml")]
    public void Are_read_whatever_the_folder_above_is_called(string family, string use, string module)
    {
        using var folder = new TestFolder([(family, Family(use)), (module, Module)]);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf(family), TestCatalogue.Value);
        Assert.Equal("", TestCatalogue.Told(outcome.Problems.Where(problem => problem.Code == "module-outside").Select(folder.Shortened)));
        Assert.Contains(outcome.Value!.Parts, part => part.Id.Value == "pump");
    }

    [Theory]
    [InlineData("../m.yaml", "m.yaml")]
    [InlineData("../modules-of-others/m.yaml", "modules-of-others/m.yaml")]
    [InlineData("../modules/../secret/m.yaml", "secret/m.yaml")]
    [InlineData("../other/modules/m.yaml", "other/modules/m.yaml")]
    public void Are_refused_where_they_lie_anywhere_else(string use, string module)
    {
        using var folder = new TestFolder([("f/f.yaml", Family(use)), (module, Module), ("modules/here.yaml", Module)]);
        Assert.Equal(["module-outside"], Codes(folder, "f/f.yaml"));
    }

    [Fact]
    public void Are_refused_where_their_folder_is_a_link_to_somewhere_else()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "making links needs rights on this system");
        using var folder = new TestFolder([("f/f.yaml", Family("../modules/m.yaml")), ("secret/m.yaml", Module)]);
        Directory.CreateSymbolicLink(folder.PathOf("modules"), folder.PathOf("secret"));
        Assert.Equal(["module-outside"], Codes(folder, "f/f.yaml"));
    }

    [Fact]
    public void Are_refused_where_one_of_them_is_a_link_to_somewhere_else()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "making links needs rights on this system");
        using var folder = new TestFolder([("f/f.yaml", Family("../modules/m.yaml")), ("secret/m.yaml", Module), ("modules/here.yaml", Module)]);
        File.CreateSymbolicLink(folder.PathOf("modules/m.yaml"), folder.PathOf("secret/m.yaml"));
        Assert.Equal(["module-outside"], Codes(folder, "f/f.yaml"));
    }

    private static string Family(string use) => $"format: 1\nfamily: f\nuse:\n  - module: {use}\nparts:\n  tank: {{kind: tank}}\ncircuits:\n  oil:\n    runs:\n      - [tank, pump]\n";

    private static IEnumerable<string> Codes(TestFolder folder, string family) => FamilyReader.ReadFile(folder.PathOf(family), TestCatalogue.Value).Problems.Select(problem => problem.Code).Where(code => code.StartsWith("module", StringComparison.Ordinal));
}
