using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace Contam.Jobs.Entries;

/// <summary>
/// Bodies of entries as one line of JSON. The line is what is hashed and kept; it is never written anew from what was read out of it,
/// so that a later version of the program does not break the chain of an earlier one.
/// </summary>
internal static class EntryJson
{
    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.Create(UnicodeRanges.All);

    private static readonly EntryJsonContext Context = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = Encoder,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        MaxDepth = 16,
    });

    /// <summary>The body as one line.</summary>
    public static string Write(EntryBody body)
    {
        // The serializer does not escape a time's plus sign and the writer does; the line is always the writer's, so that it can be made again from an export.
        using JsonDocument document = JsonSerializer.SerializeToDocument(body, Context.EntryBody);
        return LineOf(document.RootElement);
    }

    /// <summary>What a line says. Keys that a later version has added are passed over.</summary>
    /// <exception cref="JsonException">It is no body of an entry; the message says why.</exception>
    public static EntryBody Read(string line)
    {
        try
        {
            return JsonSerializer.Deserialize(line, Context.EntryBody) ?? throw new JsonException("the entry is the single word null");
        }
        catch (NotSupportedException noKind)
        {
            // What the reader throws where "kind" is missing, and the type is abstract.
            throw new JsonException("the entry has no kind", noKind);
        }
    }

    /// <summary>The kind that a line names; empty where it names none.</summary>
    public static string KindOf(string line)
    {
        using JsonDocument document = JsonDocument.Parse(line);
        return document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty("kind", out JsonElement kind) ? kind.GetString() ?? "" : "";
    }

    /// <summary>An element as the line that <see cref="Write"/> would have made of it: no spaces, the same escapes, numbers as they are written.</summary>
    public static string LineOf(JsonElement element)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(bytes, new JsonWriterOptions { Encoder = Encoder }))
            element.WriteTo(writer);
        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }
}

/// <summary>The generated reader and writer.</summary>
[JsonSourceGenerationOptions(UseStringEnumConverter = true)]
[JsonSerializable(typeof(EntryBody))]
internal sealed partial class EntryJsonContext : JsonSerializerContext;
