using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>The jobs of a clean-out with their order.</summary>
/// <param name="Graph">The jobs and what waits for what.</param>
/// <param name="Treatments">What every listed part gets, with the flush of a loop added where it is flushed with one.</param>
/// <param name="Opened">The circuits that are opened, in the order of the family.</param>
/// <param name="Renewed">The parts of which a new one is needed, in the order of the family; what comes inside of another is not among them.</param>
internal sealed record ProcedureDraft(JobGraph Graph, ImmutableArray<PartTreatment> Treatments, ImmutableArray<Circuit> Opened, ImmutableArray<Part> Renewed);
