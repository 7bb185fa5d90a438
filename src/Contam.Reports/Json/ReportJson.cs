using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;

namespace Contam.Reports.Json;

/// <summary>How every report is written as JSON: camelCase, two spaces, <c>\n</c>, text in its own script, no reflection.</summary>
internal static class ReportJson
{
    public static ReportJsonContext Context { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
    });

    public static string Write<T>(T answer, JsonTypeInfo<T> type) => JsonSerializer.Serialize(answer, type) + "\n";
}

/// <summary>The generated writers.</summary>
[JsonSourceGenerationOptions(UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.Never)]
[JsonSerializable(typeof(PartsAnswer))]
[JsonSerializable(typeof(CheckAnswer))]
[JsonSerializable(typeof(WhyAnswer))]
[JsonSerializable(typeof(LooksJsonAnswer))]
[JsonSerializable(typeof(StopLineAnswer))]
[JsonSerializable(typeof(SuspectsAnswer))]
[JsonSerializable(typeof(VerifyAnswer))]
[JsonSerializable(typeof(FlushJsonAnswer))]
[JsonSerializable(typeof(GaugeJsonAnswer))]
[JsonSerializable(typeof(AuditAnswer))]
[JsonSerializable(typeof(CompareAnswer))]
[JsonSerializable(typeof(DrillAnswer))]
[JsonSerializable(typeof(SignedReviewDocument))]
internal sealed partial class ReportJsonContext : JsonSerializerContext;
