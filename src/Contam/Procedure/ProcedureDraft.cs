using System.Collections.Immutable;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>The jobs of a clean-out with their order.</summary>
/// <param name="Graph">The jobs and what waits for what.</param>
/// <param name="Treatments">What every listed part gets, with the flush of a loop added where it is flushed with one.</param>
internal sealed record ProcedureDraft(JobGraph Graph, ImmutableArray<PartTreatment> Treatments);
