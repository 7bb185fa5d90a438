using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Contam.Plans;

/// <summary>
/// A plan as a document: the JSON contract <c>contam-plan/2</c>. Arrays stand in a fixed order.
/// Equality of two documents is equality of their JSON, not of these records.
/// </summary>
public sealed record PlanDocument
{
    /// <summary>The name of the contract.</summary>
    public const string FormatName = "contam-plan/2";

    /// <summary>Always <see cref="FormatName"/>.</summary>
    public string Format { get; init; } = FormatName;

    /// <summary>The family that was planned for.</summary>
    public required PlanFamily Family { get; init; }

    /// <summary>The standard that was planned by.</summary>
    public required PlanStandard Standard { get; init; }

    /// <summary>The failed parts with what each shed, in the order of the family; those of one part in the order given.</summary>
    public ImmutableArray<PlanFailure> Failed { get; init; } = [];

    /// <summary>Where no failed part was named: how the failed parts were taken from what was found. Else left out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PlanFromFindings? FromFindings { get; init; }

    /// <summary>Names of the debris, in the order of the catalogue.</summary>
    public ImmutableArray<string> Debris { get; init; } = [];

    /// <summary>Where a person's word about a failure is taken although the family says otherwise, a sentence each; see <see cref="FailureNotes"/>.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>What was found, in the order given.</summary>
    public ImmutableArray<PlanFinding> Findings { get; init; } = [];

    /// <summary>Cautions, by the first step that they bear on.</summary>
    public ImmutableArray<PlanCaution> Cautions { get; init; } = [];

    /// <summary>Every part that the debris reaches or could have reached, in the order of the family.</summary>
    public ImmutableArray<PlanPart> Parts { get; init; } = [];

    /// <summary>Parts that only closed conditional joints would reach.</summary>
    public ImmutableArray<PlanConditional> Conditional { get; init; } = [];

    /// <summary>How many parts have no path from the failure at all.</summary>
    public int Clear { get; init; }

    /// <summary>What the work takes, before it begins.</summary>
    public PlanBefore Before { get; init; } = PlanBefore.Nothing;

    /// <summary>The methods that the steps use, numbered in the order of first use.</summary>
    public ImmutableArray<PlanMethod> Methods { get; init; } = [];

    /// <summary>The looks that decide how far to go, in order of work; empty for a flat plan.</summary>
    public ImmutableArray<PlanLook> Looks { get; init; } = [];

    /// <summary>Which finds at looks make clean looks void, so that these count as found as well; empty where none can.</summary>
    public ImmutableArray<PlanDisproof> Disproofs { get; init; } = [];

    /// <summary>By what the steps are numbered.</summary>
    public PlanSequence Sequence { get; init; }

    /// <summary>The steps, by number.</summary>
    public ImmutableArray<PlanStep> Steps { get; init; } = [];

    /// <summary>What must be ordered.</summary>
    public ImmutableArray<PlanOrderLine> Order { get; init; } = [];

    /// <summary>Hours.</summary>
    public required PlanHours Hours { get; init; }

    /// <summary>
    /// Only where an accepted clean finding cuts something: reach and hops, for each such debris once with those findings counted and once without.
    /// Else <c>null</c>, and the exposures of the parts are the evidence.
    /// </summary>
    public ImmutableArray<PlanEvidence>? Evidence { get; init; }

    /// <summary>Whether somebody has held the family against the machine, as it was handed in with the request; left out where nothing is known of that.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PlanReview? Review { get; init; }
}

/// <summary>Which family.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="Sha256">The hash of what was read.</param>
public sealed record PlanFamily(string Id, string Title, string Sha256);

/// <summary>Which standard.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Sha256">The hash of what was read.</param>
public sealed record PlanStandard(string Id, string Sha256);

/// <summary>A caution.</summary>
/// <param name="Text">The text.</param>
/// <param name="Source">Its source.</param>
/// <param name="BeforeStep">The number of the first step that it bears on.</param>
public sealed record PlanCaution(string Text, string Source, int BeforeStep)
{
    /// <summary>The numbers of all steps that it bears on, rising; empty where it bears on the whole procedure.</summary>
    public ImmutableArray<int> Steps { get; init; } = [];
}
