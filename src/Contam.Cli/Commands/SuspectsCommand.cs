using System.CommandLine;
using Contam.Cli.Jobs;
using Contam.Diagnosis;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam suspects</c>: where debris could be coming from, and where to look next.</summary>
internal sealed class SuspectsCommand(Shell shell, Loading loading, OpenShops shops) : ICommandSource
{
    private readonly FailureArguments arguments = new();
    private readonly UseHistory history = new(shell, shops);
    private readonly Option<string> sure = SureOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "suspects",
            """
            Where debris could be coming from, given what was found and what was clean, and where to look next.

            Example:
              contam suspects systems/families/harbour-diesel-i4.yaml --found oil-filter=metal:120um,flakes,not-magnetic --clean drain-plug
            """);
        arguments.AddFindingsTo(command);
        history.AddTo(command);
        command.Options.Add(sure);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    internal static Option<string> SureOption() => new("--sure") { Description = "the share at which one suspect counts as the source (default 90%)", HelpName = "SHARE", DefaultValueFactory = _ => "90%" };

    private int Run(ParseResult call)
    {
        double wanted = FailureArguments.ShareOf("--sure", call.GetValue(sure)!);
        if (loading.ReadSuspects(call, arguments) is not { } question)
            return ExitCode.WrongUse;
        SuspectAnswer answer = Suspecting.Of(question with { History = history.Of(call, question.Family, [question.Debris]) });
        LookingPlan plan = Looking.Plan(answer, wanted);
        if (call.GetValue(format) == "json")
            shell.Out.Write(SuspectsJson.Write(answer, plan));
        else
            SuspectsText.Write(answer, plan, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }
}
