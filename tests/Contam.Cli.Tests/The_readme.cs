using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Contam.Support;

namespace Contam.Cli.Tests;

/// <summary>What the README shows is what the command prints.</summary>
public partial class The_readme
{
    private static string Text => File.ReadAllText(RepositoryFiles.At("README.md"));

    private static string Guide => File.ReadAllText(RepositoryFiles.At("systems/guide.md"));

    [Fact]
    public void Is_short_enough_to_be_read() => Assert.InRange(Text.Split('\n').Length, 50, 200);

    [Fact]
    public void Shows_excerpts_of_what_is_printed()
    {
        string guide = File.ReadAllText(RepositoryFiles.At("systems/README.md"));
        MatchCollection excerpts = Excerpt().Matches(Text);
        MatchCollection inGuide = Excerpt().Matches(guide);
        MatchCollection atTheBench = Excerpt().Matches(Guide);
        Assert.NotEmpty(excerpts);
        Assert.NotEmpty(inGuide);
        Assert.NotEmpty(atTheBench);
        foreach (Match excerpt in excerpts.Concat(inGuide).Concat(atTheBench))
        {
            string[] printed = CommandSession.Of(excerpt.Groups["words"].Value).Out.Split('\n');
            int at = 0;
            foreach (string line in excerpt.Groups["lines"].Value.TrimEnd('\n').Split('\n').Where(line => line.Trim() != "…"))
            {
                int found = Array.IndexOf(printed, line, at);
                Assert.True(found >= 0, $"`{line}` is not printed there by {excerpt.Groups["words"].Value}");
                at = found + 1;
            }
        }
    }

    [Fact]
    public void Shows_the_example_of_a_shops_standard_as_it_is()
    {
        string guide = File.ReadAllText(RepositoryFiles.At("systems/README.md"));
        string example = File.ReadAllText(RepositoryFiles.At("systems/standards/north-quay.yaml"));
        Assert.Contains("```yaml\n" + example + "```", guide, StringComparison.Ordinal);
        Assert.True(example.Split('\n').Length < 60);
    }

    [Fact]
    public void Names_every_command_that_there_is()
    {
        string help = CommandSession.Of("--help").Out;
        string commands = help[help.IndexOf("Commands:", StringComparison.Ordinal)..];
        string[] names = [.. CommandLine().Matches(commands).Select(match => match.Groups["name"].Value)];
        Assert.NotEmpty(names);
        Assert.All(names, name => Assert.Contains($"| `{name} ", Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Shows_pictures_as_they_are_drawn()
    {
        MatchCollection pictures = Drawn().Matches(Guide);
        Assert.NotEmpty(pictures);
        foreach (Match picture in pictures)
        {
            string file = RepositoryFiles.At(Path.Combine("systems", picture.Groups["file"].Value));
            string drawn = CommandSession.Of(picture.Groups["words"].Value).Out;
            if (Environment.GetEnvironmentVariable("CONTAM_UPDATE_CASES") == "1")
                File.WriteAllText(file, drawn);
            Assert.Equal(drawn, File.ReadAllText(file));
        }
    }

    [Fact]
    public void Shows_the_ratios_that_were_measured()
    {
        using JsonDocument kept = JsonDocument.Parse(File.ReadAllText(RepositoryFiles.At("tools/bench/ratios.json")));
        string[] measured = [.. kept.RootElement.EnumerateObject().Where(one => one.Name != "cores" && !one.Name.EndsWith(", short", StringComparison.Ordinal))
            .Select(one => string.Create(CultureInfo.InvariantCulture, $"| {one.Name} | {one.Value.GetDouble():0.00} |"))];
        string developers = File.ReadAllText(RepositoryFiles.At("DEVELOPERS.md"));
        string[] shown = developers[developers.IndexOf("| Measured | Ratio |", StringComparison.Ordinal)..].Split('\n').Skip(2).TakeWhile(line => line.StartsWith('|')).ToArray();
        Assert.NotEmpty(measured);
        Assert.Equal(measured, shown);
    }

    [GeneratedRegex(@"<!-- excerpt: (?<words>[^>]+) -->\n```text\n(?<lines>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Excerpt();

    [GeneratedRegex(@"contam (?<words>draw [^>\n]+) > [a-z-]+\.svg\n```\n\n!\[[^\]]+\]\((?<file>[^)]+)\)")]
    private static partial Regex Drawn();

    [GeneratedRegex(@"^  (?<name>[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex CommandLine();
}
