using System.CommandLine;
using Contam.Cli.Commands;
using Contam.Families;
using Contam.Jobs;
using Contam.Measurement;
using Contam.Measurement.Gauging;
using Contam.Reports.Text;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job measure</c>: readings held against a limit of the job's own family, and written down with the verdict.</summary>
internal sealed class MeasureLimit(JobShop shop)
{
    private readonly GaugeArguments arguments = new();

    public IEnumerable<Command> Build()
    {
        Command command = shop.WritingCommand(
            "measure",
            """
            Readings held against a limit of the family that the job keeps, and written down with the verdict. Ends with 1 for reject and undecided.

            Example:
              contam job measure gearcase-pressure-hold 10psi 9.8psi --minutes 10
            """,
            Run);
        arguments.AddWithoutFamilyTo(command);
        yield return command;
    }

    private int Run(ParseResult call) => shop.Use(call, book =>
    {
        JobRecord job = shop.JobOf(call, book);
        Family family = book.SystemOf(job).Family;
        Limit limit = GaugeCommand.LimitOf(family, call.GetValue(arguments.Limit));
        GaugeAnswer answer = new GaugeQuestion(call, arguments, family, limit).Answer();
        JobAnswer written = book.Measure(job.Id, answer, [.. call.GetValue(arguments.Readings)!], shop.Signed(call));
        if (written.Refusal is not null)
            return shop.Tell(written, _ => "");
        shop.Keep(written);
        GaugeText.Write(answer, family, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        if (!written.Withdrawn.IsEmpty)
            shop.Say("The release is taken back; the engine may not be run.");
        return answer.Judgement.Verdict is Verdict.Good or Verdict.Marginal ? ExitCode.Yes : ExitCode.No;
    });
}
