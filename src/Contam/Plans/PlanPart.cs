using System.Collections.Immutable;

namespace Contam.Plans;

/// <summary>A part that the debris reaches or could have reached.</summary>
public sealed record PlanPart
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The circuits it stands in.</summary>
    public ImmutableArray<string> Circuits { get; init; } = [];

    /// <summary>What reaches it, a line for each debris, in the order of <see cref="PlanDocument.Debris"/>.</summary>
    public ImmutableArray<PlanExposure> Exposure { get; init; } = [];

    /// <summary>Its treatments, in the order of <see cref="TreatmentKind"/>; empty exactly where it is cleared of everything.</summary>
    public ImmutableArray<TreatmentKind> Treatment { get; init; } = [];

    /// <summary>The rule that gave the treatment, the first where several did; <c>null</c> where it is cleared of everything.</summary>
    public PlanRule? Rule { get; init; }

    /// <summary>Letters of looks: it is treated when debris was found at any of them; empty for always. A step of it may have a narrower condition.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];

    /// <summary>What spares it: <c>nothing</c>, <c>two-looks</c> or <c>one-look</c>.</summary>
    public string ClearedBy { get; init; } = "one-look";

    /// <summary>The clearance in µm, from which on a particle counts as of full size; <c>null</c> for none.</summary>
    public double? ClearanceUm { get; init; }

    /// <summary>What each grade that can come about asks for, in the order of the debris; exposed before guarded.</summary>
    public ImmutableArray<PlanAsk> Asks { get; init; } = [];

    /// <summary>How the first line of <see cref="Exposure"/> comes here, from the source to this part.</summary>
    public ImmutableArray<string> Path { get; init; } = [];
}

/// <summary>How one debris reaches a part.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Grade">How far.</param>
/// <param name="ReachUm">The largest particle that can get here in µm; <c>null</c> for unlimited.</param>
/// <param name="From">The source that the hops lead back to.</param>
/// <param name="Via">The part that the debris came through last; <c>null</c> for a source itself.</param>
public sealed record PlanExposure(string Debris, Grade Grade, double? ReachUm, string From, string? Via);

/// <summary>What the standard asks of a part for one debris that has come so far.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Grade">How far: exposed or guarded. A failed part, and a guarded one that its clearance or <see cref="PlanPart.ClearedBy"/> makes count so, is asked about as exposed.</param>
/// <param name="Treatment">The treatments.</param>
/// <param name="Rule">The rule they come from.</param>
public sealed record PlanAsk(string Debris, Grade Grade, ImmutableArray<TreatmentKind> Treatment, PlanRule Rule);

/// <summary>A rule of the standard.</summary>
/// <param name="File">Its file.</param>
/// <param name="Line">Its line.</param>
/// <param name="Because">Its reason.</param>
public sealed record PlanRule(string File, int Line, string Because);

/// <summary>Parts that would be reached too if another part had failed.</summary>
/// <param name="IfFailed">Look at this part.</param>
/// <param name="Parts">If it has failed, these are reached too, in the order of the family.</param>
/// <param name="AlsoFailed">These must have failed with it, or the parts are not reached; usually empty.</param>
public sealed record PlanConditional(string IfFailed, ImmutableArray<string> Parts, ImmutableArray<string> AlsoFailed);
