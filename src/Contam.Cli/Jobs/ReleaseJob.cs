using System.CommandLine;
using Contam.Jobs;
using Contam.Jobs.Reports;
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
        JobAnswer answer = book.Release(shop.IdOf(call, book), shop.Signed(call));
        if (answer.Refusal is not NotComplete { Missing: var missing })
        {
            if (answer.Refusal is not null)
                return shop.Tell(answer, _ => "");
            shop.Keep(answer);
            shop.Shell.Out.Write(ReleaseSheet.Shown(answer.Sheet!, CommonOptions.LookOf(call, shop.Shell)));
            return ExitCode.Yes;
        }

        var page = new TextPage(shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        page.Subheading(FormattableString.Invariant($"Not released: {missing.Length} {(missing.Length == 1 ? "thing is" : "things are")} missing. The engine may not be run."));
        JobText.WriteMissing(page, missing);
        return ExitCode.No;
    });
}
