using System.CommandLine;
using System.CommandLine.Parsing;

namespace Contam.Cli.Completion;

/// <summary>What could stand at the cursor: commands and options by the parser's own account, values by what the help calls them.</summary>
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
            return NamesIn(earlier, typed);

        Argument? due = command.Arguments.FirstOrDefault(argument => !argument.Hidden && (before.GetResult(argument)?.Tokens.Count ?? 0) < argument.Arity.MaximumNumberOfValues);
        IReadOnlyList<Candidate> values = [.. Commands(command, typed), .. due is null ? [] : new Values(before, typed).Of(due)];
        return values.Count > 0 || typed.Length > 0 || hasOnlyValues ? values : NamesIn(earlier, "--");
    }

    private static IEnumerable<Candidate> Commands(Command command, string typed) => command.Subcommands
        .Where(one => !one.Hidden && one.Name.StartsWith(typed, StringComparison.Ordinal))
        .Select(one => new Candidate(one.Name, FirstLine(one.Description)));

    /// <summary>The options that can still be given, as the parser counts them.</summary>
    private List<Candidate> NamesIn(string[] earlier, string typed)
    {
        // The parser answers for the end of a line; words are quoted as it reads them.
        string line = string.Concat(earlier.Select(word => "\"" + word.Replace("\"", "", StringComparison.Ordinal) + "\" "));
        ParseResult call = root.Parse(line, WordsAlone);
        return
        [
            .. call.GetCompletions(line.Length)
                .Where(item => item.Label.StartsWith('-') && item.Label.StartsWith(typed, StringComparison.Ordinal))
                .Select(item => new Candidate(item.Label, FirstLine(item.Detail)))
                .DistinctBy(candidate => candidate.Word)
                .OrderBy(candidate => candidate.Word, StringComparer.Ordinal),
        ];
    }

    /// <summary>The option that the last of the words before names, where its value comes next.</summary>
    private static Option? Waiting(ParseResult before, string[] earlier) =>
        earlier.Length > 0 && Named(before.CommandResult.Command, earlier[^1]) is { } option && TakesValue(option) && before.Tokens is [.., { Type: TokenType.Option }] ? option : null;

    private static Option? Named(Command command, string name)
    {
        bool isHere = true;
        for (Command? at = command; at is not null; at = at.Parents.OfType<Command>().FirstOrDefault())
        {
            if (at.Options.FirstOrDefault(option => (isHere || option.Recursive) && !option.Hidden && (option.Name == name || option.Aliases.Contains(name))) is { } found)
                return found;
            isHere = false;
        }

        return null;
    }

    private static bool TakesValue(Option option) => option.Arity.MaximumNumberOfValues > 0 && option.ValueType != typeof(bool);

    internal static string FirstLine(string? text) => Reports.Text.TextPage.Harmless((text ?? "").Split('\n')[0].Trim());
}
