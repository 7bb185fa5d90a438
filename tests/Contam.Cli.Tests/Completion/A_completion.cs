using System.Diagnostics;

namespace Contam.Cli.Tests.Completion;

/// <summary>What a shell is told when somebody asks it to go on with a line.</summary>
public sealed class A_completion
{
    private const string Diesel = "systems/families/harbour-diesel-i4.yaml";

    [Theory]
    [InlineData("contam pl", "plan")]
    [InlineData("contam job ti", "tick")]
    [InlineData("contam plan systems/families/harb", "systems/families/harbour-diesel-i4.yaml systems/families/harbour-reverse-gear.yaml")]
    [InlineData($"contam plan {Diesel} --failed rail", "rail rail-pressure-valve")]
    [InlineData($"contam plan {Diesel} --failed pump-no-such", "")]
    [InlineData($"contam plan {Diesel} --format m", "markdown")]
    [InlineData("ls | contam che", "check")]
    [InlineData($"contam plan {Diesel} --failed rail,rail-p", "rail,rail-pressure-valve")]
    [InlineData($"contam plan {Diesel} --failed rail-pressure-valve,rail-p", "")]
    [InlineData($"contam plan {Diesel} --failed=rail-", "rail-pressure-valve")]
    [InlineData($"contam plan {Diesel} --failed rail --deb", "--debris")]
    [InlineData($"contam plan {Diesel} --stack --sta", "--standard")]
    [InlineData($"contam plan {Diesel} --found lift-p", "lift-pump=")]
    [InlineData($"contam plan {Diesel} --found lift-pump=m", "metal")]
    [InlineData($"contam plan '{Diesel}' --failed lift", "lift-pump")]
    [InlineData("contam plan 'systems/families/harbour-d", Diesel)]
    [InlineData("contam verify systems/families/harbour-d", "")]
    [InlineData("contam plan systems/modules/common", "")]
    [InlineData("contam start x --like harbour-d", "harbour-diesel-i4")]
    [InlineData("contam check --explain dead-", "dead-end")]
    [InlineData("contam job tick 1 --anyw", "--anyway")]
    public void In_bash_offers_what_fits(string line, string expected) =>
        Assert.Equal(expected.Split(' ', StringSplitOptions.RemoveEmptyEntries), Asked("completion", "bash", "--", line).Select(one => one.Split('\t')[0]));

    [Fact]
    public void In_zsh_says_what_each_is()
    {
        string[] offered = Asked("completion", "zsh", "--", "contam", "plan", Diesel, "--tech");

        Assert.Equal(["--technicians\thow many work at once (default 1)"], offered);
    }

    [Theory]
    [InlineData("contam plan no-such-file.yaml --failed x")]
    [InlineData("contam plan ' --failed")]
    [InlineData("contam no-such-command --x")]
    public void Says_nothing_where_it_knows_nothing(string line)
    {
        CommandSession session = CommandSession.Of(["completion", "bash", "--", line]);

        Assert.Equal((0, "", ""), (session.Exit, session.Out, session.Error));
    }

    [Theory]
    [InlineData("bash", "-n")]
    [InlineData("zsh", "-n")]
    public async Task Has_a_script_that_its_shell_can_read(string shell, string readOnly)
    {
        string program = $"/usr/bin/{shell}";
        Assert.SkipUnless(File.Exists(program), $"{shell} is not installed");
        string script = CommandSession.Of($"completion {shell}").Out;
        using Process process = Process.Start(new ProcessStartInfo(program, readOnly) { RedirectStandardInput = true, RedirectStandardError = true })!;
        await process.StandardInput.WriteAsync(script);
        process.StandardInput.Close();
        string said = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal(("", 0), (said, process.ExitCode));
    }

    [Fact]
    public void Knows_no_other_shell() => Assert.Equal(2, CommandSession.Of("completion csh").Exit);

    private static string[] Asked(params string[] words)
    {
        CommandSession session = CommandSession.Of(words);
        Assert.Equal((0, ""), (session.Exit, session.Error));
        return session.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
