using System.CommandLine;
using System.CommandLine.Parsing;

namespace Contam.Cli.Completion;

/// <summary>What could stand at the cursor: commands and options as the parser knows them, values by what the help calls them.</summary>
internal sealed class Completer(RootCommand root)
{
    // A word that begins with @ is a word here, not the name of a file to read.
    private static readonly ParserConfiguration WordsAlone = new() { ResponseFileTokenReplacer = null };

    /// <summary>The candidates for the last of these words, which may be empty; the words do not hold the command's own name. In a fixed order, each once.</summary>
    public IReadOnlyList<Candidate> At(IReadOnlyList<string> words)
    {
        string typed = words.Count > 0 ? words[^1] : "";
        string[] earlier = [.. words.Take(words.Count - 1)];
        ParseResult before = root.Parse(earlier, WordsAlone);
        Command command = before.CommandResult.Command;
        bool hasOnlyValues = earlier.Contains("--");
        if (!hasOnlyValues && Waiting(before, earlier) is { } option)
            return new Values(before, typed).Of(option);
        if (!hasOnlyValues && typed.StartsWith("--", StringComparison.Ordinal) && typed.IndexOf('=', StringComparison.Ordinal) is > 0 and var at)
            return Named(command, typed[..at]) is { } named && TakesValue(named) ? [.. new Values(before, typed[(at + 1)..]).Of(named).Select(one => one with { Word = typed[..(at + 1)] + one.Word })] : [];
        if (!hasOnlyValues && typed.StartsWith('-'))
            return NamesFor(before, typed);

        Argument? due = command.Arguments.FirstOrDefault(argument => !argument.Hidden && (before.GetResult(argument)?.Tokens.Count ?? 0) < argument.Arity.MaximumNumberOfValues);
        IReadOnlyList<Candidate> values = [.. Commands(command, typed), .. due is null ? [] : new Values(before, typed).Of(due)];
        return values.Count > 0 || typed.Length > 0 || hasOnlyValues ? values : NamesFor(before, "--");
    }

    private static IEnumerable<Candidate> Commands(Command command, string typed) => command.Subcommands
        .Where(one => !one.Hidden && one.Name.StartsWith(typed, StringComparison.Ordinal))
        .Select(one => new Candidate(one.Name, FirstLine(one.Description)));

    /// <summary>
    /// The options that can still be given, in ordinal order. The parser's own account is not asked: after an option that may take a second value it offers nothing but values for that one.
    /// </summary>
    private static List<Candidate> NamesFor(ParseResult before, string typed) =>
    [
        .. OptionsOf(before.CommandResult.Command)
            .Where(option => option.Arity.MaximumNumberOfValues > 1 || before.GetResult(option) is null or { Implicit: true })
            .SelectMany(option => option.Aliases.Append(option.Name).Where(name => name.StartsWith('-') && name.StartsWith(typed, StringComparison.Ordinal)).Select(name => new Candidate(name, FirstLine(option.Description))))
            .OrderBy(candidate => candidate.Word, StringComparer.Ordinal),
    ];

    /// <summary>The option that the last of the words before names, where its value comes next.</summary>
    private static Option? Waiting(ParseResult before, string[] earlier) =>
        earlier.Length > 0 && Named(before.CommandResult.Command, earlier[^1]) is { } option && TakesValue(option) && before.Tokens is [.., { Type: TokenType.Option }] ? option : null;

    private static Option? Named(Command command, string name) => OptionsOf(command).FirstOrDefault(option => option.Name == name || option.Aliases.Contains(name));

    /// <summary>The options that the help of a command shows: its own, and those of every command.</summary>
    private static IEnumerable<Option> OptionsOf(Command command)
    {
        bool isHere = true;
        for (Command? at = command; at is not null; at = at.Parents.OfType<Command>().FirstOrDefault())
        {
            foreach (Option option in at.Options.Where(option => !option.Hidden && (isHere || option.Recursive)))
                yield return option;
            isHere = false;
        }
    }

    private static bool TakesValue(Option option) => option.Arity.MaximumNumberOfValues > 0 && option.ValueType != typeof(bool);

    internal static string FirstLine(string? text) => Reports.Text.TextPage.Harmless((text ?? "").Split('\n')[0].Trim());
}
