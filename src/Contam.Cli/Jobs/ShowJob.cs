using System.CommandLine;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Reports;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job list</c>, <c>show</c>, <c>next</c>, <c>check</c>: what is in the book.</summary>
internal sealed class ShowJob(JobShop shop)
{
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    private readonly Option<bool> open = new("--open") { Description = "only jobs that are not released" };
    private readonly Option<string?> engine = new("--engine") { Description = "only jobs whose engine has this in its words", HelpName = "TEXT" };
    private readonly Option<string?> customer = new("--customer") { Description = "only jobs whose customer has this in the name", HelpName = "TEXT" };

    public IEnumerable<Command> Build()
    {
        Command list = shop.Command(
            "list",
            """
            Every job, the one last written to first: id, state, steps done, whose engine, what failed.

            Examples:
              contam job list
              contam job list --open --customer "quay 4"
            """,
            call => shop.Use(call, book =>
            {
                JobText.WriteList([.. book.List().Where(job => IsWanted(call, job))], book.Place, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell), isNarrowed: call.GetValue(open) || call.GetValue(engine) is not null || call.GetValue(customer) is not null);
                return ExitCode.Yes;
            }, ShopUse.Read));
        foreach (Option option in new Option[] { open, engine, customer })
            list.Options.Add(option);
        yield return list;
        Command show = shop.JobCommand(
            "show",
            """
            How a job stands: steps, what was seen and measured, what stands between the engine and its first start.

            Example:
              contam job show --job 3f2a
            """,
            call => shop.Use(call, book =>
            {
                JobRecord job = shop.JobOf(call, book);
                var missing = book.Missing(job);
                if (call.GetValue(format) == "json")
                    shop.Shell.Out.Write(JobJson.Show(job, missing));
                else
                    JobText.WriteJob(job, missing, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
                return ExitCode.Yes;
            }, ShopUse.Read));
        show.Options.Add(format);
        yield return show;
        yield return shop.JobCommand(
            "next",
            """
            What can be done now and by whom, what is away, and what waits for what.

            Example:
              contam job next
            """,
            call => shop.Use(call, book =>
            {
                JobText.WriteNext(shop.JobOf(call, book), shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
                return ExitCode.Yes;
            }, ShopUse.Read));
        yield return shop.Command(
            "check",
            """
            Is the shop's record whole? The file, every chain of entries, every kept text, every release. Says what it saw, and names what is missing. Ends
            with 1 where something is not as it was written.

            Example:
              contam job check
            """,
            call => shop.Use(call, book => shop.Tell(ShopCheck.Of(book), "Everything is as it was written"), ShopUse.Read));
    }

    private bool IsWanted(ParseResult call, JobSummary job) =>
        (!call.GetValue(open) || job.State == "open") && Has(job.Engine, call.GetValue(engine)) && Has(job.Customer, call.GetValue(customer));

    private static bool Has(string words, string? wanted) => wanted is null || words.Contains(wanted, StringComparison.OrdinalIgnoreCase);
}
