using System.CommandLine;
using Contam.Families;
using Contam.Plans;
using Contam.Reports;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam plan</c>: the clean-out.</summary>
internal sealed class PlanCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly Option<int> technicians = new("--technicians") { Description = "how many work at once (default 1)", DefaultValueFactory = _ => 1 };
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json", "markdown", "csv");
    private readonly Option<string> what = CommonOptions.OneOf("--what", "which table, with --format csv", "steps", "order");

    public Command Build()
    {
        var command = new Command(
            "plan",
            """
            The clean-out: cautions, every part reached with grade and treatment, ordered steps, what to order, hours.

            Example:
              contam plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal
            """);
        failure.AddTo(command);
        technicians.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 1 or > 100)
                result.AddError("--technicians takes a whole number from 1 to 100.");
        });
        command.Options.Add(technicians);
        command.Options.Add(format);
        command.Options.Add(what);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Read(call, failure) is not { } question)
            return ExitCode.WrongUse;
        PlanDocument plan = Planner.Plan(new PlanRequest(question.Family, question.Standard, question.Failed, question.Debris)
        {
            Findings = question.Findings,
            Technicians = call.GetValue(technicians),
        });
        Write(plan, question.Family, call);
        return ExitCode.Yes;
    }

    private void Write(PlanDocument plan, Family family, ParseResult call)
    {
        switch (call.GetValue(format))
        {
            case "json":
                shell.Out.Write(PlanJson.Write(plan));
                break;
            case "markdown":
                PlanMarkdown.Write(plan, family, shell.Out);
                break;
            case "csv" when call.GetValue(what) == "order":
                PlanCsv.WriteOrder(plan, shell.Out);
                break;
            case "csv":
                PlanCsv.WriteSteps(plan, shell.Out);
                break;
            default:
                PlanText.Write(plan, family, shell.Out, CommonOptions.LookOf(call, shell));
                break;
        }
    }
}
