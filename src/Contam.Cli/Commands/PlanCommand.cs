using System.CommandLine;
using Contam.Cli.Reviews;
using Contam.Hosting;
using Contam.Plans;
using Contam.Problems;
using Contam.Reports.Sheets;
using Contam.Reports.Text;
using Contam.Reports;

namespace Contam.Cli.Commands;

/// <summary><c>contam plan</c>: the clean-out.</summary>
internal sealed class PlanCommand(Shell shell, Loading loading, IPlanner planner) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly Option<int> technicians = new("--technicians") { Description = "how many work at once (default 1)", DefaultValueFactory = _ => 1 };
    private readonly Option<string> order = CommonOptions.OneOf("--order", "by what the steps are numbered", "bench", "schedule");
    private readonly LookArguments looks = new();
    private readonly Option<string> share = ShareOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json", "markdown", "html", "csv");
    private readonly Option<string> what = CommonOptions.OneOf("--what", "which table, with --format csv", "steps", "order", "looks");

    private readonly Option<bool> reasons = new("--reasons") { Description = "say how the debris came to every part and why it is treated so (text)" };

    public Command Build()
    {
        var command = new Command(
            "plan",
            """
            The clean-out: what is sure, the looks that decide how far to go and what to strike as they come out, cautions, what it takes, methods, ordered steps, every part reached with its treatment, hours.
            A step with letters in its margin is done when debris was found at any of these looks. Whatever the looks show, nothing that could have been reached then is left out.

            Example:
              contam plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal
            With everything that could have been reached, and no look that decides:
              contam plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal --looks 0
            As a sheet for the bench, to print or to tick on a phone:
              contam plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal --format html > sheet.html
            """);
        failure.AddTo(command);
        technicians.MustBeFrom(1, 100);
        command.Options.Add(technicians);
        command.Options.Add(order);
        looks.AddTo(command);
        command.Options.Add(share);
        command.Options.Add(format);
        command.Options.Add(what);
        command.Options.Add(reasons);
        command.SetAction(Run);
        return command;
    }

    internal static Option<string> ShareOption() => new("--share")
    {
        Description = "with finds and no --failed: suspects with at least this share count as failed (default 5%)", HelpName = "SHARE", DefaultValueFactory = _ => "5%",
    };

    private int Run(ParseResult call)
    {
        double wanted = FailureArguments.ShareOf("--share", call.GetValue(share)!);
        if (loading.Read(call, failure) is not { } question)
            return ExitCode.WrongUse;
        var request = new PlanRequest(question.Family, question.Standard, question.Failures, question.Debris)
        {
            Findings = question.Findings,
            Technicians = call.GetValue(technicians),
            Review = new ReviewsOf(shell, loading).Of(call.GetValue(failure.Family)!, question.Family, question.Standard),
            Sequence = call.GetValue(order) == "schedule" ? PlanSequence.Schedule : PlanSequence.Bench,
        };
        if (question.Failures.IsEmpty)
            request = FromFindings(request, wanted);
        request = looks.Into(request, call);
        // A table has no place for it; every other form carries it.
        if (call.GetValue(format) == "csv")
            loading.Note(question);
        Write(LookArguments.Answer(request, planner.Plan), request, call);
        return ExitCode.Yes;
    }

    /// <summary>Where nobody named a failed part, the suspects count as failed.</summary>
    internal static PlanRequest FromFindings(PlanRequest request, double share) => FailedFromFindings.Take(request, share) ?? throw new WrongUseException(
        $"no part of {request.Family.Id} that sheds {Wording.AllOf(request.Debris.Select(debris => debris.Name))} has a way to {Wording.AllOf(request.Findings.Where(finding => finding.Found && request.Debris.Contains(finding.Debris)).Select(finding => finding.Part.Value).Distinct())}. "
        + "Name the failed part with --failed PART, or say in the family file what sheds it and how it gets there.");

    private void Write(PlanDocument plan, PlanRequest request, ParseResult call)
    {
        switch (call.GetValue(format))
        {
            case "json":
                shell.Out.Write(PlanJson.Write(plan));
                break;
            case "markdown":
                PlanMarkdown.Write(plan, request.Family, shell.Out);
                break;
            case "html":
                PlanHtml.Write(plan, request, CommonOptions.LookOf(call, shell), shell.Out);
                break;
            case "csv" when call.GetValue(what) == "order":
                PlanCsv.WriteOrder(plan, shell.Out);
                break;
            case "csv" when call.GetValue(what) == "looks":
                PlanCsv.WriteLooks(plan, shell.Out);
                break;
            case "csv":
                PlanCsv.WriteSteps(plan, shell.Out);
                break;
            default:
                PlanText.Write(plan, request.Family, shell.Out, CommonOptions.LookOf(call, shell), call.GetValue(reasons));
                break;
        }
    }
}
