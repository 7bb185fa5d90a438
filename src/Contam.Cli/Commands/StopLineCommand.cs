using System.CommandLine;
using Contam.Cli.Jobs;
using Contam.Reports.Json;
using Contam.Reports.Text;
using Contam.StopLines;

namespace Contam.Cli.Commands;

/// <summary><c>contam stop-line</c>: where to look so that the rest can be left alone.</summary>
internal sealed class StopLineCommand(Shell shell, Loading loading, OpenShops shops) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly UseHistory history = new(shell, shops);
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "stop-line",
            """
            Where to look so that, if all of it is clean, the rest can be left alone: the choice of looks for which looking and treating together take least.
            What was seen so far counts; ask again after every look.

            Example:
              contam stop-line systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal
            """);
        failure.AddTo(command);
        history.AddTo(command);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Read(call, failure) is not { } asked)
            return ExitCode.WrongUse;
        TypedFailures.MustShed(asked.Debris, "there is nothing to look for");
        loading.Note(asked);
        var question = new StopLineQuestion(asked.Family, asked.Standard, asked.Failures, asked.Debris) { Findings = asked.Findings };
        if (history.Of(call, asked.Family, asked.Debris) is { } counts)
            question = question.With(counts);
        StopLine line = StopLineFinder.Of(question);
        if (call.GetValue(format) == "json")
            shell.Out.Write(StopLineJson.Write(line, question));
        else
            StopLineText.Write(line, question, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }
}
