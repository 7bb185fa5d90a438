using System.CommandLine;
using System.Security.Cryptography;
using Contam.Jobs;
using Contam.Jobs.Entries;

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
            A part has gone to an outside workshop. The job is not released before it is back.

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
        string by = shop.ByOf(call, book.Read(id).State.Opened.Technician);
        string typed = call.GetValue(text)!;
        if (typed != "-")
        {
            Keep(typed);
            return ExitCode.Yes;
        }

        while (shop.Shell.In.ReadLine() is { } line)
        {
            if (!string.IsNullOrWhiteSpace(line))
                Keep(line);
        }

        return ExitCode.Yes;

        void Keep(string line)
        {
            long sequence = book.AddToRecord(id, new Noted { At = shop.Now, By = by, Text = JobShop.Text("the note", line) });
            shop.Say(FormattableString.Invariant($"Entry {sequence}."));
            // Whoever reads this must be able to rely on it at once.
            shop.Shell.Out.Flush();
        }
    });

    private int Photo(ParseResult call) => shop.Use(call, book =>
    {
        string name = call.GetValue(file)!;
        string id = shop.IdOf(call, book);
        try
        {
            using FileStream picture = File.OpenRead(name);
            string sha256 = Convert.ToHexStringLower(SHA256.HashData(picture));
            long sequence = book.AddToRecord(id, new Photographed
            {
                At = shop.Now,
                By = shop.ByOf(call, book.Read(id).State.Opened.Technician),
                Name = JobShop.Text("the name", Path.GetFileName(name)),
                Sha256 = sha256,
                Bytes = picture.Length,
                Note = call.GetValue(note) is { } said ? JobShop.Text("--note", said) : null,
            });
            shop.Say(FormattableString.Invariant($"Entry {sequence}: SHA-256 {sha256}. Keep the picture; only its hash is in the job."));
            return ExitCode.Yes;
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"{Reports.Text.TextPage.Harmless(name)} cannot be read. Check the name and the folder.");
        }
    });

    private int Supply(ParseResult call, bool hasArrived) => shop.Use(call, book =>
    {
        JobRecord after = shop.Add(call, book, job =>
        {
            string named = Known(call.GetValue(item)!, "item on the order list", job.State.Plan.Order.Select(line => line.Item));
            return Decision.Of(new Supplied { At = shop.Now, By = shop.ByOf(call, job.State.Opened.Technician), Item = named, Arrived = hasArrived });
        })!;
        shop.Say(FormattableString.Invariant($"Entry {after.Summary.Sequence}."));
        return ExitCode.Yes;
    });

    private int Move(ParseResult call, bool isBack) => shop.Use(call, book =>
    {
        JobRecord after = shop.Add(call, book, job =>
        {
            string named = Known(call.GetValue(part)!, "part in this job", job.State.Steps.All.SelectMany(step => step.Parts).Concat(job.State.Away));
            if (isBack && !job.State.Away.Contains(named))
                throw new WrongUseException($"{named} is not away. contam job next says what is.");
            return Decision.Of(new Moved { At = shop.Now, By = shop.ByOf(call, job.State.Opened.Technician), Part = named, Back = isBack });
        })!;
        shop.Say(FormattableString.Invariant($"Entry {after.Summary.Sequence}."));
        return ExitCode.Yes;
    });

    private static Command With(Argument argument, Command command)
    {
        command.Arguments.Add(argument);
        return command;
    }

    private static string Known(string typed, string what, IEnumerable<string> known)
    {
        string[] all = [.. known.Distinct(StringComparer.Ordinal)];
        if (all.Contains(typed))
            return typed;
        string[] near = [.. NearName.AllOf(typed, all, most: 3)];
        throw new WrongUseException($"there is no {what} called {Reports.Text.TextPage.Harmless(typed)}.{(near.Length == 0 ? "" : $" Did you mean {string.Join(" or ", near)}?")}");
    }
}
