using System.CommandLine;
using Contam.Jobs.Documents;
using Contam.Jobs.History;
using Contam.Jobs.Reports;
using Contam.Jobs.Stores;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job history</c>: how often debris was found at a part, over all jobs.</summary>
internal sealed class AskHistory(JobShop shop)
{
    private readonly Option<string> part = new("--part") { Description = "the part", HelpName = "PART", Required = true };
    private readonly Option<string?> family = new("--family") { Description = "only jobs of this family, by its id", HelpName = "ID" };
    private readonly Option<string?> debris = new("--debris") { Description = "only looks for this debris", HelpName = "DEBRIS" };
    private readonly Option<string?> failed = new("--failed") { Description = "only jobs in which this part had failed", HelpName = "PART" };
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public IEnumerable<Command> Build()
    {
        Command command = shop.Command(
            "history",
            """
            How often debris was looked for at a part and found there, over all jobs. The first look in each job counts, where the failed part could send
            debris at full size. contam suspects, stop-line and trace weigh looks by these counts with --use-history.

            Example:
              contam job history --part upper-plug --family outboard-gearcase --debris metal --failed pinion
            """,
            Run);
        foreach (Option option in new Option[] { part, family, debris, failed, format })
            command.Options.Add(option);
        yield return command;
    }

    private int Run(ParseResult call) => shop.Use(call, book =>
    {
        HistoryAnswer answer = HistoryAnswer.Of(book, call.GetValue(part)!.Trim() is { Length: > 0 } named ? named : throw new WrongUseException("--part is empty. Name a part."), call.GetValue(family), call.GetValue(debris), call.GetValue(failed));
        if (call.GetValue(format) == "json")
            shop.Shell.Out.Write(HistoryJson.Write(answer));
        else
            HistoryText.Write(answer, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        return ExitCode.Yes;
    }, ShopUse.Read);
}
