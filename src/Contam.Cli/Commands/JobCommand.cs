using System.CommandLine;
using Contam.Cli.Jobs;

namespace Contam.Cli.Commands;

/// <summary><c>contam job</c>: the record of a clean-out.</summary>
internal sealed class JobCommand(Shell shell, Loading loading, OpenShops shops) : ICommandSource
{
    public Command Build()
    {
        var command = new Command(
            "job",
            """
            The record of a clean-out, from the plan to the release. Entries are only ever added.

            Examples:
              contam job open systems/families/outboard-gearcase.yaml --failed pinion --debris metal --customer "Quay 4" --engine "port gearcase" --technician Ada
              contam job next
              contam job tick 1 --by Ada --minutes 10
            """);
        var shop = new JobShop(shell, shops);
        var again = new PlanAgain(shop);
        foreach (IEnumerable<Command> commands in new[] { new OpenJob(shop, loading).Build(), new ShowJob(shop).Build(), new TickSteps(shop).Build(), new WriteEntries(shop).Build(), new MeasureLimit(shop).Build(), again.Build(), new DecideLook(shop, again).Build(), new ReleaseJob(shop).Build(), new CarryJobs(shop, loading).Build(), new CopyShop(shop).Build(), new AskHistory(shop).Build() })
        {
            foreach (Command one in commands)
                command.Subcommands.Add(one);
        }

        return command;
    }
}
