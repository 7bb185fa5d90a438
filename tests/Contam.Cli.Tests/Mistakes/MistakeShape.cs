using System.Text.RegularExpressions;

namespace Contam.Cli.Tests.Mistakes;

/// <summary>What every answer to a mistake has, whatever its words.</summary>
internal static partial class MistakeShape
{
    public static void Check(MistakeCase one, string said)
    {
        string[] lines = said.TrimEnd('\n').Split('\n');
        // Nobody reads a screen full.
        Assert.True(lines.Length <= 12 && lines.All(line => line.Length <= 400), "the answer is too long");
        Assert.DoesNotContain("fault of contam", said, StringComparison.Ordinal);
        if (one.IsInFile)
            CheckFile(lines);
        else
            CheckCall(lines);
    }

    /// <summary>Each problem has its place, and is followed by a line that says what to do.</summary>
    private static void CheckFile(string[] lines)
    {
        int[] problems = [.. lines.Index().Where(line => Problem().IsMatch(line.Item)).Select(line => line.Index)];
        Assert.NotEmpty(problems);
        // One mistake is told once; two places at the most where it has two ends.
        Assert.True(problems.Length <= 2, $"{problems.Length} problems for one mistake");
        Assert.All(problems, at => Assert.True(at + 1 < lines.Length && lines[at + 1].StartsWith("  ", StringComparison.Ordinal), $"nothing says what to do about: {lines[at]}"));
    }

    /// <summary>What is wrong, and behind it what to do: a second sentence, or a line that names the help.</summary>
    private static void CheckCall(string[] lines) =>
        Assert.True(lines.Length > 1 || lines[0].TrimEnd('.').Contains(". ", StringComparison.Ordinal) || lines[0].Contains("? ", StringComparison.Ordinal), $"nothing says what to do about: {lines[0]}");

    [GeneratedRegex(@"^engine\.yaml:\d+:\d+: (error|warning): .+ \[[a-z-]+\]$")]
    private static partial Regex Problem();
}
