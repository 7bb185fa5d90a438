using System.CommandLine;
using System.Globalization;
using Contam.Jobs;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job tick</c> and <c>untick</c>.</summary>
internal sealed class TickSteps(JobShop shop)
{
    private readonly Argument<string[]> numbers = new("N") { Description = "the number of the step, or of several; - for every line of standard input", Arity = ArgumentArity.OneOrMore };
    private readonly Argument<int> number = new("N") { Description = "the number of the step" };
    private readonly Option<string?> minutes = new("--minutes") { Description = "minutes worked", HelpName = "MINUTES" };
    private readonly Option<string?> note = new("--note") { Description = "what is to be said about it", HelpName = "TEXT" };
    private readonly Option<string?> anyway = new("--anyway") { Description = "tick it although another step comes first; the reason goes on the release sheet. It excuses waiting, nothing else", HelpName = "REASON" };
    private readonly Option<string> because = new("--because") { Description = "why it was not done after all", HelpName = "TEXT", Required = true };

    public IEnumerable<Command> Build()
    {
        Command tick = shop.WritingCommand(
            "tick",
            """
            A step is done. Out of turn it is refused, and the step that comes first is named. Ends with 1 where it is refused. Of several steps the first
            that is refused ends it; those before it are done.

            Examples:
              contam job tick 12 --by Ada --minutes 25 --note "both plugs drawn"
              contam job tick 13 14 15 --by Bo
            """,
            Tick);
        tick.Arguments.Add(numbers);
        foreach (Option option in new Option[] { minutes, note, anyway })
            tick.Options.Add(option);
        yield return tick;
        Command untick = shop.WritingCommand(
            "untick",
            """
            A step is open again. What was put back or proved on the strength of it opens with it.

            Example:
              contam job untick 12 --because "one plug was forgotten"
            """,
            Untick);
        untick.Arguments.Add(number);
        untick.Options.Add(because);
        yield return untick;
    }

    private int Tick(ParseResult call) => shop.Use(call, book =>
    {
        string[] typed = call.GetValue(numbers)!;
        if (typed.Length > 1 && (call.GetValue(minutes) ?? call.GetValue(note) ?? call.GetValue(anyway)) is not null)
            throw new WrongUseException("--minutes, --note and --anyway are said of one step. Tick that one alone.");
        string id = shop.IdOf(call, book);
        IEnumerable<string> asked = typed is ["-"] ? Lines() : typed;
        foreach (string one in asked)
        {
            if (!int.TryParse(one, NumberStyles.None, CultureInfo.InvariantCulture, out int step))
                throw new WrongUseException($"{Problems.Wording.Quoted(one)} is no number of a step. contam job show lists them.");
            if (Tick(call, book, id, step) is var exit && exit != ExitCode.Yes)
                return exit;
            // Whoever reads this must be able to rely on it at once.
            shop.Shell.Out.Flush();
        }

        return ExitCode.Yes;
    });

    private IEnumerable<string> Lines()
    {
        while (shop.Shell.In.ReadLine() is { } line)
        {
            if (!string.IsNullOrWhiteSpace(line))
                yield return line.Trim();
        }
    }

    private int Tick(ParseResult call, JobBook book, string id, int number)
    {
        var words = new TickWords { Minutes = call.GetValue(minutes) is { } typed ? Typed.Minutes("--minutes", typed).TotalMinutes : null, Note = call.GetValue(note), Anyway = call.GetValue(anyway) };
        return shop.Tell(book.Tick(id, number, shop.Signed(call), words), answer => FormattableString.Invariant($"Step {number} is done (entry {answer.Sequence}). {answer.After!.Summary.Done} of {answer.After.Summary.Steps}."));
    }

    private int Untick(ParseResult call) => shop.Use(call, book =>
    {
        int step = call.GetValue(number);
        return shop.Tell(book.Untick(shop.IdOf(call, book), step, call.GetValue(because)!, shop.Signed(call)), answer => FormattableString.Invariant($"Step {step} is open again (entry {answer.Sequence})."));
    });
}
