using System.CommandLine;
using System.Globalization;
using Contam.Drills;
using Contam.Reports.Drills;
using Contam.Reports.Json;
using Contam.Reports.Markup;

namespace Contam.Cli.Commands;

/// <summary><c>contam drill</c>: an exercise for an apprentice, with its answers.</summary>
internal sealed class DrillCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly Option<string> seed = new("--seed") { Description = "another number gives other questions, the same number the same (default 1)", HelpName = "N", DefaultValueFactory = _ => "1" };
    private readonly Option<bool> answers = new("--answers") { Description = "with the answer sheet; html always has it, folded, and opens it with this" };
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the exercise", "text", "json", "markdown", "html");

    public Command Build()
    {
        var command = new Command(
            "drill",
            """
            An exercise for an apprentice from any failure: the circuits without the spread, questions of rising difficulty, and an answer sheet.

            Examples:
              contam drill systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal
              contam drill systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal --answers --format html > drill.html
            """);
        failure.AddFailureTo(command);
        command.Options.Add(seed);
        command.Options.Add(answers);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        ulong number = SeedOf(call.GetValue(seed)!);
        if (loading.ReadFailure(call, failure) is not { } question)
            return ExitCode.WrongUse;
        TypedFailures.MustShed(question.Debris, "there is nothing to follow");
        loading.Note(question);
        Drill drill = Drilling.Of(new DrillRequest(question.Family, question.Standard, question.Failures, question.Debris) { Seed = number });
        bool withAnswers = call.GetValue(answers);
        switch (call.GetValue(format))
        {
            case "json":
                shell.Out.Write(DrillJson.Write(drill, withAnswers));
                break;
            case "markdown":
                DrillMarkdown.Write(drill, withAnswers, shell.Out, CommonOptions.LookOf(call, shell));
                break;
            case "html":
                DrillHtml.Write(drill, withAnswers, new MarkupWriter(shell.Out), CommonOptions.LookOf(call, shell));
                break;
            default:
                DrillText.Write(drill, withAnswers, shell.Out, CommonOptions.LookOf(call, shell));
                break;
        }

        return ExitCode.Yes;
    }

    private static ulong SeedOf(string text) => ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out ulong number)
        ? number
        : throw new WrongUseException($"--seed: a whole number from 0 on was expected, for instance 7, got {Problems.Wording.Quoted(text)}.");
}
