namespace Contam.Cli.Tests.Check;

/// <summary>A file that can be used but in which something is likely forgotten.</summary>
public class Warnings
{
    private const string Engine = """
        format: 1
        family: engine
        parts:
          tank: {kind: tank, inspect: {minutes: 5}}
          pump: {kind: pump}
          hose: {kind: hose}
        circuits:
          fuel:
            fluid: diesel
            runs:
              - [tank, pump, tank]
              - [pump, hose]
        fluids: {diesel: {}}
        """;

    private const string Told = """
        engine.yaml:6:3: warning: a run of `fuel` ends at `hose`, and fluid cannot end in a hose [dead-end]
          write where it goes from there: a return, a drain, a leak-off
        1 file: no errors, 1 warning.

        """;

    [Fact]
    public void Are_told_and_end_with_0() => Assert.Equal((0, Told, ""), Of(Engine, ""));

    [Fact]
    public void End_with_1_under_strict() => Assert.Equal((1, Told, ""), Of(Engine, " --strict"));

    [Fact]
    public void Are_silent_where_they_are_meant() => Assert.Equal(
        (0, "1 file: no errors, no warnings.\n", ""),
        Of(Engine.Replace("hose: {kind: hose}", "hose: {kind: hose, meant: {dead-end: the drain ends over the side}}", StringComparison.Ordinal), " --strict"));

    [Fact]
    public void Do_not_stand_in_the_way_of_a_plan()
    {
        CommandSession session = CommandSession.About(Engine, file => $"plan {file} --failed pump --debris metal");
        Assert.Equal((0, ""), (session.Exit, session.Error));
    }

    [Fact]
    public void Are_not_looked_for_in_a_file_with_errors() => Assert.Equal(
        (1, "engine.yaml:6:16: error: there is no kind `hoes` [unknown-kind]\n  did you mean `hose`?\n1 file: 1 error, no warnings.\n", ""),
        Of(Engine.Replace("kind: hose", "kind: hoes", StringComparison.Ordinal), ""));

    private static (int Exit, string Out, string Error) Of(string text, string more)
    {
        CommandSession session = CommandSession.About(text, file => $"check {file}{more}");
        return (session.Exit, session.Out, session.Error);
    }
}
