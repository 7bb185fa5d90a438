using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job export</c> and <c>import</c>: a job as one JSON document.</summary>
internal sealed class CarryJobs(JobShop shop, Loading loading)
{
    private readonly Argument<string> file = new("FILE") { Description = "an export" };

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
            Takes an export in. The job is the same as where it came from, entry by entry; one that was changed is refused.

            Example:
              contam job import job.json
            """,
            Import);
        import.Arguments.Add(file);
        yield return import;
    }

    private int Export(ParseResult call) => shop.Use(call, book =>
    {
        string id = shop.IdOf(call, book);
        try
        {
            JobRecord job = book.Read(id);
            ImmutableArray<Missing> missing = ReleaseGate.Missing(job.State, KeptSystem.Of(book, job.State.Opened).Family);
            shop.Shell.Out.Write(JobJson.Export(book, job, missing));
            return ExitCode.Yes;
        }
        catch (ShopException damaged) when (damaged.Fault == ShopFault.Damaged)
        {
            shop.Shell.Error.Write($"contam: {Contam.Reports.Text.TextPage.Harmless(damaged.Message)} The export holds what can be read.\n");
            shop.Shell.Out.Write(JobJson.ExportDamaged(book, book.Find(id)));
            return ExitCode.No;
        }
    });

    private int Import(ParseResult call)
    {
        string name = call.GetValue(file)!;
        string text;
        try
        {
            text = File.ReadAllText(name);
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new WrongUseException($"{Contam.Reports.Text.TextPage.Harmless(name)} cannot be read. Check the name and the folder.");
        }

        return shop.Use(
            call,
            book =>
            {
                try
                {
                    (string id, bool isNew) = JobJson.Import(book, text, loading.Limits);
                    shop.Say(isNew ? $"Job {id} is taken in." : $"Job {id} is here already, with the same entries. Nothing is changed.");
                    return ExitCode.Yes;
                }
                catch (Exception wrong) when (wrong is JsonException or InvalidOperationException or FormatException)
                {
                    throw new WrongUseException($"{Contam.Reports.Text.TextPage.Harmless(name)} is not taken in: {Contam.Reports.Text.TextPage.Harmless(wrong.Message)}. Ask for a fresh export.");
                }
            },
            mayCreate: true);
    }
}
