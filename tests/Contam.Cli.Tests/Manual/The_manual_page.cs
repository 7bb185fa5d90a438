using System.CommandLine;
using System.Diagnostics;
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

    [Fact]
    public async Task Is_read_by_groff_without_a_warning()
    {
        if (!File.Exists("/usr/bin/groff"))
        {
            Assert.False(Environment.GetEnvironmentVariable("CI") == "true", "CI must not skip this test: groff is not installed");
            Assert.Skip("groff is not installed");
        }

        using Process process = Process.Start(new ProcessStartInfo("/usr/bin/groff", ["-man", "-Tutf8", "-ww", "-P-cbou"]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> shown = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> said = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.StandardInput.WriteAsync(CommandSession.Of("man").Out);
        process.StandardInput.Close();
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal((0, ""), (process.ExitCode, await said));
        Assert.Contains("contam plan FAMILY [options]", await shown, StringComparison.Ordinal);
        Assert.Contains("--failed PART[,PART]", await shown, StringComparison.Ordinal);
        // What is to be typed stays on one line and has the hyphens that are typed.
        Assert.Contains("    contam plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal\n", await shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Puts_a_sentence_together_that_the_help_breaks()
    {
        var command = new RootCommand("One sentence\nthat goes on.\nAnother.\n\nExample:\n  contam x \\ .y");
        using var page = new StringWriter();
        ManPage.Write(command, page);

        Assert.Contains(".PP\nOne sentence that goes on.\n.PP\nAnother.\n.PP\nExample:\n.PP\n.RS 4\n.nf\ncontam x \\(rs .y\n.fi\n.RE\n", page.ToString(), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"^  (?<name>--[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex Options();
}
