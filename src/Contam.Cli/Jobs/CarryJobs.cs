using System.CommandLine;
using System.Text.Json;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Stores;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job export</c> and <c>import</c>: a job as one JSON document.</summary>
internal sealed class CarryJobs(JobShop shop, Loading loading)
{
    private readonly Argument<string> file = new("FILE") { Description = "an export" };
    private readonly ConfirmFindings confirm = new(shop);

    public IEnumerable<Command> Build()
    {
        yield return shop.JobCommand(
            "export",
            """
            A job with its whole record as one JSON document. Of a damaged job it saves what can be read, and ends with 1.

            Example:
              contam job export --job 3f2a > job.json
            """,
            Export);
        Command import = shop.Command(
            "import",
            """
            Takes an export in. The job is the same as where it came from, entry by entry. Every plan in it is made again, and every entry must be one that
            the rules give; an export that was changed, cut off or made up is refused. For each clean finding in it somebody here must stand.

            Example:
              contam job import job.json
            """,
            Import);
        import.Arguments.Add(file);
        import.Options.Add(confirm.Option);
        yield return import;
    }

    private int Export(ParseResult call) => shop.Use(call, book =>
    {
        string id = shop.IdOf(call, book);
        try
        {
            JobRecord job = book.Read(id);
            shop.Shell.Out.Write(JobJson.Export(book, job, book.Missing(job)));
            return ExitCode.Yes;
        }
        catch (ShopException damaged) when (damaged.Fault == ShopFault.Damaged)
        {
            shop.Shell.Error.Write($"contam: {Contam.Reports.Text.TextPage.Harmless(damaged.Message)} The export holds what can be read.\n");
            shop.Shell.Out.Write(JobJson.ExportDamaged(book, book.Find(id)));
            return ExitCode.No;
        }
    }, ShopUse.Read);

    private int Import(ParseResult call)
    {
        string name = call.GetValue(file)!;
        string text = InputFile.ReadText(name);
        return shop.Use(
            call,
            book =>
            {
                try
                {
                    var signature = new Signature(shop.Now, shop.Shell.Setting("CONTAM_BY") ?? "who took it in");
                    (string id, bool isNew, NotConfirmed? refusal) = JobJson.Import(book, text, loading.Limits, signature, findings => confirm.Ask(call, findings));
                    if (refusal is not null)
                    {
                        shop.Shell.Error.Write($"contam: {Contam.Reports.Text.TextPage.Harmless(name)} is not taken in: {RefusalWords.Of(refusal)}\n");
                        return ExitCode.No;
                    }

                    shop.Say(isNew ? $"Job {id} is taken in." : $"Job {id} is here already, with the same entries. Nothing is changed.");
                    return ExitCode.Yes;
                }
                catch (Exception wrong) when (wrong is JsonException or InvalidOperationException or FormatException)
                {
                    throw new WrongUseException($"{Contam.Reports.Text.TextPage.Harmless(name)} is not taken in: {JsonWords.Of(wrong)}. Ask for a fresh export.");
                }
            },
            ShopUse.Create);
    }
}
