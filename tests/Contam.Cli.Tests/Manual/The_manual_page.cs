using System.Text.RegularExpressions;
using Contam.Cli.Manual;

namespace Contam.Cli.Tests.Manual;

/// <summary><c>contam man</c>: the same words as the help, for <c>man</c>.</summary>
public sealed partial class The_manual_page
{
    [Theory]
    [MemberData(nameof(The_help.Commands), MemberType = typeof(The_help))]
    public void Tells_of_every_command_and_option(string command)
    {
        string page = CommandSession.Of("man").Out;

        Assert.Contains($".SS \"{RoffWriter.Escape(command)}", page, StringComparison.Ordinal);
        Assert.All(Options().Matches(CommandSession.Of($"{command} --help").Out), option =>
            Assert.Contains($"\\fB{RoffWriter.Escape(option.Groups["name"].Value)}", page.Replace(", ", ", \\fB", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(".TH is no request", "\\&.TH is no request")]
    [InlineData("'em", "\\&\\(aqem")]
    [InlineData("a\\b --c", "a\\(rsb \\-\\-c")]
    [InlineData("Öl", "\\[u00D6]l")]
    public void Takes_no_word_for_a_request(string text, string expected) => Assert.Equal(expected, RoffWriter.Escape(text));

    [GeneratedRegex(@"^  (?<name>--[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex Options();
}
