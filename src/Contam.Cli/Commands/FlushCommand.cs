using System.CommandLine;
using Contam.Measurement.Flushing;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam flush</c>: whether a flush scours, how much must go through, how long.</summary>
internal sealed class FlushCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FlushArguments arguments = new();
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "flush",
            """
            Whether a flush is fast enough to carry anything: flow, speed, Reynolds number and pressure loss in every bore of a circuit;
            what would mend the bores that stay below the wanted number; how much must go through, and how long through a filter.
            Without --flow it says the least flow that is enough in every bore. With --flow it ends with 1 where some bore stays below.

            Examples:
              contam flush systems/families/harbour-diesel-i4.yaml --circuit oil --temperature 55C --flow 40L/min
              contam flush systems/families/harbour-diesel-i4.yaml --circuit fuel --dilution 1%
              contam flush systems/families/harbour-diesel-i4.yaml --circuit oil --flow 40L/min --beta 200 --from-code 22/20/17 --to-code 18/16/13
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
        CircuitFlush flush = new FlushSums(call, arguments, family).Answer();
        if (call.GetValue(format) == "json")
            shell.Out.Write(FlushJson.Write(flush, family));
        else
            FlushText.Write(flush, family, shell.Out, CommonOptions.LookOf(call, shell));
        return flush.Answer.IsEnough ? ExitCode.Yes : ExitCode.No;
    }
}
