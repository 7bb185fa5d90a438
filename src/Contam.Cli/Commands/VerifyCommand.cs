using System.CommandLine;
using Contam.Hosting;
using Contam.Plans;
using Contam.Proof;
using Contam.Reports.Json;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Commands;

/// <summary><c>contam verify</c>: is this plan complete and in a safe order?</summary>
internal sealed class VerifyCommand(Shell shell, Loading loading, IPlanVerifier verifier) : ICommandSource
{
    private readonly Argument<string> plan = new("PLAN.json") { Description = "a plan, written by contam plan --format json" };
    private readonly Argument<string> family = FailureArguments.FamilyArgument();
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "verify",
            """
            Is this plan complete and in a safe order? Checked afresh against the family, by code that shares nothing with what made the plan.
            Of a plan with looks every outcome of every look is played.

            Example:
              contam plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --format json > plan.json
              contam verify plan.json systems/families/harbour-diesel-i4.yaml
            """);
        command.Arguments.Add(plan);
        command.Arguments.Add(family);
        command.Options.Add(standard);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        PlanDocument document = ReadPlan(call.GetValue(plan)!);
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(call.GetValue(family)!, rules) is not { } read)
            return ExitCode.WrongUse;
        Verification verification = verifier.Verify(document, read, rules.CatalogueOf().Debris);
        if (call.GetValue(format) == "json")
            shell.Out.Write(VerifyJson.Write(verification));
        else
            VerifyText.Write(verification, shell.Out, CommonOptions.LookOf(call, shell));
        return verification.Holds ? ExitCode.Yes : ExitCode.No;
    }

    internal static PlanDocument ReadPlan(string file) => OwnFile.Read(file, PlanJson.Read, "a plan", "contam plan --format json");
}
