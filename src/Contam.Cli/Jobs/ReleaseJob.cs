using System.CommandLine;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Reports;
using Contam.Jobs.Work;
using Contam.Reports.Text;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job release</c>: may the engine be run again?</summary>
internal sealed class ReleaseJob(JobShop shop)
{
    public IEnumerable<Command> Build()
    {
        yield return shop.WritingCommand(
            "release",
            """
            May the engine be run again? Refused with 1 while anything is open, and says what is missing and what to do. When all is there the release
            sheet is printed and kept, and what is due after the first run may be ticked.

            Example:
              contam job release --by Ada > release.md
            """,
            Run);
    }

    private int Run(ParseResult call) => shop.Use(call, book =>
    {
        string id = shop.IdOf(call, book);
        Family family = KeptSystem.Of(book, book.Read(id).State.Opened).Family;
        IReadOnlyList<Missing> missing = [];
        string sheet = "";
        JobRecord? after = book.Add(id, job =>
        {
            missing = ReleaseGate.Missing(job.State, family);
            if (missing.Count > 0)
                return null;
            if (job.State.ReleasedAt is { } at)
            {
                sheet = book.Text(((Released)job.Bodies[(int)at - 1]).Sheet);
                return null;
            }

            string by = shop.ByOf(call, job.State.Opened.Technician);
            DateTimeOffset now = shop.Now;
            sheet = ReleaseSheet.Write(job, by, now);
            return new Decision([new Released { At = now, By = by, Sheet = EntryChain.Sha256(sheet) }], [sheet]);
        });
        if (missing.Count == 0)
        {
            shop.Shell.Out.Write(ReleaseSheet.Shown(sheet, CommonOptions.LookOf(call, shop.Shell)));
            return ExitCode.Yes;
        }

        var page = new TextPage(shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        page.Subheading(FormattableString.Invariant($"Not released: {missing.Count} {(missing.Count == 1 ? "thing is" : "things are")} missing. The engine may not be run."));
        JobText.WriteMissing(page, missing);
        return ExitCode.No;
    });
}
