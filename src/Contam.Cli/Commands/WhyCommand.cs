using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Json;
using Contam.Reports.Text;
using Contam.Spread;
using Contam.Treatment;
using Contam.Why;

namespace Contam.Cli.Commands;

/// <summary><c>contam why</c>: how debris gets to one part, or what keeps it clear.</summary>
internal sealed class WhyCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly Option<string> part = new("--part") { Description = "the part that is asked about", HelpName = "PART", Required = true };
    private readonly Option<bool> plain = new("--plain") { Description = "one paragraph that a customer understands" };
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "why",
            """
            How debris gets from the failure to a part, hop by hop, what would have to hold, which rule gave its treatment, and which look would spare it; for a part not reached: why not.

            Example:
              contam why systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal --part injector-3
            """);
        failure.AddTo(command);
        command.Options.Add(part);
        command.Options.Add(plain);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Read(call, failure) is not { } question)
            return ExitCode.WrongUse;
        TypedFailures.MustShed(question.Debris, "no debris gets anywhere");
        loading.Note(question);
        // What parts are said to have shed is all followed; here --debris also says which of it is asked about.
        string[] named = call.GetValue(failure.Debris)!;
        ImmutableArray<Debris> about = named.Length == 0 ? question.Debris : question.Debris.RemoveAll(one => !named.Contains(one.Name));
        if (about.Length > 1)
            throw new WrongUseException($"why answers for one debris at a time. Add --debris {about[0].Name}, or --debris {about[1].Name}.");
        Debris debris = about[0];
        PartId asked = new QuestionNames(question.Family, new Catalogue([], [])).Part(call.GetValue(part)!);
        Explanation why = Explaining.Of(
            new SpreadQuestion(question.Family, question.Failures, debris)
            {
                Findings = question.Findings,
                AcceptsCleanFindings = question.Standard.CleanFindings != CleanFindings.Never,
            },
            asked,
            question.Standard);
        LooksAnswer? howFar = why.NotReached is null ? HowFar.Of(new PlanRequest(question.Family, question.Standard, question.Failures, question.Debris) { Findings = question.Findings }) : null;
        if (call.GetValue(format) == "json")
            shell.Out.Write(WhyJson.Write(why, question.Family, howFar));
        else if (call.GetValue(plain))
            new TextPage(shell.Out, CommonOptions.LookOf(call, shell)).Paragraph(WhyText.Plain(why, question.Family));
        else
            WhyText.Write(why, question.Family, shell.Out, CommonOptions.LookOf(call, shell), howFar);
        return ExitCode.Yes;
    }
}
