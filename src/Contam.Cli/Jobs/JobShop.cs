using System.CommandLine;
using System.Globalization;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Stores;

namespace Contam.Cli.Jobs;

/// <summary>What every job command needs: the shop's book, the job that is meant, who writes and when, and how a refusal is told.</summary>
internal sealed class JobShop(Shell shell, OpenShops shops)
{
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

    /// <summary>The shop that a call names.</summary>
    public string PlaceOf(ParseResult call) => PlaceOf(shell, call.GetValue(shop));

    /// <summary>Does something with the shop's book.</summary>
    public int Use(ParseResult call, Func<JobBook, int> work, ShopUse use = ShopUse.Write)
    {
        using JobBook book = shops.Open(PlaceOf(call), use);
        return work(book);
    }

    public string IdOf(ParseResult call, JobBook book) => book.Find(call.GetValue(job) ?? shell.Setting("CONTAM_JOB")).Id;

    public JobRecord JobOf(ParseResult call, JobBook book) => book.Read(IdOf(call, book));

    /// <summary>Who writes, and when.</summary>
    public Signature Signed(ParseResult call) => new(Now, call.GetValue(by) ?? shell.Setting("CONTAM_BY"));

    /// <summary>Tells what came of it: what is said where it is written, else the refusal.</summary>
    /// <exception cref="WrongUseException">What was typed cannot be meant.</exception>
    public int Tell(JobAnswer answer, Func<JobAnswer, string> said)
    {
        Keep(answer);
        if (answer.Refusal is { } refusal)
        {
            RefuseWrongUse(refusal);
            Say(RefusalWords.Of(refusal));
            return ExitCode.No;
        }

        Say(said(answer));
        foreach (ReopenedStep one in answer.Reopened)
            Say($"So is step {Number(one.Step.Number)}: {one.Because}.");
        if (!answer.Withdrawn.IsEmpty)
            Say($"The release is taken back; the engine may not be run: {string.Join("; ", answer.Withdrawn.Take(5).Select(missing => missing.Text))}{(answer.Withdrawn.Length > 5 ? "; …" : "")}.");
        return ExitCode.Yes;
    }

    /// <summary>Tells what a check of a shop's record came to.</summary>
    /// <param name="result">What it came to.</param>
    /// <param name="whole">What is said where nothing is wrong, as a clause.</param>
    public int Tell(ShopCheckResult result, string whole)
    {
        foreach (string one in result.Wrong)
            Say(one + ".");
        string seen = FormattableString.Invariant($"{result.Jobs} {(result.Jobs == 1 ? "job" : "jobs")}, {result.Entries} {(result.Entries == 1 ? "entry" : "entries")} and {result.Triggers} {(result.Triggers == 1 ? "trigger" : "triggers")}");
        Say(result.Wrong.IsEmpty ? $"{whole}: {seen}." : $"Seen: {seen}.");
        return result.Wrong.IsEmpty ? ExitCode.Yes : ExitCode.No;
    }

    /// <summary>Remembers what is written, in case it cannot be told.</summary>
    public void Keep(JobAnswer answer)
    {
        if (answer.Sequence > 0)
            shell.Recorded.Entry = answer.Sequence;
    }

    public static void RefuseWrongUse(Refusal refusal)
    {
        if (RefusalWords.IsWrongUse(refusal))
            throw new WrongUseException(RefusalWords.Of(refusal));
    }

    public void Say(string line) => shell.Out.Write(Reports.Text.TextPage.Harmless(line) + "\n");

    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    public static Option<string?> ShopOption() => new("--shop") { Description = "the shop's file, or postgres://USER@HOST/DATABASE (default: CONTAM_SHOP, else a file in your data folder)", HelpName = "SHOP" };

    /// <summary>Where the shop is, given what was typed.</summary>
    public static string PlaceOf(Shell shell, string? typed) =>
        typed ?? (shell.Setting("CONTAM_SHOP") is { Length: > 0 } set ? set : DataFolder.ShopFile(shell.Setting));
}
