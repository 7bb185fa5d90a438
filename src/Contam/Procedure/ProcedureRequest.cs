using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What a procedure is made from.</summary>
/// <param name="Family">The family.</param>
/// <param name="Standard">The standard, for times and texts.</param>
/// <param name="Failures">The failed parts, with what each shed.</param>
/// <param name="Spreads">How far each debris has gone.</param>
/// <param name="Treatments">What every listed part gets.</param>
internal sealed record ProcedureRequest(
    Family Family,
    ShopStandard Standard,
    ImmutableArray<PartFailure> Failures,
    ImmutableArray<DebrisSpread> Spreads,
    ImmutableArray<PartTreatment> Treatments)
{
    /// <summary>The failed parts, each once, whatever they shed.</summary>
    public ImmutableArray<PartId> Failed { get; } = Failures.PartsOf();

    /// <summary>The looks that decide how far to go, in order of work.</summary>
    public ImmutableArray<PlannedLook> Looks { get; init; } = [];

    /// <summary>When a treatment is done; what is not said is done whatever the looks show.</summary>
    public IReadOnlyDictionary<(PartId Part, TreatmentKind Treatment), LookCondition> When { get; init; } = new Dictionary<(PartId, TreatmentKind), LookCondition>();
}

/// <summary>A look that decides.</summary>
/// <param name="Places">Where.</param>
/// <param name="Due">When it is made; on earlier looks only.</param>
internal sealed record PlannedLook(ImmutableArray<Part> Places, LookCondition Due);
