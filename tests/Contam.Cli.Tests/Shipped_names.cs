using Contam.Support;

namespace Contam.Cli.Tests;

/// <summary>What comes with the command can be named wherever a file is asked for.</summary>
public sealed class Shipped_names : IDisposable
{
    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public void Dispose() => here.Delete(recursive: true);

    public static TheoryData<string> Families => A_start.Shipped;

    [Theory]
    [MemberData(nameof(Families))]
    public void Name_the_same_family_as_its_file(string family)
    {
        CommandSession byName = CommandSession.Of($"parts {family} --format json");
        CommandSession byFile = CommandSession.Of($"parts systems/families/{family}.yaml --format json");

        Assert.Equal((0, ""), (byName.Exit, byName.Error));
        Assert.Equal(PartsIn(byFile.Out), PartsIn(byName.Out));
        Assert.Equal("1 file: no errors, no warnings.\n", CommandSession.Of($"check {family}").Out);
    }

    [Fact]
    public void Plan_prove_explain_and_draw()
    {
        Assert.Equal(0, CommandSession.Of("plan outboard-gearcase --failed pinion").Exit);
        Assert.Equal(0, CommandSession.Of("why outboard-gearcase --failed pinion --debris metal --part upper-plug").Exit);
        Assert.Equal(0, CommandSession.Of("draw outboard-gearcase").Exit);
        File.WriteAllText(At("plan.json"), CommandSession.Of("plan harbour-diesel-i4 --failed injection-pump --format json").Out);
        Assert.Equal(0, CommandSession.Of($"verify {At("plan.json")} harbour-diesel-i4").Exit);
        Assert.Equal(0, CommandSession.Of($"verify {At("plan.json")} systems/families/harbour-diesel-i4.yaml").Exit);
        Assert.Equal(0, CommandSession.Of("audit outboard-gearcase --standard north-quay").Exit);
        Assert.Equal(0, CommandSession.Of("compare outboard-gearcase stern-trim-unit").Exit);
    }

    [Fact]
    public void Name_a_module_to_use_without_its_file()
    {
        File.WriteAllText(At("own.yaml"), Own("low-pressure-fuel"));
        Directory.CreateDirectory(At("modules"));
        File.Copy(RepositoryFiles.At("systems/modules/low-pressure-fuel.yaml"), At("modules/low-pressure-fuel.yaml"));
        File.WriteAllText(At("copied.yaml"), Own("modules/low-pressure-fuel.yaml"));

        Assert.Equal((0, ""), (CommandSession.Of($"parts {At("own.yaml")}").Exit, CommandSession.Of($"parts {At("own.yaml")}").Error));
        Assert.Equal(PartsOf(At("copied.yaml")), PartsOf(At("own.yaml")));
    }

    [Fact]
    public void Name_a_module_that_uses_others()
    {
        File.WriteAllText(At("own.yaml"), Own("plain-cylinder-bank"));
        // What the module needs besides is missing; both files of it are read.
        string said = CommandSession.Of($"check {At("own.yaml")}").Out;
        Assert.DoesNotContain("[file-missing]", said, StringComparison.Ordinal);
        Assert.Contains("cylinders:", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Give_way_to_a_file_of_the_same_name()
    {
        File.WriteAllText(At("low-pressure-fuel"), "format: 1\nparts: {only-tank: {kind: tank}}\n");
        File.WriteAllText(At("own.yaml"), Own("low-pressure-fuel"));

        Assert.Contains("only-tank", PartsOf(At("own.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Are_kept_whole_with_a_job()
    {
        File.WriteAllText(At("own.yaml"), Own("low-pressure-fuel"));
        CommandSession opened = CommandSession.Of($"job open {At("own.yaml")} --failed lift-pump --debris metal --standard north-quay --customer c --engine e --technician Ada --shop {At("shop.db")}");

        Assert.Equal((0, ""), (opened.Exit, opened.Error));
        Assert.Equal(0, CommandSession.Of($"job next --shop {At("shop.db")}").Exit);
        Assert.Equal(0, CommandSession.Of($"job check --shop {At("shop.db")}").Exit);
    }

    private string At(string file) => Path.Combine(here.FullName, file);

    private static string Own(string module) => $"format: 1\nfamily: own\nfluids: {{diesel: {{}}}}\nuse: [{{module: {module}}}]\n";

    private static string PartsOf(string file)
    {
        string json = CommandSession.Of($"parts {file} --format json").Out;
        return json[json.IndexOf("\"parts\"", StringComparison.Ordinal)..];
    }

    private static string PartsIn(string json) => json[json.IndexOf("\"parts\"", StringComparison.Ordinal)..];
}
