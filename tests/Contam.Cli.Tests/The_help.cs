using System.Text.RegularExpressions;

namespace Contam.Cli.Tests;

/// <summary>Every command helps itself.</summary>
public partial class The_help
{
    public static TheoryData<string> Commands => [.. CommandLine().Matches(CommandSession.Of("--help").Out.Split("Commands:")[1]).Select(match => match.Groups["name"].Value)];

    [Theory]
    [MemberData(nameof(Commands))]
    public void Shows_an_example_for_every_command(string command)
    {
        CommandSession session = CommandSession.Of($"{command} --help");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Contains("Example", session.Out, StringComparison.Ordinal);
        Assert.Contains($"contam {command} ", session.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("help", "--help")]
    [InlineData("help plan", "plan --help")]
    [InlineData("help job tick", "job tick --help")]
    public void Is_also_a_command(string asked, string same) => Assert.Equal(CommandSession.Of(same), CommandSession.Of(asked));

    [GeneratedRegex(@"^  (?<name>[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex CommandLine();
}
