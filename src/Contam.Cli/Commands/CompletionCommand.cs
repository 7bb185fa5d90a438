using System.CommandLine;
using Contam.Cli.Completion;

namespace Contam.Cli.Commands;

/// <summary><c>contam completion</c>: the script that lets a shell complete what is typed.</summary>
internal sealed class CompletionCommand(Shell shell) : ICommandSource
{
    private readonly Argument<string> asked = new("SHELL") { Description = $"whose script: {string.Join(", ", ShellScripts.Shells)}" };

    // What the scripts ask with: the words so far, or from bash the whole line.
    private readonly Argument<string[]> words = new("WORD") { Arity = ArgumentArity.ZeroOrMore, Hidden = true };

    public Command Build()
    {
        var command = new Command(
            "completion",
            """
            The script that lets a shell complete commands, options, family files and the parts of the family that is named. It asks contam itself, so it stays right when contam changes.

            Examples, for a line in ~/.bashrc, ~/.zshrc, ~/.config/fish/config.fish and the profile of PowerShell:
              source <(contam completion bash)
              source <(contam completion zsh)
              contam completion fish | source
              contam completion pwsh | Out-String | Invoke-Expression
            """);
        asked.AcceptOnlyFromAmong([.. ShellScripts.Shells]);
        command.Arguments.Add(asked);
        command.Arguments.Add(words);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        string named = call.GetValue(asked)!;
        if (call.GetValue(words) is { Length: > 0 } typed)
            Answer((RootCommand)call.RootCommandResult.Command, named, typed);
        else
            shell.Out.Write(ShellScripts.For(named));
        return ExitCode.Yes;
    }

    /// <summary>Without the command's own name, which comes first, and from PowerShell without the blank that keeps an empty word from getting lost.</summary>
    private static string[] WordsOf(string named, string[] typed) => named == ShellScripts.PowerShell && typed[^1].EndsWith(' ') ? [.. typed[1..^1], typed[^1][..^1]] : typed[1..];

    private void Answer(RootCommand root, string named, string[] typed)
    {
        var completer = new Completer(root);
        if (named == ShellScripts.Bash)
        {
            BashLine line = BashLine.Of(typed[0]);
            foreach (Candidate one in completer.At(line.Words))
                shell.Out.Write(one.Word[line.Kept..] + "\n");
            return;
        }

        foreach (Candidate one in completer.At(WordsOf(named, typed)))
            shell.Out.Write($"{one.Word}\t{one.About}\n");
    }
}
