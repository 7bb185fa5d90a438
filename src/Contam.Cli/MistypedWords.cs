using System.CommandLine;
using System.CommandLine.Parsing;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>What a person may have meant who called the command by words that it does not know.</summary>
internal static class MistypedWords
{
    private const int MostNear = 2;

    /// <summary>A call of <c>help COMMAND…</c> as the call of that command's help; any other as it is.</summary>
    /// <exception cref="WrongUseException">There is no such command.</exception>
    public static string[] WithHelp(RootCommand root, string[] args)
    {
        if (args is not ["help", .. string[] words] || words.Any(word => word.StartsWith('-')))
            return args;
        Command at = root;
        foreach (string word in words)
        {
            at = at.Subcommands.FirstOrDefault(one => one.Name == word)
                ?? throw new WrongUseException($"{NoCommand(at, word)} {NamesTo(at)} --help lists them.");
        }

        return [.. words, "--help"];
    }

    /// <summary>What is said of each word that stands where none, or another, is due; nothing where every word is known.</summary>
    public static IEnumerable<string> Of(ParseResult call)
    {
        Command command = call.CommandResult.Command;
        bool isBehindOption = false;
        foreach (string word in call.UnmatchedTokens.Concat(TakenForFiles(call)))
        {
            bool isOption = word.Length > 1 && word[0] == '-';
            if (isOption)
                yield return $"{NamesTo(command)} has no option {Harmless(Name(word))}.{Near(Name(word), OptionsOf(command))}";
            else if (!isBehindOption && command.Subcommands.Count > 0)
                yield return NoCommand(command, word);
            else if (!isBehindOption)
                yield return $"{Harmless(word)} is a word too many.{(command.Arguments.Count == 0 ? "" : $" Behind {NamesTo(command)} stands {string.Join(' ', command.Arguments.Select(argument => argument.Name))}; a list is parted by commas, without spaces.")}";
            // The word behind an option that is not known is likely its value; a command takes no more than one mistake at its first word.
            isBehindOption = isOption || command.Subcommands.Count > 0;
        }
    }

    /// <summary>What the parser says of a value, in this command's words.</summary>
    public static string InOwnWords(ParseError error)
    {
        if (error.SymbolResult is OptionResult { Option: { } option } result)
        {
            if (result.Tokens.Count < option.Arity.MinimumNumberOfValues)
                return $"{option.Name} needs something behind it: {option.Name} {option.HelpName}.";
            string[] words = (option.HelpName ?? "").Split('|');
            if (words.Length > 1 && result.Tokens is [var token, ..] && !words.Contains(token.Value))
                return $"{option.Name} is {Problems.Wording.OneOf(words)}, got {Harmless(token.Value)}.{Near(token.Value, words)}";
        }

        return error.SymbolResult is CommandResult { Command.Subcommands.Count: > 0 } command && HasNoWord(command) ? "a command is missing." : error.Message;

        static bool HasNoWord(CommandResult of) => !of.Tokens.Any(token => token.Type == TokenType.Argument);
    }

    // A command that takes several files takes an option that it does not know for one of them.
    private static IEnumerable<string> TakenForFiles(ParseResult call) => call.Tokens.Any(token => token.Type == TokenType.DoubleDash)
        ? []
        : call.CommandResult.Tokens.Where(token => token.Type == TokenType.Argument && token.Value.StartsWith("--", StringComparison.Ordinal)).Select(token => token.Value);

    /// <summary>How a command is called, with those around it.</summary>
    public static string NamesTo(Command command)
    {
        var names = new List<string>();
        for (Command? at = command; at is not null; at = at.Parents.OfType<Command>().FirstOrDefault())
            names.Add(at is RootCommand ? ContamCommand.Name : at.Name);
        names.Reverse();
        return string.Join(' ', names);
    }

    private static string NoCommand(Command around, string word) =>
        $"{NamesTo(around)} has no command {Harmless(word)}.{Near(word, around.Subcommands.Where(one => !one.Hidden).Select(one => one.Name))}";

    private static string Near(string word, IEnumerable<string> names)
    {
        string[] near = [.. NearName.AllOf(word.ToLowerInvariant(), names, MostNear)];
        return near.Length == 0 ? "" : $" Did you mean {string.Join(" or ", near)}?";
    }

    private static IEnumerable<string> OptionsOf(Command command)
    {
        bool isHere = true;
        for (Command? at = command; at is not null; at = at.Parents.OfType<Command>().FirstOrDefault())
        {
            foreach (Option option in at.Options.Where(option => !option.Hidden && (isHere || option.Recursive) && option.Name.StartsWith("--", StringComparison.Ordinal)))
                yield return option.Name;
            isHere = false;
        }
    }

    // `--option=value` is known by what stands before the sign.
    private static string Name(string word) => word.Split('=')[0];

    private static string Harmless(string word) => TextPage.Harmless(word);
}
