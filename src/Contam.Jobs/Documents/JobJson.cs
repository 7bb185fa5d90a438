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
    private const string FormatName = "contam-job/1";

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
        ArgumentNullException.ThrowIfNull(job);
        return Written(writer =>
        {
            WriteStanding(writer, job, missing);
            WriteRecord(writer, job.Entries, TextsOf(job.Bodies).Select(book.Text));
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
            WriteNone(writer, "findings");
            WriteNone(writer, "readings");
            WriteNone(writer, "missing");

            WriteRecord(writer, entries, TextsOf(bodies).Select(sha256 => TextIfThere(book, sha256)).OfType<string>());
        });
    }

    /// <summary>Keeps the job of an export.</summary>
    /// <param name="book">Where it is kept.</param>
    /// <param name="json">The export.</param>
    /// <param name="allowed">How much may be taken in of the files that a job keeps; an export that asks for more is refused.</param>
    /// <returns>The job, and whether it was not there before.</returns>
    /// <exception cref="JsonException">The text is no export, or its record does not hang together.</exception>
    /// <exception cref="ShopException">Another job of this id is there.</exception>
    public static (string Id, bool IsNew) Import(JobBook book, string json, ReadLimits allowed)
    {
        ArgumentNullException.ThrowIfNull(book);
        using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 32 });
        JsonElement root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("format", out JsonElement format) || format.ValueKind != JsonValueKind.String || format.GetString() != FormatName)
            throw new JsonException($"the format is not {FormatName}");
        if (!root.TryGetProperty("record", out JsonElement record) || record.ValueKind != JsonValueKind.Object)
            throw new JsonException("it has no record; write it with contam job export");
        ImmutableArray<JobEntry> entries = [.. Items(record, "entries").Select(one => new JobEntry(Member(one, "sequence").GetInt64(), String(one, "previous"), String(one, "hash"), LineOf(Member(one, "body"))))];
        ImmutableArray<string> texts = [.. Items(record, "texts").Select(one => String(one, "text"))];
        if (entries.IsEmpty)
            throw new JsonException("it has no entry");
        if (EntryChain.FirstBreak(entries) is { } broken)
            throw new JsonException(broken);
        var textOf = texts.DistinctBy(EntryChain.Sha256).ToDictionary(EntryChain.Sha256, StringComparer.Ordinal);
        EntryBody[] bodies = [.. entries.Select(entry => EntryJson.Read(entry.Body))];
        foreach (string sha256 in TextsOf(bodies))
        {
            if (!textOf.ContainsKey(sha256))
                throw new JsonException($"the text with the hash {sha256} is missing or was changed");
        }

        if (bodies[0] is Opened { Limits: { } limits } && !limits.IsWithin(allowed))
            throw new ShopException(ShopFault.Refused, "the job was opened with raised limits, and an export that somebody sent may ask for more memory than you want to give. Nothing was written. If you trust it, import it with the same --limit.");
        string id = entries[0].Hash[..8];
        JobSummary summary;
        try
        {
            summary = JobSummary.Of(id, JobFold.Fold(bodies, sha256 => Plans.PlanJson.Read(textOf[sha256])), entries[^1], bodies[^1]);
        }
        catch (ArgumentException wrong)
        {
            throw new JsonException(wrong.Message, wrong);
        }

        if (book.Store.Create(new JobAddition(entries, summary) { Texts = texts }))
            return (id, true);
        return book.Store.Find(id)?.Hash == summary.Hash
            ? (id, false)
            : throw new ShopException(ShopFault.Refused, $"job {id} is in {book.Store.Place} already, and has gone another way there. Nothing was changed. Take the export into a shop file of its own: --shop FILE.");
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
            writer.WriteString("state", state.IsDone(step) ? "done" : "open");
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

    // A body that was no JSON was written as a text, and is one.
    private static string LineOf(JsonElement body) => body.ValueKind == JsonValueKind.String ? body.GetString()! : EntryJson.LineOf(body);

    /// <summary>The hashes of every text that these entries name, in the order in which they are named, each once.</summary>
    private static IEnumerable<string> TextsOf(IEnumerable<EntryBody> bodies) => bodies.SelectMany(body => body switch
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

    private static JsonElement.ArrayEnumerator Items(JsonElement of, string name) =>
        Member(of, name) is { ValueKind: JsonValueKind.Array } list ? list.EnumerateArray() : throw new JsonException($"{name} is no list");

    private static JsonElement Member(JsonElement of, string name) =>
        of.ValueKind == JsonValueKind.Object && of.TryGetProperty(name, out JsonElement member) ? member : throw new JsonException($"{name} is missing");

    private static string String(JsonElement of, string name) =>
        Member(of, name) is { ValueKind: JsonValueKind.String } text ? text.GetString()! : throw new JsonException($"{name} is no text");

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
