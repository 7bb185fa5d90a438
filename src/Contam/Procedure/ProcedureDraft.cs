using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>The jobs of a clean-out with their order.</summary>
/// <param name="Graph">The jobs and what waits for what.</param>
/// <param name="Treatments">What every listed part gets, with the flush of a loop added where it is flushed with one.</param>
/// <param name="Opened">The circuits that are opened, in the order of the family, and when.</param>
/// <param name="Renewed">The parts of which a new one is needed, in the order of the family, and when; what comes inside of another is not among them.</param>
internal sealed record ProcedureDraft(
    JobGraph Graph, ImmutableArray<PartTreatment> Treatments, ImmutableArray<(Circuit Circuit, LookCondition When)> Opened, ImmutableArray<(Part Part, LookCondition When)> Renewed)
{
    /// <summary>The jobs of the deciding looks, by number.</summary>
    public required IReadOnlyList<Job?> Looks { get; init; }

    /// <summary>When each part is treated at all.</summary>
    public required IReadOnlyDictionary<PartId, LookCondition> TreatedWhen { get; init; }
}
