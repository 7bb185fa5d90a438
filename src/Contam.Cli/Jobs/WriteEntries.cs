using System.CommandLine;
using Contam.Jobs;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job note</c>, <c>photo</c>, <c>ordered</c>, <c>arrived</c>, <c>sent</c>, <c>back</c>: what is only written down.</summary>
internal sealed class WriteEntries(JobShop shop)
{
    private readonly Argument<string> text = new("TEXT") { Description = "the note; - for every line of standard input, an entry each" };
    private readonly Argument<string> file = new("FILE") { Description = "the picture" };
    private readonly Option<string?> note = new("--note") { Description = "what it shows", HelpName = "TEXT" };
    private readonly Argument<string> item = new("ITEM") { Description = "an item of the plan's order list" };
    private readonly Argument<string> part = new("PART") { Description = "a part of the engine" };

    public IEnumerable<Command> Build()
    {
        yield return With(text, shop.WritingCommand("note", """
            Writes something down. With - every line of standard input is an entry, and its number is printed when it is safely kept.

            Example:
              contam job note "boat is on the slip until Friday"
            """, Note));
        Command photo = With(file, shop.WritingCommand("photo", """
            Writes down that a photo was taken: its name and hash. The picture itself stays where it is.

            Example:
              contam job photo pinion.jpg --note "three teeth gone"
            """, Photo));
        photo.Options.Add(note);
        yield return photo;
        yield return With(item, shop.WritingCommand("ordered", """
            Something on the order list was ordered.

            Example:
              contam job ordered pinion
            """, call => Supply(call, hasArrived: false)));
        yield return With(item, shop.WritingCommand("arrived", """
            Something on the order list has come.

            Example:
              contam job arrived pinion
            """, call => Supply(call, hasArrived: true)));
        yield return With(part, shop.WritingCommand("sent", """
            A part has gone to an outside workshop. The job is not released before it is back, and where the part was on, it must be put on again.

            Example:
              contam job sent driveshaft
            """, call => Move(call, isBack: false)));
        yield return With(part, shop.WritingCommand("back", """
            A part has come back from an outside workshop.

            Example:
              contam job back driveshaft
            """, call => Move(call, isBack: true)));
    }

    private int Note(ParseResult call) => shop.Use(call, book =>
    {
        string id = shop.IdOf(call, book);
        // Named once, so that nothing is read for a line.
        Signature first = shop.Signed(call);
        string by = first.By ?? book.Read(id).Technician;
        string typed = call.GetValue(text)!;
        if (typed != "-")
            return Keep(typed);
        while (shop.Shell.In.ReadLine() is { } line)
        {
            if (!string.IsNullOrWhiteSpace(line))
                Keep(line);
        }

        return ExitCode.Yes;

        int Keep(string line)
        {
            int exit = shop.Tell(book.Note(id, line, new Signature(shop.Now, by)), answer => FormattableString.Invariant($"Entry {answer.Sequence}."));
            // Whoever reads this must be able to rely on it at once.
            shop.Shell.Out.Flush();
            return exit;
        }
    });

    private int Photo(ParseResult call) => shop.Use(call, book =>
    {
        string name = call.GetValue(file)!;
        string id = shop.IdOf(call, book);
        (string sha256, long bytes) = InputFile.HashOf(name);
        return shop.Tell(
            book.Photo(id, new Picture(Path.GetFileName(name), sha256, bytes, call.GetValue(note)), shop.Signed(call)),
            answer => FormattableString.Invariant($"Entry {answer.Sequence}: SHA-256 {sha256}. Keep the picture; only its hash is in the job."));
    });

    private int Supply(ParseResult call, bool hasArrived) => shop.Use(call, book => shop.Tell(book.Supply(shop.IdOf(call, book), call.GetValue(item)!, hasArrived, shop.Signed(call)), Entry));

    private int Move(ParseResult call, bool isBack) => shop.Use(call, book =>
    {
        string id = shop.IdOf(call, book);
        return shop.Tell(isBack ? book.Return(id, call.GetValue(part)!, shop.Signed(call)) : book.Send(id, call.GetValue(part)!, shop.Signed(call)), Entry);
    });

    private static string Entry(JobAnswer answer) => FormattableString.Invariant($"Entry {answer.Sequence}.");

    private static Command With(Argument argument, Command command)
    {
        command.Arguments.Add(argument);
        return command;
    }
}
