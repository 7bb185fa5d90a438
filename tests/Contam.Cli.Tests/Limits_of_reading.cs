using Contam.Families.Reading.Sheets;
using Contam.Support;

namespace Contam.Cli.Tests;

/// <summary><c>--limit</c>: how much is taken in from files.</summary>
public class Limits_of_reading
{
    private const string Engine = """
        format: 1
        family: engine
        title: Engine
        parts:
          tank: {kind: tank}
          hose-#: {kind: hose, count: 3}
        circuits:
          oil: {runs: [[tank, hose-#, tank]]}

        """;

    [Theory]
    [InlineData("parts=3", 1)]
    [InlineData("parts=4", 0)]
    [InlineData("count=2", 1)]
    [InlineData("count=3", 0)]
    [InlineData("nesting=3", 1)]
    [InlineData("nesting=9", 0)]
    [InlineData("bytes=100", 1)]
    [InlineData("bytes=1000", 0)]
    [InlineData("joints=2 --limit parts=100", 1)]
    public void Are_kept_and_raised(string limit, int exit) =>
        Assert.Equal(exit, CommandSession.About(Engine, file => $"check {file} --limit {limit}").Exit is 0 ? 0 : 1);

    [Theory]
    [InlineData("part=9", "no limit is called `part`. Did you mean parts? There are bytes, values, nesting, parts, joints, count, module-depth, module-uses, problems.")]
    [InlineData("wheels=9", "no limit is called `wheels`. There are bytes, values, nesting, parts, joints, count, module-depth, module-uses, problems.")]
    [InlineData("parts", "`parts` is no limit. Write a whole number from 1 to 2147483647: --limit parts=200000")]
    [InlineData("parts=-1", "`parts=-1` is no limit. Write a whole number from 1 to 2147483647: --limit parts=200000")]
    [InlineData("nesting=1001", "`nesting=1001` is no limit. Write a whole number from 1 to 1000: --limit nesting=64")]
    public void Are_named_and_numbered_rightly(string limit, string message)
    {
        CommandSession session = CommandSession.About(Engine, file => $"check {file} --limit {limit}");

        Assert.Equal((2, "", $"contam: {message}\n"), (session.Exit, session.Out, session.Error));
    }

    // A file at the deepest that can be asked for is answered, not died of.
    [Fact]
    public void Allow_no_depth_that_the_program_cannot_stand()
    {
        string deep = Engine + "limits: " + new string('[', 900) + new string(']', 900) + "\n";

        Assert.Equal(1, CommandSession.About(deep, file => $"check {file} --limit nesting=1000").Exit);
    }

    [Theory]
    [InlineData(1000, 2)]
    [InlineData(10000, 0)]
    public void Hold_for_findings_too(int bytes, int exit)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            string findings = Path.Combine(folder.FullName, "findings.yaml");
            File.WriteAllText(findings, "# " + new string('-', 2000) + "\n- {part: tank, debris: metal, found: true}\n");

            Assert.Equal(exit, CommandSession.About(Engine, file => FormattableString.Invariant($"plan {file} --findings {findings} --failed tank --debris metal --limit bytes={bytes}")).Exit);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Are_all_described()
    {
        string page = File.ReadAllText(RepositoryFiles.At("systems/README.md"));

        Assert.Equal(typeof(ReadLimits).GetProperties().Count(property => property.PropertyType == typeof(int)), LimitOption.All.Length);
        Assert.All(LimitOption.All, limit => Assert.Contains(FormattableString.Invariant($"| `{limit.Name}` | {limit.Of(ReadLimits.Default)} |"), page, StringComparison.Ordinal));
    }
}
