using System.Collections.Immutable;
using System.CommandLine;
using Contam.Audits;
using Contam.Problems;
using Contam.Reports.Audits;
using Contam.Reports.Json;

namespace Contam.Cli.Commands;

/// <summary><c>contam audit</c>: every failure of every family.</summary>
internal sealed class AuditCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string[]> named = new("FOLDER|FILE") { Description = "family files, and folders that are gone through for them", Arity = ArgumentArity.OneOrMore };
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string?> baseline = new("--baseline") { Description = "an earlier audit, written with --format json: only what has changed since is told", HelpName = "AUDIT.json" };
    private readonly Option<int> jobs = JobsOption();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json", "csv", "html");
    private readonly Option<string> what = CommonOptions.OneOf("--what", "which table, with --format csv", "messages", "failures", "matrix");

    public Command Build()
    {
        string Listed(Severity severity) => string.Join("\n", AuditCodes.All.Where(code => code.Severity == severity).Select(code => $"  {code.Code}: {code.Meaning}"));
        var command = new Command(
            "audit",
            $$"""
            Every failure of every family: each part that can shed, with each debris that it sheds, planned by the standard with
            looks and without, and both plans played step by step. For each: the bench hours that are sure, to be expected and at
            most, and the share that hangs on looks (all of them with --format json or csv --what failures). Ends with 1 where something must be mended, so that a shop can run it before it takes a change.

            Must be mended:
            {{Listed(Severity.Error)}}
            To read:
            {{Listed(Severity.Warning)}}

            Examples:
              contam audit systems
              contam audit systems --format json > before.json
              contam audit systems --standard our-shop.yaml --baseline before.json
            """);
        command.Arguments.Add(named);
        foreach (Option option in new Option[] { standard, baseline, jobs, format, what })
            command.Options.Add(option);
        command.SetAction(Run);
        return command;
    }

    internal static Option<int> JobsOption()
    {
        var option = new Option<int>("--jobs") { Description = "how many failures are worked at once (default: one for each processor); the answer is the same for any number", DefaultValueFactory = _ => Environment.ProcessorCount };
        option.MustBeFrom(1, 1024);
        return option;
    }

    private int Run(ParseResult call)
    {
        (ImmutableArray<AuditMessage> Messages, ImmutableArray<AuditedFailure> Failures)? earlier = call.GetValue(baseline) is { } file ? ReadBaseline(file) : null;
        if (loading.Standard(call.GetValue(standard)) is not { } rules || FamilyFiles.Read(call.GetValue(named)!, rules, loading) is not { } families)
            return ExitCode.WrongUse;
        Audit audit = Auditing.Of(new AuditQuestion(families, rules) { Jobs = call.GetValue(jobs), Progress = new Progress(shell, "failures").Tell });
        AuditChange? change = earlier is { } before ? AuditChange.Between(before.Messages, before.Failures, audit) : null;
        Write(audit, change, call);
        return (change?.Errors ?? audit.Errors) == 0 ? ExitCode.Yes : ExitCode.No;
    }

    private void Write(Audit audit, AuditChange? change, ParseResult call)
    {
        switch (call.GetValue(format), call.GetValue(what))
        {
            case ("json", _):
                shell.Out.Write(AuditJson.Write(audit, change));
                break;
            case ("html", _):
                AuditHtml.Write(audit, change, shell.Out);
                break;
            case ("csv", "failures"):
                AuditCsv.WriteFailures(audit, change, shell.Out);
                break;
            case ("csv", "matrix"):
                AuditCsv.WriteMatrix(audit, shell.Out);
                break;
            case ("csv", _):
                AuditCsv.WriteMessages(audit, change, shell.Out);
                break;
            default:
                AuditText.Write(audit, change, shell.Out, CommonOptions.LookOf(call, shell));
                break;
        }
    }

    private static (ImmutableArray<AuditMessage> Messages, ImmutableArray<AuditedFailure> Failures) ReadBaseline(string file) =>
        OwnFile.Read(file, AuditJson.Read, "a whole audit", "contam audit --format json without --baseline");
}
