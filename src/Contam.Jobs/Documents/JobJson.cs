using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Contam.Families.Reading.Sheets;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Jobs.Documents;

/// <summary>
/// A job as JSON: the contract <c>contam-job/1</c>. How it stands, and in an export also its whole record: every entry with its hash, and every text
/// that the entries name. Taking an export in gives the same job; only <c>record</c> is read for it, the rest follows from that.
/// </summary>
public static class JobJson
{
    internal const string FormatName = "contam-job/1";

    internal static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    /// <summary>How a job stands, closed by a newline; without its record.</summary>
    public static string Show(JobRecord job, IReadOnlyList<Missing> missing)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(missing);
        return Written(writer =>
        {
            WriteStanding(writer, job, missing);
            writer.WriteNull("record");
        });
    }

    /// <summary>A job with its whole record, closed by a newline.</summary>
    public static string Export(JobBook book, JobRecord job, IReadOnlyList<Missing> missing)
    {
        ArgumentNullException.ThrowIfNull(book);
        return Export(job, missing, book.Text);
    }

    internal static string Export(JobRecord job, IReadOnlyList<Missing> missing, Func<string, string> text)
    {
        ArgumentNullException.ThrowIfNull(job);
        return Written(writer =>
        {
            WriteStanding(writer, job, missing);
            WriteRecord(writer, job.Entries, TextsOf(job.Bodies).Select(text));
        });
    }

    /// <summary>What can be read of a damaged job. It cannot be taken in as it is; it is there to be read.</summary>
    public static string ExportDamaged(JobBook book, JobSummary job)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(job);
        ImmutableArray<JobEntry> entries = book.Store.Entries(job.Id, out _);
        var bodies = new List<EntryBody>();
        foreach (JobEntry entry in entries)
        {
            try
            {
                bodies.Add(EntryJson.Read(entry.Body));
            }
            catch (JsonException)
            {
                // It still goes into the export, as the text that it is.
            }
        }

        return Written(writer =>
        {
            writer.WriteString("format", FormatName);
            writer.WriteString("id", job.Id);
            writer.WriteString("state", "damaged");
            WriteNone(writer, "steps");
            WriteNone(writer, "looks");
            WriteNone(writer, "findings");
            WriteNone(writer, "readings");
            WriteNone(writer, "missing");

            WriteRecord(writer, entries, TextsOf(bodies).Select(sha256 => TextIfThere(book, sha256)).OfType<string>());
        });
    }

    /// <summary>
    /// Keeps the job of an export: only where it is whole, says of itself what its entries come to, and could have come about by the rules, every plan made again.
    /// </summary>
    /// <param name="book">Where it is kept.</param>
    /// <param name="json">The export.</param>
    /// <param name="allowed">How much may be taken in of the files that a job keeps; an export that asks for more is refused.</param>
    /// <param name="signature">Who takes it in, and when; named, since nobody here is in charge of it yet.</param>
    /// <param name="confirm">Asked who stands for the clean findings of the export, where it has any.</param>
    /// <returns>The job, whether it was not there before, and the clean findings that nobody stands for; where there are any, nothing is kept.</returns>
    /// <exception cref="JsonException">The text is no export, or its record does not hang together.</exception>
    /// <exception cref="ShopException">Another job of this id is there.</exception>
    public static (string Id, bool IsNew, NotConfirmed? Refusal) Import(
        JobBook book, string json, ReadLimits allowed, Signature signature, Func<ImmutableArray<CleanFinding>, ImmutableArray<Confirmation>> confirm)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(signature);
        ArgumentNullException.ThrowIfNull(confirm);
        ReadExport export = ReadExport.Of(json);
        if (export.Bodies[0] is Opened { Limits: { } limits } && !limits.IsWithin(allowed))
            throw new ShopException(ShopFault.Refused, "the job was opened with raised limits, and an export that somebody sent may ask for more memory than you want to give. Nothing was written. If you trust it, import it with the same --limit.");
        if (book.Store.Find(export.Id) is not null)
        {
            ImmutableArray<JobEntry> here = book.Store.Entries(export.Id, out _);
            return here.Take(export.Entries.Length).SequenceEqual(export.Entries)
                ? (export.Id, false, null)
                : throw new ShopException(ShopFault.Refused, $"job {export.Id} is in {book.Store.Place} already, and has gone another way there. Nothing was changed. Take the export into a shop file of its own: --shop FILE.");
        }

        JobRecord job = export.Judged(json);
        SeenAt[] clean = [.. export.Bodies.OfType<Opened>().SelectMany(one => one.Looks).Concat(export.Bodies.OfType<Looked>().Select(one => one.Seen with { LookedBy = one.Seen.LookedBy ?? one.By }))
            .Concat(export.Bodies.OfType<Decided>().SelectMany(one => one.Seen.Select(seen => seen with { LookedBy = one.By }))).Where(seen => !seen.Found)];
        ImmutableArray<Confirmation> confirmed = clean.Length == 0 ? [] : confirm(JobBook.Unconfirmed(clean, []));
        if (JobBook.Unconfirmed(clean, confirmed) is { IsEmpty: false } unconfirmed)
            return (export.Id, false, new NotConfirmed(unconfirmed));
        bool isNew = book.Store.Create(new JobAddition(export.Entries, job.Summary) { Texts = export.Texts });
        if (isNew && clean.Length > 0)
        {
            string stood = string.Join("; ", clean.Select(seen => (seen.Part, seen.Debris)).Distinct().Select(seen => $"{seen.Part} clean of {seen.Debris}, for which {confirmed.First(one => one.Part == seen.Part && one.Debris == seen.Debris).By} stands"));
            book.Note(export.Id, $"Taken in from an export with {stood}.", signature);
        }

        return (export.Id, isNew, null);
    }

    private static void WriteNone(Utf8JsonWriter writer, string list)
    {
        writer.WriteStartArray(list);
        writer.WriteEndArray();
    }

    private static void WriteStanding(Utf8JsonWriter writer, JobRecord job, IReadOnlyList<Missing> missing)
    {
        JobState state = job.State;
        writer.WriteString("format", FormatName);
        writer.WriteString("id", job.Id);
        writer.WriteString("state", state.IsReleased ? "released" : "open");
        writer.WriteStartArray("steps");
        foreach (WorkStep step in state.Steps.All)
        {
            writer.WriteStartObject();
            writer.WriteNumber("number", step.Number);
            writer.WriteString("state", state.IsDone(step) ? "done" : state.IsStruck(step) ? "struck" : state.ConditionOf(step) == StepCondition.Waits ? "waits" : "open");
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("looks");
        foreach (LookStands look in state.LooksStand)
        {
            writer.WriteStartObject();
            writer.WriteString("id", look.Look);
            writer.WriteString("standing", look.Standing);
            writer.WriteString("by", state.Outcomes.GetValueOrDefault(look.Look)?.By);
            writer.WriteString("disprovedAt", look.DisprovedAt);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("findings");
        foreach (LookTaken look in state.Looks)
        {
            writer.WriteStartObject();
            writer.WriteString("part", look.Seen.Part);
            writer.WriteString("debris", look.Seen.Debris);
            writer.WriteBoolean("found", look.Seen.Found);
            writer.WriteString("by", look.By);
            writer.WriteBoolean("answered", look.IsAnswered);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("readings");
        foreach (ReadingTaken reading in state.Readings)
        {
            writer.WriteStartObject();
            writer.WriteString("limit", reading.Entry.Limit);
            writer.WriteString("part", reading.Entry.Part);
            writer.WriteString("verdict", reading.Entry.Verdict);
            writer.WriteBoolean("counts", !reading.IsStale);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("missing");
        foreach (Missing one in missing)
            writer.WriteStringValue(one.Text);
        writer.WriteEndArray();
    }

    private static void WriteRecord(Utf8JsonWriter writer, ImmutableArray<JobEntry> entries, IEnumerable<string> texts)
    {
        writer.WriteStartObject("record");
        // What stands here is not proof against whoever forges it, but nobody cuts entries off unnoticed any more, or loses them on the way.
        writer.WriteNumber("count", entries.Length);
        writer.WriteString("end", entries.IsEmpty ? EntryChain.Beginning : entries[^1].Hash);
        writer.WriteStartArray("entries");
        foreach (JobEntry entry in entries)
        {
            writer.WriteStartObject();
            writer.WriteNumber("sequence", entry.Sequence);
            writer.WriteString("previous", entry.Previous);
            writer.WriteString("hash", entry.Hash);
            WriteBody(writer, entry.Body);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("texts");
        foreach (string text in texts)
        {
            writer.WriteStartObject();
            writer.WriteString("sha256", EntryChain.Sha256(text));
            writer.WriteString("text", text);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteBody(Utf8JsonWriter writer, string body)
    {
        writer.WritePropertyName("body");
        try
        {
            using JsonDocument line = JsonDocument.Parse(body);
            line.RootElement.WriteTo(writer);
        }
        catch (JsonException)
        {
            writer.WriteStringValue(body);
        }
    }

    /// <summary>The hashes of every text that these entries name, in the order in which they are named, each once.</summary>
    internal static IEnumerable<string> TextsOf(IEnumerable<EntryBody> bodies) => bodies.SelectMany(body => body switch
    {
        Opened one => [one.Plan, .. one.Family.Select(file => file.Sha256), .. one.Standard.Select(file => file.Sha256)],
        Replanned one => [one.Plan],
        Released one => [one.Sheet],
        _ => Enumerable.Empty<string>(),
    }).Distinct(StringComparer.Ordinal);

    private static string? TextIfThere(JobBook book, string sha256)
    {
        try
        {
            return book.Text(sha256);
        }
        catch (ShopException)
        {
            return null;
        }
    }

    private static string Written(Action<Utf8JsonWriter> write)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(bytes, Options))
        {
            writer.WriteStartObject();
            write(writer);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.WrittenSpan) + "\n";
    }
}
