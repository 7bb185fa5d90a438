using System.Text.Json.Serialization;

namespace Contam.Measurement;

/// <summary>What a reading comes to against a limit. The first three are ordered from the mildest to the worst.</summary>
public enum Verdict
{
    /// <summary>It meets the limit.</summary>
    [JsonStringEnumMemberName("good")]
    Good,

    /// <summary>It lies between good and reject.</summary>
    [JsonStringEnumMemberName("marginal")]
    Marginal,

    /// <summary>It is not to be used.</summary>
    [JsonStringEnumMemberName("reject")]
    Reject,

    /// <summary>The reading does not tell: it could be one or the other. Never to be taken for good.</summary>
    [JsonStringEnumMemberName("undecided")]
    Undecided,
}

/// <summary>A verdict with its reason.</summary>
/// <param name="Verdict">What the reading comes to; undecided exactly where <paramref name="Mildest"/> and <paramref name="Worst"/> differ.</param>
/// <param name="Mildest">The mildest it could be.</param>
/// <param name="Worst">The worst it could be.</param>
/// <param name="Because">Why, as one clause with the reading and the limit as written.</param>
public sealed record Judgement(Verdict Verdict, Verdict Mildest, Verdict Worst, string Because);
