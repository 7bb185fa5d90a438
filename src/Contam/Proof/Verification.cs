using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Contam.Proof;

/// <summary>What a plan claims of itself.</summary>
public enum ClaimKind
{
    /// <summary>Nothing that the debris can reach is left out or called milder than it is, however the looks come out.</summary>
    [JsonStringEnumMemberName("closed")]
    Closed,

    /// <summary>Every listed part has a way from a source that can be followed and is as wide as claimed.</summary>
    [JsonStringEnumMemberName("grounded")]
    Grounded,

    /// <summary>Every exposed and every guarded part has the steps that its treatment asks for, and no others; with looks, whichever way they come out.</summary>
    [JsonStringEnumMemberName("treated")]
    Treated,

    /// <summary>The steps, played in their order, end with nothing dirty and everything back; with looks, those that are done in each history.</summary>
    [JsonStringEnumMemberName("ordered")]
    Ordered,

    /// <summary>The engine family is the one that was planned for.</summary>
    [JsonStringEnumMemberName("same-family")]
    SameFamily,
}

/// <summary>A claim of a plan, and whether it holds.</summary>
/// <param name="Kind">What is claimed.</param>
/// <param name="Where">The first place where it fails and what that would mean at the bench, in one sentence without a full stop; <c>null</c> where it holds.</param>
public sealed record Claim(ClaimKind Kind, string? Where)
{
    /// <summary>Whether it holds.</summary>
    public bool Holds => Where is null;
}

/// <summary>Whether a plan is complete and in a safe order.</summary>
/// <param name="Claims">The five claims, in the order of <see cref="ClaimKind"/>.</param>
public sealed record Verification(ImmutableArray<Claim> Claims)
{
    /// <summary>How many histories of its looks the plan was held against: all that can come about; 1 without looks, 0 where a fault kept them from being played.</summary>
    public int Histories { get; init; } = 1;

    /// <summary>Whether all of them hold.</summary>
    public bool Holds => Claims.All(claim => claim.Holds);
}
