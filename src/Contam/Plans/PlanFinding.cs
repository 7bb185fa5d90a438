using System.Collections.Immutable;

namespace Contam.Plans;

/// <summary>A finding that the plan was made with.</summary>
public sealed record PlanFinding
{
    /// <summary>A find to which nothing leads from a failed part.</summary>
    public const string OwnSource = "own";

    /// <summary>A find larger than anything that a failed part can send there.</summary>
    public const string FurtherSource = "further";

    /// <summary>The part that was looked at.</summary>
    public required string Part { get; init; }

    /// <summary>The debris.</summary>
    public required string Debris { get; init; }

    /// <summary>Whether it was found; else the part was clean of it.</summary>
    public bool Found { get; init; }

    /// <summary>The size seen in µm, or <c>null</c>.</summary>
    public double? SizeUm { get; init; }

    /// <summary>Whether a clean finding was accepted, so that it may clear; <c>false</c> for a find.</summary>
    public bool Accepted { get; init; }

    /// <summary>Why a clean finding was not accepted; <c>null</c> where it was, and for a find.</summary>
    public string? NotAcceptedBecause { get; init; }

    /// <summary>Whether it is a clean finding that a find disproves: it clears nothing.</summary>
    public bool Void { get; init; }

    /// <summary>For a void finding the part where the find was made that disproves it; else <c>null</c>.</summary>
    public string? ContradictedBy { get; init; }

    /// <summary>
    /// For a find what it says of a source: <c>own</c> where nothing leads there from a failed part, <c>further</c> where it is larger than anything that a
    /// failed part can send there; else <c>null</c>.
    /// </summary>
    public string? Source { get; init; }

    /// <summary>Who looked, or <c>null</c>.</summary>
    public string? By { get; init; }

    /// <summary>When, as written, or <c>null</c>.</summary>
    public string? When { get; init; }
}

/// <summary>How the failed parts of a plan were taken from what was found.</summary>
/// <param name="Share">Suspects with at least this share of the suspicion count as failed.</param>
/// <param name="Suspects">The suspects that count as failed, by debris, then by falling share; one that is suspected of several debris stands once for each.</param>
/// <param name="NotCounted">For each debris with suspects that do not count, how many, and their shares together.</param>
public sealed record PlanFromFindings(double Share, ImmutableArray<PlanSuspect> Suspects, ImmutableArray<PlanNotCounted> NotCounted);

/// <summary>A suspect that counts as failed.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">What it is suspected of shedding.</param>
/// <param name="Share">Its share of the suspicion.</param>
public sealed record PlanSuspect(string Part, string Debris, double Share);

/// <summary>Suspects that do not count as failed.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Suspects">How many.</param>
/// <param name="Share">Their shares together.</param>
public sealed record PlanNotCounted(string Debris, int Suspects, double Share);
