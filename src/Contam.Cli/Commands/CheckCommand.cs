using System.Collections.Immutable;
using System.CommandLine;
using Contam.Problems;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam check</c>: are these files sound?</summary>
internal sealed class CheckCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string[]> files = new("FILE") { Description = "family files and standards", Arity = ArgumentArity.OneOrMore };
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "check",
            """
            Is this family or standard sound? Every error with its place and what to do about it.

            Example:
              contam check systems/families/harbour-diesel-i4.yaml my-shop.yaml
            """);
        command.Arguments.Add(files);
        command.Options.Add(standard);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        string[] named = call.GetValue(files)!;
        if (loading.Standard(call.GetValue(standard)) is not { } rules)
            return ExitCode.WrongUse;
        ImmutableArray<Problem> problems = [.. named.SelectMany(file => Loading.Check(file, rules))];
        bool canAllBeRead = problems.All(problem => problem.Place is not null || problem.Severity != Severity.Error);
        int errors = problems.Count(problem => problem.Severity == Severity.Error);
        if (call.GetValue(format) == "json")
        {
            shell.Out.Write(ProblemJson.Write(named, problems));
        }
        else if (!canAllBeRead)
        {
            ProblemText.Write(problems, shell.Error, TextLook.Plain);
        }
        else
        {
            ProblemText.Write(problems, shell.Out, CommonOptions.LookOf(call, shell));
            shell.Out.Write(Summary(named.Length, errors, problems.Length - errors));
        }

        return errors == 0 ? ExitCode.Yes : canAllBeRead ? ExitCode.No : ExitCode.WrongUse;
    }

    private static string Summary(int files, int errors, int warnings) => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{files} {(files == 1 ? "file" : "files")}: {Count(errors, "error")}, {Count(warnings, "warning")}.\n");

    private static string Count(int count, string what) => count == 0 ? $"no {what}s" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}
