using Contam.Reports.Text;
using Contam.Support;

namespace Contam.Cli.Tests.Gauge;

public sealed class Examples_in_the_help
{
    /// <summary>Every example of <c>--help</c> is run; none may be wrong use.</summary>
    [Theory]
    [InlineData("gauge", 3)]
    [InlineData("flush", 3)]
    public void Work_on_the_shipped_families(string command, int count)
    {
        string[] examples = [.. Run([command, "--help"]).Out.Split('\n').Select(line => line.Trim()).Where(line => line.StartsWith($"contam {command} ", StringComparison.Ordinal) && !line.Contains('<', StringComparison.Ordinal))];
        Assert.Equal(count, examples.Length);
        foreach (string example in examples)
        {
            string[] words = [.. example.Split(' ').Skip(1).Select(word => word.StartsWith("systems/", StringComparison.Ordinal) ? RepositoryFiles.At(word) : word)];
            Called called = Run(words);
            Assert.Equal("", called.Error);
            Assert.True(called.Exit is 0 or 1, example);
        }
    }

    private static Called Run(string[] words)
    {
        using var answers = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        int exit = ContamCommand.Run(words, new Shell(answers, errors, TextLook.Plain));
        return new Called(exit, answers.ToString(), errors.ToString());
    }
}
