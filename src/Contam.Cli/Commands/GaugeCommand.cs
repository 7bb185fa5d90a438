using System.CommandLine;
using Contam.Families;
using Contam.Measurement;
using Contam.Measurement.Gauging;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam gauge</c>: readings held against a limit.</summary>
internal sealed class GaugeCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly GaugeArguments arguments = new();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "gauge",
            """
            Good, marginal or reject: readings held against a limit of the family, with the figures behind the verdict.
            What is read depends on what the limit measures:
              run-out         readings round a turn, evenly spread, or with places: 12:0.02mm 3:0.05mm, or 90deg:0.02mm
              clearance       one or more readings; the worst decides
              pressure-drop, vacuum-drop   the gauge at the start and at the end, and --minutes
              cleanliness     a code 19/16/13, or three counts 3000/mL 500/mL 7/mL, or three counts and --counted-in
              water-content   one share, 250ppm
              flow-balance    what each injector delivers, as volumes or flows
            Ends with 0 for good and marginal, 1 for reject and undecided.

            Examples:
              contam gauge systems/families/outboard-gearcase.yaml propeller-shaft-run-out 12:0thou 3:2thou 6:5thou 9:3thou
              contam gauge systems/families/outboard-gearcase.yaml gearcase-pressure-hold 0.70bar 0.68bar --minutes 10 --water-got-in
              contam gauge systems/families/harbour-diesel-i4.yaml oil-cleanliness 3000/mL 500/mL 70/mL
            """);
        arguments.AddTo(command);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Standard(call.GetValue(arguments.Standard)) is not { } rules || loading.Family(call.GetValue(arguments.Family)!, rules) is not { } family)
            return ExitCode.WrongUse;
        GaugeAnswer answer = new GaugeQuestion(call, arguments, family, LimitOf(family, call.GetValue(arguments.Limit))).Answer();
        if (call.GetValue(format) == "json")
            shell.Out.Write(GaugeJson.Write(answer, family));
        else
            GaugeText.Write(answer, family, shell.Out, CommonOptions.LookOf(call, shell));
        return answer.Judgement.Verdict is Verdict.Good or Verdict.Marginal ? ExitCode.Yes : ExitCode.No;
    }

    internal static Limit LimitOf(Family family, string? id)
    {
        if (family.Limits.FirstOrDefault(limit => limit.Id == id) is { } found)
            return found;
        string all = family.Limits.IsEmpty ? $"{family.Id} has no limits." : $"{family.Id} has {string.Join(", ", family.Limits.Select(limit => limit.Id))}.";
        if (id is null)
            throw new WrongUseException($"no limit is named. {all}");
        string[] near = [.. NearName.AllOf(id, family.Limits.Select(limit => limit.Id), most: 3)];
        string meant = near.Length == 0 ? "" : $" Did you mean {string.Join(" or ", near)}?";
        throw new WrongUseException($"there is no limit {TextPage.Harmless(id)}.{meant} {all}");
    }
}
