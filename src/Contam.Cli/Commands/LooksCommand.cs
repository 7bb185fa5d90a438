using System.CommandLine;
using Contam.Plans;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam looks</c>: how far to go, by a few looks that decide.</summary>
internal sealed class LooksCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly LookArguments looks = new();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "looks",
            """
            How far to go: the few looks that decide most, what is sure whatever they show, and what each part needs as they come out.
            Whatever the looks show, every part that debris could have reached then is treated.

            Example:
              contam looks systems/families/harbour-reverse-gear.yaml --failed output-gear --debris metal
            """);
        failure.AddTo(command);
        looks.AddTo(command);
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
        PlanRequest request = looks.Into(new PlanRequest(asked.Family, asked.Standard, asked.Failures, asked.Debris) { Findings = asked.Findings }, call);
        LooksAnswer answer = LookArguments.Answer(request, one => HowFar.Of(one, one.MostLooks, one.LookAt));
        if (call.GetValue(format) == "json")
            shell.Out.Write(LooksJson.Write(answer, asked.Family));
        else
            LooksText.Write(answer, request, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }
}
