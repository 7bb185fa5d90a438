using System.CommandLine;
using Contam.Cli.Manual;

namespace Contam.Cli.Commands;

/// <summary><c>contam man</c>: the manual page.</summary>
internal sealed class ManCommand(Shell shell) : ICommandSource
{
    public Command Build()
    {
        var command = new Command(
            "man",
            """
            The manual page, made from the same words as --help.

            Examples:
              contam man | man -l -
              contam man > ~/.local/share/man/man1/contam.1
            """);
        command.SetAction(call =>
        {
            ManPage.Write((RootCommand)call.RootCommandResult.Command, shell.Out);
            return ExitCode.Yes;
        });
        return command;
    }
}
