using System.Collections.Immutable;
using System.CommandLine;
using Contam.Cli.Jobs;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Hosting;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Commands;

/// <summary><c>contam trace</c>: guided work from the first find to the plan.</summary>
internal sealed class TraceCommand(Shell shell, Loading loading, OpenShops shops, IPlanner planner) : ICommandSource
{
    private readonly FailureArguments arguments = new();
    private readonly Option<string> sure = SuspectsCommand.SureOption();
    private readonly UseHistory history = new(shell, shops);
    private readonly Option<string> share = PlanCommand.ShareOption();

    public Command Build()
    {
        var command = new Command(
            "trace",
            """
            Asks for one look at a time until the source of the debris is known, and ends in a plan made from what was found. Stop at any time; go on from the findings file.

            Example:
              contam trace systems/families/harbour-diesel-i4.yaml --debris metal --findings found.yaml
            """);
        arguments.AddFindingsTo(command);
        history.AddTo(command);
        command.Options.Add(sure);
        command.Options.Add(share);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        double wanted = FailureArguments.ShareOf("--sure", call.GetValue(sure)!);
        double counted = FailureArguments.ShareOf("--share", call.GetValue(share)!);
        if (loading.ReadSuspects(call, arguments, fileMayBeNew: true) is not { } question)
            return ExitCode.WrongUse;
        question = question with { History = history.Of(call, question.Family, [question.Debris]) };
        FindingsFile? file = call.GetValue(arguments.FindingsFile) is { } path ? Open(path, question) : null;
        string again = $"contam trace {TextPage.Harmless(call.GetValue(arguments.Family)!)} --debris {question.Debris.Name}{(call.GetValue(arguments.FindingsFile) is { } kept ? $" --findings {TextPage.Harmless(kept)}" : "")}{history.Again(call)}";
        return new Tracing(shell, planner, CommonOptions.LookOf(call, shell), question, file, wanted, counted).Run(again);
    }

    /// <summary>What was typed as found or clean goes into the file first, so that it is not lost either.</summary>
    private FindingsFile Open(string path, SuspectQuestion question)
    {
        var file = FindingsFile.Open(path, question.Family, question.Standard.CatalogueOf(), question.Debris);
        ImmutableArray<Finding> kept = Loading.IsNew(path) ? [] : loading.FindingsOf(path, question.Family, question.Standard, [question.Debris])?.Findings ?? [];
        foreach (Finding typed in question.Findings.Except(kept))
            file.Add(typed);
        return file;
    }
}
