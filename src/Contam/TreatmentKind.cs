using System.Text.Json.Serialization;

namespace Contam;

/// <summary>What is done with a part. The order of the members is the order in which they are written and worked.</summary>
public enum TreatmentKind
{
    /// <summary>Looked at, taken apart as far as the look needs.</summary>
    [JsonStringEnumMemberName("inspect")]
    Inspect,

    /// <summary>Flushed through with a fluid.</summary>
    [JsonStringEnumMemberName("flush")]
    Flush,

    /// <summary>Cleaned by hand.</summary>
    [JsonStringEnumMemberName("clean")]
    Clean,

    /// <summary>Measured or tried.</summary>
    [JsonStringEnumMemberName("test")]
    Test,

    /// <summary>Renewed. Absorbs flush and clean.</summary>
    [JsonStringEnumMemberName("replace")]
    Replace,
}
