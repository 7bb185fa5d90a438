using System.Collections.Immutable;
using System.CommandLine;
using Contam.Problems;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam check</c>: are these files sound?</summary>
internal sealed class CheckCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string[]> files = new("FILE") { Description = "family files and standards", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json", "sarif");
    private readonly Option<bool> strict = new("--strict") { Description = "a warning is a no too: end with 1" };
    private readonly Option<string?> explain = new("--explain") { Description = "say what a code means and what to do about it; without a code, list all", HelpName = "CODE", Arity = ArgumentArity.ZeroOrOne };

    public Command Build()
    {
        var command = new Command(
            "check",
            """
            Is this family or standard sound? Every error with its place and what to do about it, and a warning for what is
            likely forgotten. What is meant so is said in the file: meant: {dead-end: the drain ends over the side}

            Examples:
              contam check systems/families/harbour-diesel-i4.yaml my-shop.yaml
              contam check --explain dead-end
            """);
        explain.CompletionSources.Add(_ => ProblemCodes.All.Select(code => code.Code));
        command.Arguments.Add(files);
        foreach (Option option in new Option[] { standard, format, strict, explain })
            command.Options.Add(option);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        string[] named = call.GetValue(files)!;
        if (call.GetResult(explain) is { Implicit: false })
            return named.Length == 0 ? Explain(call) : throw new WrongUseException("--explain explains a code and checks no file. Leave one of the two out.");
        if (named.Length == 0)
            throw new WrongUseException("no file is named. contam check FILE… checks files; contam check --explain lists what it can say.");
        if (loading.Standard(call.GetValue(standard)) is not { } rules)
            return ExitCode.WrongUse;
        ImmutableArray<Problem> problems = [.. named.SelectMany(file => loading.Check(file, rules))];
        bool canAllBeRead = problems.All(problem => problem.Place is not null || problem.Severity != Severity.Error);
        int errors = problems.Count(problem => problem.Severity == Severity.Error);
        switch (call.GetValue(format))
        {
            case "json":
                shell.Out.Write(ProblemJson.Write(named, problems));
                break;
            case "sarif":
                shell.Out.Write(ProblemSarif.Write(problems, Environment.CurrentDirectory));
                break;
            default:
                Print(call, problems, canAllBeRead, Summary(named.Length, errors, problems.Length - errors));
                break;
        }

        if (!canAllBeRead)
            return ExitCode.WrongUse;
        return errors > 0 || (call.GetValue(strict) && problems.Length > 0) ? ExitCode.No : ExitCode.Yes;
    }

    private void Print(ParseResult call, ImmutableArray<Problem> problems, bool canAllBeRead, string summary)
    {
        if (!canAllBeRead)
        {
            ProblemText.Write(problems, shell.Error, TextLook.Plain);
            return;
        }

        ProblemText.Write(problems, shell.Out, CommonOptions.LookOf(call, shell));
        shell.Out.Write(summary);
        foreach (string file in call.GetValue(files)!.Where(file => FileSort.Of(file) == FileSort.Module))
            shell.Out.Write($"{TextPage.Harmless(file)} names no family, so it was read as a module. A family says `family: its-name` near its top.\n");
    }

    private int Explain(ParseResult call)
    {
        TextLook look = CommonOptions.LookOf(call, shell);
        if (call.GetValue(explain) is not { } name)
        {
            ProblemCodeText.WriteAll(shell.Out, look);
            return ExitCode.Yes;
        }

        if (ProblemCodes.Find(name) is not { } code)
        {
            throw new WrongUseException($"there is no code {Wording.Quoted(name)}.{Typed.Near(name, ProblemCodes.All.Select(one => one.Code))} contam check --explain lists all.");
        }

        ProblemCodeText.Write(code, shell.Out, look);
        return ExitCode.Yes;
    }

    private static string Summary(int files, int errors, int warnings) => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{files} {(files == 1 ? "file" : "files")}: {Count(errors, "error")}, {Count(warnings, "warning")}.\n");

    private static string Count(int count, string what) => count == 0 ? $"no {what}s" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}
