using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace Contam.Plans;

/// <summary>Reads and writes plans as JSON: camelCase keys, two spaces, <c>\n</c>, text in its own script. Written without reflection.</summary>
public static class PlanJson
{
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
        PlanDocument plan = JsonSerializer.Deserialize(json, Context.PlanDocument) ?? throw new JsonException("the text is the single word null");
        return plan.Format == PlanDocument.FormatName ? plan : throw new JsonException($"the format is {plan.Format}, expected {PlanDocument.FormatName}");
    }
}

/// <summary>The generated reader and writer.</summary>
[JsonSourceGenerationOptions(UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.Never)]
[JsonSerializable(typeof(PlanDocument))]
internal sealed partial class PlanJsonContext : JsonSerializerContext;
