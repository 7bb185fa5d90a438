using System.CommandLine;
using Contam.Authoring;
using Contam.Cli.Starting;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Commands;

/// <summary><c>contam describe</c>: an engine by question and answer.</summary>
internal sealed class DescribeCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> folder = new("FOLDER") { Description = "a folder that is not there yet, whose name is the family's id; or one that holds a family to go on with" };

    public Command Build()
    {
        var command = new Command(
            "describe",
            """
            Asks for your engine, in the order in which you follow a hose with a finger, and writes the family file. Each answer is
            kept at once. While you are asked: ? for not known (read the cautious way), undo, tree, change PART, stop, help. The same
            call goes on where you stopped. A file that was written by hand is added to; what stands in it stays.

            Example:
              contam describe deck-winch
            """);
        command.Arguments.Add(folder);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        string place = call.GetValue(folder)!;
        var described = DescribedFolder.Open(shell, CommonOptions.LookOf(call, shell), place, StartCommand.IdOf);
        bool isWhole = new Interview(described, BuiltInStandards.HouseOverKinds.CatalogueOf()).Run();
        string file = TextPage.Harmless(described.File);
        shell.Out.Write($"\n{described.Asked} {(described.Asked == 1 ? "question" : "questions")}. The file is {file}\n");
        if (!isWhole)
        {
            shell.Out.Write($"Stopped. To go on: contam describe {TextPage.Harmless(place)}\n");
            return ExitCode.Yes;
        }

        var problems = loading.Check(described.File, BuiltInStandards.HouseOverKinds);
        if (problems.Length > 0)
        {
            shell.Out.Write("\nWhat is likely forgotten:\n\n");
            ProblemText.Write(problems, shell.Out, TextLook.Plain);
        }

        shell.Out.Write($"\nNext:\n  contam parts {file} --tree\n    read it with a finger on the hoses: does every one lead where it does on the engine?\n  contam plan {file} --failed PART --debris metal\n    what would be done if this part failed?\n");
        return ExitCode.Yes;
    }
}
