using System.Text.Json.Serialization;

namespace Contam;

/// <summary>The part of a procedure that a step belongs to, in working order.</summary>
public enum Phase
{
    /// <summary>Pressure let down, battery off, drained.</summary>
    [JsonStringEnumMemberName("make safe")]
    MakeSafe,

    /// <summary>The failure and its cause are looked at before anything comes off.</summary>
    [JsonStringEnumMemberName("confirm")]
    Confirm,

    /// <summary>Parts come off.</summary>
    [JsonStringEnumMemberName("strip")]
    Strip,

    /// <summary>Parts are flushed, cleaned, inspected or renewed.</summary>
    [JsonStringEnumMemberName("clean out")]
    CleanOut,

    /// <summary>Parts are tested before they go back.</summary>
    [JsonStringEnumMemberName("test")]
    Test,

    /// <summary>Parts go back on, with new single-use seals.</summary>
    [JsonStringEnumMemberName("refit")]
    Refit,

    /// <summary>The engine is primed, turned over, run and looked at again.</summary>
    [JsonStringEnumMemberName("prove")]
    Prove,
}
