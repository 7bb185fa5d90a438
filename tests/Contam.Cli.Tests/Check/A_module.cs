using Contam.Support;

namespace Contam.Cli.Tests.Check;

/// <summary>A module is checked by itself: what a family that uses it may bring is not asked for.</summary>
public sealed class A_module
{
    public static TheoryData<string> Shipped => [.. Directory.GetFiles(RepositoryFiles.At("systems/modules"), "*.yaml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void That_is_shipped_is_sound(string module) =>
        Assert.Equal(
            (0, $"1 file: no errors, no warnings.\nsystems/modules/{module} names no family, so it was read as a module. A family says `family: its-name` near its top.\n", ""),
            Told(CommandSession.Of($"check systems/modules/{module}")));

    [Fact]
    public void That_leaves_parts_and_counts_to_its_user_is_sound() =>
        Assert.Equal(0, CommandSession.About("format: 1\nparts: {jet-#: {kind: nozzle}}\ncircuits: {oil: {runs: [[sump, jet-#]]}}\n", file => $"check {file}").Exit);

    [Fact]
    public void That_is_wrong_in_itself_is_told() =>
        Assert.Equal(
            """
            engine.yaml:2:19: error: there is no kind `pomp` [unknown-kind]
              did you mean `pump`?
            1 file: 1 error, no warnings.
            engine.yaml names no family, so it was read as a module. A family says `family: its-name` near its top.

            """,
            CommandSession.About("format: 1\nparts: {a: {kind: pomp}}\n", file => $"check {file}").Out);

    [Fact]
    public void Is_no_family_to_plan_for() =>
        Assert.Equal(2, CommandSession.Of("plan systems/modules/raw-water.yaml --failed impeller --debris rubber").Exit);

    private static (int Exit, string Out, string Error) Told(CommandSession session) => (session.Exit, session.Out, session.Error);
}
