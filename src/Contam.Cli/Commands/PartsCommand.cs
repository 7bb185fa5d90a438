using System.CommandLine;
using Contam.Cli.Starting;
using Contam.Families;
using Contam.Reports;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam parts</c>: what is in a family.</summary>
internal sealed class PartsCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> family = FailureArguments.FamilyArgument();
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json", "csv");
    private readonly Option<bool> joints = new("--joints") { Description = "with --format csv, the table of joints instead of that of parts" };
    private readonly Option<string?> into = new("--into") { Description = "with --format csv, write joints.csv and parts.csv into this folder, which is not there yet", HelpName = "FOLDER" };
    private readonly Option<bool> tree = new("--tree") { Description = "each circuit as a tree in flow order, with what leads back and what ends, so that a forgotten return is seen" };

    public Command Build()
    {
        var command = new Command(
            "parts",
            """
            What is in a family: parts, kinds, circuits, seals. As tables for a spreadsheet with --format csv;
            contam start FOLDER --from joints.csv makes a family of them again.

            Examples:
              contam parts systems/families/outboard-gearcase.yaml
              contam parts systems/families/harbour-diesel-i4.yaml --tree
              contam parts outboard-gearcase --format csv --into gearcase-tables
            """);
        command.Arguments.Add(family);
        command.Options.Add(standard);
        command.Options.Add(format);
        command.Options.Add(tree);
        command.Options.Add(joints);
        command.Options.Add(into);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (call.GetValue(tree) && call.GetValue(format) != "text")
            throw new WrongUseException("--tree is for reading. The joints stand in --format json without it.");
        if (call.GetValue(format) != "csv" && (call.GetValue(joints) || call.GetValue(into) is not null))
            throw new WrongUseException("--joints and --into are for tables. Add --format csv.");
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(call.GetValue(family)!, rules) is not { } read)
            return ExitCode.WrongUse;
        if (call.GetValue(into) is { } folder)
        {
            NewFolder.Write(folder, [("joints.csv", Table(FamilyCsv.WriteJoints, read)), ("parts.csv", Table(FamilyCsv.WriteParts, read))]);
            shell.Out.Write($"Written: {TextPage.Harmless(Path.Combine(folder, "joints.csv"))} and parts.csv beside it.\n");
        }
        else if (call.GetValue(format) == "csv")
            shell.Out.Write(Table(call.GetValue(joints) ? FamilyCsv.WriteJoints : FamilyCsv.WriteParts, read));
        else if (call.GetValue(format) == "json")
            shell.Out.Write(FamilyJson.Write(read));
        else if (call.GetValue(tree))
            CircuitTree.Write(read, shell.Out, CommonOptions.LookOf(call, shell));
        else
            FamilyText.Write(read, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }

    private static string Table(Action<Family, TextWriter> write, Family family)
    {
        using var text = new StringWriter();
        write(family, text);
        return text.ToString();
    }
}
