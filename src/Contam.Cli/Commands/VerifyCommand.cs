using System.CommandLine;
using System.Text.Json;
using Contam.Plans;
using Contam.Proof;
using Contam.Reports.Json;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Commands;

/// <summary><c>contam verify</c>: is this plan complete and in a safe order?</summary>
internal sealed class VerifyCommand(Shell shell, Loading loading) : ICommandSource
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
        Verification verification = PlanVerifier.Verify(document, read, rules.CatalogueOf().Debris);
        if (call.GetValue(format) == "json")
            shell.Out.Write(VerifyJson.Write(verification));
        else
            VerifyText.Write(verification, shell.Out, CommonOptions.LookOf(call, shell));
        return verification.Holds ? ExitCode.Yes : ExitCode.No;
    }

    internal static PlanDocument ReadPlan(string file)
    {
        string name = TextPage.Harmless(file);
        try
        {
            return PlanJson.Read(File.ReadAllText(file));
        }
        catch (JsonException notAPlan)
        {
            throw new WrongUseException($"{name} is not a plan: {TextPage.Harmless(notAPlan.Message)} Give a file written by contam plan --format json.");
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new WrongUseException($"{name} cannot be read: {TextPage.Harmless(cannot.Message)} Check the name and the folder.");
        }
    }
}
