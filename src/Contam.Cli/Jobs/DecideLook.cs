using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job look</c>: what a look that decides showed, and with it that it is made.</summary>
internal sealed class DecideLook(JobShop shop, PlanAgain again)
{
    private readonly Argument<string> letter = new("LOOK") { Description = "the letter of the look, such as A" };
    private readonly Option<bool> clean = new("--clean") { Description = "every place of it was seen, and is clean of all debris of the look" };
    private readonly Option<string[]> found = FailureArguments.ListOption("--found", "DEBRIS[:SIZE][,LOOKS]", "debris was found", splits: false);
    private readonly Option<string?> at = new("--at") { Description = "where, if the look has several places", HelpName = "PART" };
    private readonly Option<bool> inDoubt = new("--in-doubt") { Description = "it could not be made, or leaves a doubt: what hangs on it is done" };
    private readonly Option<bool> isAgain = new("--again") { Description = "this takes the place of what was said before; a find is not taken back" };
    private readonly Option<string?> minutes = new("--minutes") { Description = "minutes worked", HelpName = "MINUTES" };
    private readonly Option<string?> note = new("--note") { Description = "what is to be said about it", HelpName = "TEXT" };
    private readonly Option<string?> anyway = new("--anyway") { Description = "it was made although another step comes first; the reason goes on the release sheet", HelpName = "REASON" };

    public IEnumerable<Command> Build()
    {
        Command command = shop.WritingCommand(
            "look",
            """
            A look that decides was made: clean at every place, or something was found. Its step is done with it; steps that hang on it are struck, or are to
            be done. A find that the plan does not reckon with asks for a new plan, as contam job found does. Ends with 1 where it is refused.

            Examples:
              contam job look A --clean --by Ada
              contam job look B --found metal:300um --at return-screen-1
            """,
            Run);
        command.Arguments.Add(letter);
        foreach (Option option in new Option[] { clean, found, at, inDoubt, isAgain, minutes, note, anyway, again.Yes })
            command.Options.Add(option);
        yield return command;
    }

    private int Run(ParseResult call) => shop.Use(call, book =>
    {
        string[] finds = call.GetValue(found)!;
        bool isClean = call.GetValue(clean), isDoubt = call.GetValue(inDoubt);
        if ((isClean ? 1 : 0) + (isDoubt ? 1 : 0) + (finds.Length > 0 ? 1 : 0) != 1)
            throw new WrongUseException("one outcome was expected: --clean, --found DEBRIS or --in-doubt. A look with a find is not clean, whatever its other places show.");
        if (finds.Length == 0 && call.GetValue(at) is not null)
            throw new WrongUseException("--at says where something was found. Add --found, or leave it out; a clean look is clean at every place.");
        JobRecord job = shop.JobOf(call, book);
        string look = call.GetValue(letter)!.Trim().ToUpperInvariant();
        ImmutableArray<Finding> findings = finds.Length == 0 ? [] : FindingsOf(call, book, job, look, finds);
        LookOutcome outcome = isClean ? LookOutcome.Clean : isDoubt ? LookOutcome.InDoubt : LookOutcome.Found;
        var words = new TickWords { Minutes = call.GetValue(minutes) is { } typed ? Typed.Minutes("--minutes", typed).TotalMinutes : null, Note = call.GetValue(note), Anyway = call.GetValue(anyway) };
        JobAnswer answer = book.Decide(job.Id, look, outcome, findings, call.GetValue(isAgain), shop.Signed(call), words);
        int exit = shop.Tell(answer, Said);
        return exit == ExitCode.Yes && answer.After!.HasUnplannedFinds ? again.Replan(call, book, job.Id) : exit;

        string Said(JobAnswer written)
        {
            string came = isClean ? "clean" : isDoubt ? "in doubt, and counts as found" : "found";
            return string.Join(' ', [FormattableString.Invariant($"Look {look}: {came} (entry {written.Sequence}). {written.After!.Struck} steps are struck."), .. written.After.Disproved]);
        }
    });

    private ImmutableArray<Finding> FindingsOf(ParseResult call, JobBook book, JobRecord job, string look, string[] finds)
    {
        KeptSystem kept = book.SystemOf(job);
        ImmutableArray<string> places = job.Plan.Looks.FirstOrDefault(one => one.Id == look)?.Places ?? [];
        string place = call.GetValue(at) ?? (places.Length > 1
            ? throw new WrongUseException($"look {look} has several places. Say with --at where {TextPage.Harmless(finds[0])} was found: {string.Join(", ", places)}.")
            : places.FirstOrDefault() ?? job.Plan.Family.Id);
        var names = new QuestionNames(kept.Family, kept.Standard.CatalogueOf());
        return places.IsEmpty ? [] : [.. finds.Select(one => names.Found($"{place}={one}"))];
    }
}
