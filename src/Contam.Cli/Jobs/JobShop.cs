using System.CommandLine;
using Contam.Jobs;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Cli.Jobs;

/// <summary>What every job command needs: the shop's book, the job that is meant, who writes and when.</summary>
internal sealed class JobShop(Shell shell)
{
    private const int LongestText = 10_000;

    private readonly Option<string?> shop = ShopOption();
    private readonly Option<string?> job = new("--job") { Description = "the job, by its id or the beginning of it (default: CONTAM_JOB, else the only one that is open)", HelpName = "ID" };
    private readonly Option<string?> by = new("--by") { Description = "who does it (default: CONTAM_BY, else who is in charge of the job)", HelpName = "NAME" };

    public Shell Shell => shell;

    public DateTimeOffset Now => shell.Clock.GetLocalNow();

    /// <summary>A subcommand about the shop as a whole.</summary>
    public Command Command(string name, string description, Func<ParseResult, int> run)
    {
        var command = new Command(name, description);
        command.Options.Add(shop);
        command.SetAction(run);
        return command;
    }

    /// <summary>A subcommand about one job.</summary>
    public Command JobCommand(string name, string description, Func<ParseResult, int> run)
    {
        Command command = Command(name, description, run);
        command.Options.Add(job);
        return command;
    }

    /// <summary>A subcommand that writes to one job.</summary>
    public Command WritingCommand(string name, string description, Func<ParseResult, int> run)
    {
        Command command = JobCommand(name, description, run);
        command.Options.Add(by);
        return command;
    }

    /// <summary>Does something with the shop's book.</summary>
    public int Use(ParseResult call, Func<JobBook, int> work, bool mayCreate = false)
    {
        using IJobStore store = Shops.Open(PlaceOf(shell, call.GetValue(shop)), mayCreate);
        return work(new JobBook(store));
    }

    public string IdOf(ParseResult call, JobBook book) => book.Find(call.GetValue(job) ?? shell.Setting("CONTAM_JOB")).Id;

    public JobRecord JobOf(ParseResult call, JobBook book) => book.Read(IdOf(call, book));

    /// <summary>Who writes an entry.</summary>
    public string ByOf(ParseResult call, string inCharge) => Text("--by", call.GetValue(by) ?? shell.Setting("CONTAM_BY") ?? inCharge);

    /// <summary>Adds one entry or several, made from the job as it stands.</summary>
    public JobRecord? Add(ParseResult call, JobBook book, Func<JobRecord, Decision?> decide) => book.Add(IdOf(call, book), decide);

    /// <summary>A text for the record: something, not too long, without signs that a terminal would obey.</summary>
    public static string Text(string what, string? typed)
    {
        if (string.IsNullOrWhiteSpace(typed))
            throw new WrongUseException($"{what} is empty. Write something there.");
        if (typed.Length > LongestText)
            throw new WrongUseException(FormattableString.Invariant($"{what} is longer than {LongestText} characters. Write less, or in several entries."));
        return Reports.Text.TextPage.Harmless(typed.Trim());
    }

    /// <summary>The step that a person names by its number.</summary>
    public static WorkStep StepOf(JobRecord record, int number) => record.State.Steps.Find(number)
        ?? throw new WrongUseException(FormattableString.Invariant($"there is no step {number}: this job has steps 1 to {record.State.Steps.All.Length}. contam job show lists them."));

    public void Say(string line) => shell.Out.Write(Reports.Text.TextPage.Harmless(line) + "\n");

    public static Option<string?> ShopOption() => new("--shop") { Description = "the shop's file, or postgres://USER@HOST/DATABASE (default: CONTAM_SHOP, else a file in your data folder)", HelpName = "SHOP" };

    /// <summary>Where the shop is, given what was typed.</summary>
    public static string PlaceOf(Shell shell, string? typed) =>
        typed ?? (shell.Setting("CONTAM_SHOP") is { Length: > 0 } set ? set : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "contam", "shop.db"));
}
