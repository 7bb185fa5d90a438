using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Contam.Plans;

/// <summary>Whether somebody has held the family against the machine. It says how far the plan may be trusted, and changes nothing in it.</summary>
public sealed record PlanReview
{
    /// <summary>Who reviewed it; left out where nobody has.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? By { get; init; }

    /// <summary>The day, as <c>2026-11-28</c>; left out where nobody has.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? On { get; init; }

    /// <summary>What they noted; left out where nothing.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Note { get; init; }

    /// <summary>Whether the family and its modules are byte for byte what was reviewed.</summary>
    public bool IsCurrent { get; init; }

    /// <summary>What has changed since, parts and joints in words; empty where nothing has, or only words of the file.</summary>
    public ImmutableArray<string> Changes { get; init; } = [];
}
