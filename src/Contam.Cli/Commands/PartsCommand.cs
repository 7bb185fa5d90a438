using System.CommandLine;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam parts</c>: what is in a family.</summary>
internal sealed class PartsCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> family = FailureArguments.FamilyArgument();
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "parts",
            """
            What is in a family: parts, kinds, circuits, seals.

            Example:
              contam parts systems/families/outboard-gearcase.yaml
            """);
        command.Arguments.Add(family);
        command.Options.Add(standard);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(call.GetValue(family)!, rules) is not { } read)
            return ExitCode.WrongUse;
        if (call.GetValue(format) == "json")
            shell.Out.Write(FamilyJson.Write(read));
        else
            FamilyText.Write(read, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }
}
