using System.CommandLine;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Reports;
using Contam.Jobs.Work;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job list</c>, <c>show</c>, <c>next</c>, <c>check</c>: what is in the book.</summary>
internal sealed class ShowJob(JobShop shop)
{
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public IEnumerable<Command> Build()
    {
        yield return shop.Command(
            "list",
            """
            Every job: id, state, steps done, whose engine, what failed.

            Example:
              contam job list
            """,
            call => shop.Use(call, book =>
            {
                JobText.WriteList(book.Store.List(), shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
                return ExitCode.Yes;
            }));
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
                var missing = ReleaseGate.Missing(job.State, KeptSystem.Of(book, job.State.Opened).Family);
                if (call.GetValue(format) == "json")
                    shop.Shell.Out.Write(JobJson.Show(job, missing));
                else
                    JobText.WriteJob(job, missing, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
                return ExitCode.Yes;
            }));
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
            }));
        yield return shop.Command(
            "check",
            """
            Is the shop's record whole? The file, every chain of entries, every kept text. Ends with 1 where something is not as it was written.

            Example:
              contam job check
            """,
            call => shop.Use(call, book =>
            {
                var wrong = ShopCheck.Of(book);
                foreach (string one in wrong)
                    shop.Say(one + ".");
                if (wrong.IsEmpty)
                    shop.Say("Everything is as it was written.");
                return wrong.IsEmpty ? ExitCode.Yes : ExitCode.No;
            }));
    }
}
