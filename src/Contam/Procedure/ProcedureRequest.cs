using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What a procedure is made from.</summary>
/// <param name="Family">The family.</param>
/// <param name="Standard">The standard, for times and texts.</param>
/// <param name="Failed">The failed parts.</param>
/// <param name="Spreads">How far each debris has gone.</param>
/// <param name="Treatments">What every listed part gets.</param>
internal sealed record ProcedureRequest(
    Family Family,
    ShopStandard Standard,
    ImmutableArray<PartId> Failed,
    ImmutableArray<DebrisSpread> Spreads,
    ImmutableArray<PartTreatment> Treatments);
