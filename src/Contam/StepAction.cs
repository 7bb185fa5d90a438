using System.Text.Json.Serialization;

namespace Contam;

/// <summary>What a step of a procedure does.</summary>
public enum StepAction
{
    /// <summary>Makes the engine safe to open.</summary>
    [JsonStringEnumMemberName("make-safe")]
    MakeSafe,

    /// <summary>Looks at a part.</summary>
    [JsonStringEnumMemberName("inspect")]
    Inspect,

    /// <summary>Takes a part off.</summary>
    [JsonStringEnumMemberName("remove")]
    Remove,

    /// <summary>Flushes a part, or a loop of parts in one go.</summary>
    [JsonStringEnumMemberName("flush")]
    Flush,

    /// <summary>Cleans a part by hand.</summary>
    [JsonStringEnumMemberName("clean")]
    Clean,

    /// <summary>Tests a part.</summary>
    [JsonStringEnumMemberName("test")]
    Test,

    /// <summary>Checks the new part against the old one and makes it ready; the refit fits it.</summary>
    [JsonStringEnumMemberName("replace")]
    Replace,

    /// <summary>Puts a part back on.</summary>
    [JsonStringEnumMemberName("refit")]
    Refit,

    /// <summary>Proves the engine: prime, crank, leak check, run, look again.</summary>
    [JsonStringEnumMemberName("prove")]
    Prove,

    /// <summary>A part is away at an outside workshop; no technician's time is used.</summary>
    [JsonStringEnumMemberName("send-out")]
    SendOut,

    /// <summary>Something to find out, write down or order.</summary>
    [JsonStringEnumMemberName("note")]
    Note,
}
