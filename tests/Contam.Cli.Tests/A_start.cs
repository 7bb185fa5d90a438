namespace Contam.Cli.Tests;

/// <summary><c>contam start</c>: a family of one's own to begin with.</summary>
public sealed class A_start : IDisposable
{
    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public void Dispose() => here.Delete(recursive: true);

    public static TheoryData<string> Shipped => ["barge-genset-v8", "creek-diesel-i4", "dinghy-four-stroke", "estuary-v6-outboard", "flat-six-dry-sump", "genset-diesel-i6", "harbour-diesel-i4", "harbour-reverse-gear", "outboard-gearcase", "quay-diesel-v8", "stern-trim-unit", "sterndrive-petrol-v6"];

    [Fact]
    public void Knows_every_shipped_family_and_module()
    {
        string help = CommandSession.Of("start --help").Out.ReplaceLineEndings(" ");

        Assert.All(NamesIn("systems/families"), family => Assert.Contains(family, help, StringComparison.Ordinal));
        Assert.All(NamesIn("systems/modules"), module => Assert.Contains(module, help, StringComparison.Ordinal));
        Assert.Equal(NamesIn("systems/families"), Shipped.Select(row => row.Data));
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void From_a_shipped_family_is_sound_and_plans_the_same(string shipped)
    {
        CommandSession started = CommandSession.Of($"start {At("my-own")} --like {shipped}");

        Assert.Equal((0, ""), (started.Exit, started.Error));
        Assert.DoesNotContain("What is left", started.Out, StringComparison.Ordinal);
        Assert.Equal("1 file: no errors, no warnings.\n", CommandSession.Of($"check {At("my-own/my-own.yaml")}").Out);
        Assert.Equal(JointsOf($"systems/families/{shipped}.yaml"), JointsOf(At("my-own/my-own.yaml")));
    }

    [Fact]
    public void Teaches_at_each_section_and_names_a_schema_that_is_there()
    {
        CommandSession.Of($"start {At("my-own")} --like outboard-gearcase");
        string[] lines = File.ReadAllLines(At("my-own/my-own.yaml"));

        Assert.Equal("# yaml-language-server: $schema=schema/family.schema.json", lines[0]);
        Assert.True(File.Exists(At("my-own/schema/family.schema.json")));
        Assert.Contains("family: my-own", lines);
        Assert.All(lines.Index().Where(line => line.Item is "parts:" or "circuits:" or "fluids:" or "limits:"), line => Assert.StartsWith("# ", lines[line.Index - 1], StringComparison.Ordinal));
    }

    [Fact]
    public void Teaches_no_key_that_there_is_not()
    {
        CommandSession.Of($"start {At("my-own")} --like dinghy-four-stroke");
        string[] taught = [.. File.ReadAllLines(At("my-own/my-own.yaml")).Where(line => line.StartsWith("# ", StringComparison.Ordinal))
            .SelectMany(line => System.Text.RegularExpressions.Regex.Matches(line, "`([a-z-]+):").Select(match => match.Groups[1].Value))];
        string schema = File.ReadAllText(At("my-own/schema/family.schema.json"));

        Assert.Contains("both-ways", taught);
        Assert.All(taught, key => Assert.Contains($"\"{key}\": {{", schema, StringComparison.Ordinal));
    }

    [Fact]
    public void From_modules_says_what_is_left_to_add()
    {
        CommandSession started = CommandSession.Of($"start {At("my-own")} --with low-pressure-fuel,common-rail-fuel");
        CommandSession check = CommandSession.Of($"check {At("my-own/my-own.yaml")}");

        Assert.Equal(0, started.Exit);
        Assert.Equal(check.Exit != 0 || !check.Out.Contains("no errors, no warnings", StringComparison.Ordinal), started.Out.Contains("What is left for you to add:", StringComparison.Ordinal));
        Assert.Contains("counts: {injector-pipe: 4, injector: 4, injector-tip: 4}", File.ReadAllText(At("my-own/my-own.yaml")), StringComparison.Ordinal);
        Assert.True(File.Exists(At("my-own/modules/common-rail-fuel.yaml")));
        Assert.False(File.Exists(At("my-own/modules/raw-water.yaml")));
        Assert.DoesNotContain("outside", check.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void From_a_module_that_uses_another_brings_both()
    {
        CommandSession.Of($"start {At("my-own")} --with plain-cylinder-bank");

        Assert.Equal(["cylinders.yaml", "plain-cylinder-bank.yaml"], Directory.GetFiles(At("my-own/modules")).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));
        Assert.DoesNotContain("file-missing", CommandSession.Of($"check {At("my-own/my-own.yaml")}").Out, StringComparison.Ordinal);
        Assert.Contains("piston: 4", File.ReadAllText(At("my-own/my-own.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Writes_over_nothing()
    {
        Directory.CreateDirectory(At("my-own"));
        File.WriteAllText(At("my-own/notes.txt"), "mine");

        CommandSession again = CommandSession.Of($"start {At("my-own")} --like outboard-gearcase");

        Assert.Equal((2, "", $"contam: {At("my-own")} is there already, and nothing was written over. Name a folder that is not there yet.\n"), (again.Exit, again.Out, again.Error));
        Assert.Equal(["notes.txt"], Directory.GetFileSystemEntries(At("my-own")).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("My Boat", "`My Boat` will not do as a family's id, which is lower-case letters, digits and single hyphens, begins with a letter and has at most 100 characters. Call the folder my-boat.")]
    [InlineData("8-pack", "`8-pack` will not do as a family's id, which is lower-case letters, digits and single hyphens, begins with a letter and has at most 100 characters.")]
    public void Needs_a_folder_whose_name_does_as_an_id(string name, string message)
    {
        CommandSession session = CommandSession.Of(["start", At(name), "--like", "outboard-gearcase"]);

        Assert.Equal((2, $"contam: {message}\n"), (session.Exit, session.Error));
        Assert.Empty(here.GetFileSystemInfos());
    }

    [Theory]
    [InlineData("--like outboard-gearcas", "no shipped family is called `outboard-gearcas`. Did you mean outboard-gearcase? There are barge-genset-v8, creek-diesel-i4, dinghy-four-stroke, estuary-v6-outboard, flat-six-dry-sump, genset-diesel-i6, harbour-diesel-i4, harbour-reverse-gear, outboard-gearcase, quay-diesel-v8, stern-trim-unit, sterndrive-petrol-v6.")]
    [InlineData("--with wet-sump", "no shipped module is called `wet-sump`. There are common-rail-fuel, cylinder-bank, cylinders, fresh-water, in-line-injection, low-pressure-fuel, plain-cylinder-bank, raw-water, turbo-charge-air, wet-sump-oil.")]
    [InlineData("", "say what to begin from: --like with one of barge-genset-v8, creek-diesel-i4, dinghy-four-stroke, estuary-v6-outboard, flat-six-dry-sump, genset-diesel-i6, harbour-diesel-i4, harbour-reverse-gear, outboard-gearcase, quay-diesel-v8, stern-trim-unit, sterndrive-petrol-v6; --with modules; or --from a table of joints. One of the three.")]
    public void Needs_something_that_is_shipped_to_begin_from(string words, string message)
    {
        CommandSession session = CommandSession.Of($"start {At("my-own")} {words}");

        Assert.Equal((2, $"contam: {message}\n"), (session.Exit, session.Error));
        Assert.Empty(here.GetFileSystemInfos());
    }

    [Fact]
    public void Needs_the_folder_around_it()
    {
        CommandSession session = CommandSession.Of($"start {At("nowhere/my-own")} --like outboard-gearcase");

        Assert.Equal((2, $"contam: {At("nowhere/my-own")} cannot be made, because the folder that is to hold it is not there. Make that first, or name another place.\n"), (session.Exit, session.Error));
    }

    private string At(string path) => Path.Combine(here.FullName, path);

    private static string[] NamesIn(string folder) =>
        [.. Directory.GetFiles(Support.RepositoryFiles.At(folder), "*.yaml").Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal)];

    private static string JointsOf(string family)
    {
        string json = CommandSession.Of($"parts {family} --format json").Out;
        return json[json.IndexOf("\"parts\"", StringComparison.Ordinal)..];
    }
}
