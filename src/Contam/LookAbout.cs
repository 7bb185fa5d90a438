using System.Text.Json.Serialization;

namespace Contam;

/// <summary>What a step that looks at a part looks for.</summary>
public enum LookAbout
{
    /// <summary>Debris, before anybody cleans, drains, flushes or wipes the part.</summary>
    [JsonStringEnumMemberName("debris")]
    Debris,

    /// <summary>Wear, pits or size, at a part that is clean.</summary>
    [JsonStringEnumMemberName("condition")]
    Condition,
}
