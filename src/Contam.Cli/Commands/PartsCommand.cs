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
    private readonly Option<bool> tree = new("--tree") { Description = "each circuit as a tree in flow order, with what leads back and what ends, so that a forgotten return is seen" };

    public Command Build()
    {
        var command = new Command(
            "parts",
            """
            What is in a family: parts, kinds, circuits, seals.

            Examples:
              contam parts systems/families/outboard-gearcase.yaml
              contam parts systems/families/harbour-diesel-i4.yaml --tree
            """);
        command.Arguments.Add(family);
        command.Options.Add(standard);
        command.Options.Add(format);
        command.Options.Add(tree);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (call.GetValue(tree) && call.GetValue(format) != "text")
            throw new WrongUseException("--tree is for reading. The joints stand in --format json without it.");
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(call.GetValue(family)!, rules) is not { } read)
            return ExitCode.WrongUse;
        if (call.GetValue(format) == "json")
            shell.Out.Write(FamilyJson.Write(read));
        else if (call.GetValue(tree))
            CircuitTree.Write(read, shell.Out, CommonOptions.LookOf(call, shell));
        else
            FamilyText.Write(read, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }
}
