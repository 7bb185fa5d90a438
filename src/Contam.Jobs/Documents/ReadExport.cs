using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs.Documents;

/// <summary>An export as it was read: a chain that hangs together to the end that it names, and every text that it names.</summary>
internal sealed class ReadExport
{
    private readonly Dictionary<string, string> textOf;

    private ReadExport(ImmutableArray<JobEntry> entries, ImmutableArray<EntryBody> bodies, ImmutableArray<string> texts, Dictionary<string, string> textOf)
    {
        Entries = entries;
        Bodies = bodies;
        Texts = texts;
        this.textOf = textOf;
    }

    public string Id => Entries[0].Hash[..8];

    public ImmutableArray<JobEntry> Entries { get; }

    public ImmutableArray<EntryBody> Bodies { get; }

    public ImmutableArray<string> Texts { get; }

    /// <exception cref="JsonException">The text is no export, or its record does not hang together; the message says why, as a clause.</exception>
    public static ReadExport Of(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 32 });
        JsonElement root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("format", out JsonElement format) || format.ValueKind != JsonValueKind.String || format.GetString() != JobJson.FormatName)
            throw new JsonException($"the format is not {JobJson.FormatName}");
        if (!root.TryGetProperty("record", out JsonElement record) || record.ValueKind != JsonValueKind.Object)
            throw new JsonException("it has no record; write it with contam job export");
        ImmutableArray<JobEntry> entries = [.. Items(record, "entries").Select(one => new JobEntry(Number(one, "sequence"), String(one, "previous"), String(one, "hash"), LineOf(Member(one, "body"))))];
        ImmutableArray<string> texts = [.. Items(record, "texts").Select(one => String(one, "text"))];
        if (entries.IsEmpty)
            throw new JsonException("it has no entry");
        if (EntryChain.FirstBreak(entries) is { } broken)
            throw new JsonException(broken);
        if (Number(record, "count") is var count && count != entries.Length)
            throw new JsonException(string.Create(CultureInfo.InvariantCulture, $"it says that it has {count} entries, and {entries.Length} are there"));
        if (String(record, "end") != entries[^1].Hash)
            throw new JsonException("its last entry is not the one that it says it ends with");
        var textOf = texts.DistinctBy(EntryChain.Sha256).ToDictionary(EntryChain.Sha256, StringComparer.Ordinal);
        ImmutableArray<EntryBody> bodies = [.. entries.Select(entry => EntryJson.Read(entry.Body))];
        foreach (string sha256 in JobJson.TextsOf(bodies))
        {
            if (!textOf.ContainsKey(sha256))
                throw new JsonException($"the text with the hash {sha256} is missing or was changed");
        }

        return new ReadExport(entries, bodies, texts, textOf);
    }

    /// <summary>The job, once the rules have been asked for every entry again and the document says of it what its entries come to.</summary>
    /// <param name="json">The text that this was read from.</param>
    /// <exception cref="JsonException">The rules would not have given it, or it says something else of itself; the message says where.</exception>
    public JobRecord Judged(string json)
    {
        try
        {
            JobState state = JobFold.Fold(Bodies, sha256 => PlanJson.Read(textOf[sha256]));
            if (JobReplay.FirstWrong(Id, Bodies, sha256 => textOf[sha256]) is { } wrong)
                throw new JsonException(wrong);
            var job = new JobRecord(JobSummary.Of(Id, state, Entries[^1], Bodies[^1]), Entries, Bodies, state);
            ImmutableArray<Missing> missing = ReleaseGate.Missing(state, KeptSystem.Of(sha256 => textOf[sha256], state.Opened));
            using JsonDocument due = JsonDocument.Parse(JobJson.Export(job, missing, sha256 => textOf[sha256]));
            using JsonDocument said = JsonDocument.Parse(json);
            foreach (JsonProperty member in due.RootElement.EnumerateObject())
            {
                if (!said.RootElement.TryGetProperty(member.Name, out JsonElement here) || !JsonElement.DeepEquals(here, member.Value))
                    throw new JsonException($"what it says under {member.Name} is not what its entries come to");
            }

            return job;
        }
        catch (Exception wrong) when (wrong is ArgumentException or KeyNotFoundException)
        {
            throw new JsonException(wrong.Message, wrong);
        }
    }

    // A body that was no JSON was written as a text, and is one.
    private static string LineOf(JsonElement body) => body.ValueKind == JsonValueKind.String ? body.GetString()! : EntryJson.LineOf(body);

    private static JsonElement.ArrayEnumerator Items(JsonElement of, string name) =>
        Member(of, name) is { ValueKind: JsonValueKind.Array } list ? list.EnumerateArray() : throw new JsonException($"{name} is no list");

    private static JsonElement Member(JsonElement of, string name) =>
        of.ValueKind == JsonValueKind.Object && of.TryGetProperty(name, out JsonElement member) ? member : throw new JsonException($"{name} is missing");

    private static string String(JsonElement of, string name) =>
        Member(of, name) is { ValueKind: JsonValueKind.String } text ? text.GetString()! : throw new JsonException($"{name} is no text");

    private static long Number(JsonElement of, string name) =>
        Member(of, name) is { ValueKind: JsonValueKind.Number } number && number.TryGetInt64(out long whole) ? whole : throw new JsonException($"{name} is no whole number");
}
