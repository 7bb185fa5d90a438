using System.CommandLine;
using Contam.Cli.Commands;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
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
        Family family = KeptSystem.Of(book, job.State.Opened).Family;
        Limit limit = GaugeCommand.LimitOf(family, call.GetValue(arguments.Limit));
        GaugeAnswer answer = new GaugeQuestion(call, arguments, family, limit).Answer();
        Verdict verdict = answer.Judgement.Verdict;
        book.Add(job.Id, now => Decision.Of(new Measured
        {
            At = shop.Now,
            By = shop.ByOf(call, now.State.Opened.Technician),
            Limit = limit.Id,
            Part = limit.Part.Value,
            Readings = [.. call.GetValue(arguments.Readings)!],
            Verdict = verdict.ToString().ToLowerInvariant(),
            Because = answer.Judgement.Because,
        }));
        GaugeText.Write(answer, family, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        return verdict is Verdict.Good or Verdict.Marginal ? ExitCode.Yes : ExitCode.No;
    });
}
