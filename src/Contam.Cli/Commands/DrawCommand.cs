using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Reports;
using Contam.Reports.Drawing;
using Contam.Reports.Markup;
using Contam.Spread;
using Contam.StopLines;
using Contam.Treatment;

namespace Contam.Cli.Commands;

/// <summary><c>contam draw</c>: the circuits as a picture, with how far debris has gone where a failure is named.</summary>
internal sealed class DrawCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the picture", "svg", "dot", "mermaid", "html");
    private readonly Option<bool> unfold = new("--unfold") { Description = "draw every repeated part by itself" };
    private readonly Option<bool> stopLine = new("--stop-line") { Description = "mark where to look so that, if all of it is clean, the rest can be left alone" };

    public Command Build()
    {
        var command = new Command(
            "draw",
            """
            The circuits as a picture; with a failure, each part marked by how far the debris has gone.

            Example:
              contam draw systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris metal > spread.svg
            """);
        failure.AddTo(command);
        command.Options.Add(format);
        command.Options.Add(unfold);
        command.Options.Add(stopLine);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        bool asksOfAFailure = call.GetValue(failure.Failed)!.Length + call.GetValue(failure.Found)!.Length > 0 || call.GetValue(failure.FindingsFile) is not null;
        if (!asksOfAFailure)
        {
            if (call.GetValue(failure.Debris)!.Length + call.GetValue(failure.Clean)!.Length > 0)
                throw new WrongUseException("nothing has failed and nothing was found, so there is nothing to mark. Add --failed PART, or leave --debris and --clean out.");
            if (call.GetValue(stopLine))
                throw new WrongUseException("without a failure or a find there is no stop line. Add --failed PART and --debris, or leave --stop-line out.");
            if (loading.Standard(call.GetValue(failure.Standard)) is not { } rules || loading.Family(call.GetValue(failure.Family)!, rules) is not { } read)
                return ExitCode.WrongUse;
            return Draw(call, read, [], [], []);
        }

        if (loading.Read(call, failure) is not { } question)
            return ExitCode.WrongUse;
        if (call.GetValue(stopLine))
            TypedFailures.MustShed(question.Debris, "there is nothing to look for");
        loading.Note(question);
        ImmutableArray<DebrisSpread> spreads =
        [
            .. question.Debris.Select(debris => Spreading.Of(new SpreadQuestion(question.Family, question.Failures, debris)
            {
                Findings = question.Findings,
                AcceptsCleanFindings = question.Standard.CleanFindings != CleanFindings.Never,
            })),
        ];
        return Draw(call, question.Family, spreads, question.Failures.PartsOf(), call.GetValue(stopLine) ? LooksOf(question) : []);
    }

    private ImmutableArray<PartId> LooksOf(FailureQuestion question)
    {
        StopLine line = StopLineFinder.Of(new StopLineQuestion(question.Family, question.Standard, question.Failures, question.Debris) { Findings = question.Findings });
        if (line.Looks.IsEmpty)
            shell.Error.Write("contam: no stop line is marked, for looking saves nothing here. contam stop-line says why.\n");
        return [.. line.Looks.Select(look => look.Part)];
    }

    private int Draw(ParseResult call, Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, ImmutableArray<PartId> looks)
    {
        var options = new PictureOptions { Unfold = call.GetValue(unfold), StopLine = looks };
        switch (call.GetValue(format))
        {
            case "mermaid":
                Mermaid.Write(family, spreads, failed, looks, shell.Out);
                break;
            case "dot":
                CircuitDot.Write(family, spreads, failed, options, shell.Out);
                break;
            case "html":
                CircuitHtml.Write(family, spreads, failed, options, new MarkupWriter(shell.Out));
                break;
            default:
                CircuitSvg.Write(family, spreads, failed, options, new MarkupWriter(shell.Out));
                break;
        }

        return ExitCode.Yes;
    }
}
