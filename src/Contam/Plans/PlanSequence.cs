using System.Text.Json.Serialization;

namespace Contam.Plans;

/// <summary>By what the steps of a plan are numbered.</summary>
public enum PlanSequence
{
    /// <summary>As a bench works: seven phases, each once.</summary>
    [JsonStringEnumMemberName("bench")]
    Bench,

    /// <summary>By the start of the shortest schedule that was found; phases may come in turns.</summary>
    [JsonStringEnumMemberName("schedule")]
    Schedule,
}
