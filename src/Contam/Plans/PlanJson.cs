using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace Contam.Plans;

/// <summary>Reads and writes plans as JSON: camelCase keys, two spaces, <c>\n</c>, text in its own script. Written without reflection.</summary>
public static class PlanJson
{
    private const string AnyFormat = "contam-plan/";

    private static readonly PlanJsonContext Context = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        MaxDepth = 16,
    });

    /// <summary>The plan as JSON, closed by a newline. The same plan gives the same text.</summary>
    public static string Write(PlanDocument plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return JsonSerializer.Serialize(plan, Context.PlanDocument) + "\n";
    }

    /// <summary>The plan in this text.</summary>
    /// <exception cref="JsonException">The text is no plan: not JSON, a key that must be there missing, a key doubled or unknown, or a value of another form. The message says which and where.</exception>
    public static PlanDocument Read(string json)
    {
        // An older form would fail at the first value that has changed; what a person needs to know is that it is older.
        if (FormatOf(json) is { } older && older != PlanDocument.FormatName && older.StartsWith(AnyFormat, StringComparison.Ordinal))
            throw new JsonException($"the format is {older}, which this version does not read, expected {PlanDocument.FormatName}; make the plan again with this version");
        PlanDocument plan = JsonSerializer.Deserialize(json, Context.PlanDocument) ?? throw new JsonException("the text is the single word null");
        return plan.Format == PlanDocument.FormatName ? plan : throw new JsonException($"the format is {plan.Format}, expected {PlanDocument.FormatName}");
    }

    /// <summary>What stands at <c>format</c>, where the text is an object with such a text.</summary>
    private static string? FormatOf(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var reader = new Utf8JsonReader(Encoding.UTF8.GetBytes(json), new JsonReaderOptions { MaxDepth = 16 });
        try
        {
            while (reader.Read())
            {
                if (reader.TokenType != JsonTokenType.PropertyName || reader.CurrentDepth != 1 || !reader.ValueTextEquals("format"u8))
                    continue;
                return reader.Read() && reader.TokenType == JsonTokenType.String ? reader.GetString() : null;
            }
        }
        catch (JsonException)
        {
            // The reader that follows says what is wrong, and where.
        }

        return null;
    }
}

/// <summary>The generated reader and writer.</summary>
[JsonSourceGenerationOptions(UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.Never)]
[JsonSerializable(typeof(PlanDocument))]
internal sealed partial class PlanJsonContext : JsonSerializerContext;
