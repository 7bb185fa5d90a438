using System.Collections.Immutable;

namespace Contam.Plans;

/// <summary>Reach and hops of one debris, under one reading of the clean findings.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="CleanFindings">Whether accepted clean findings count.</param>
/// <param name="Parts">Every part that is reached, in the order of the family.</param>
public sealed record PlanEvidence(string Debris, bool CleanFindings, ImmutableArray<PlanReach> Parts);

/// <summary>How one part is reached.</summary>
/// <param name="Part">The part.</param>
/// <param name="ReachUm">The largest particle in µm; <c>null</c> for unlimited.</param>
/// <param name="From">The source that the hops lead back to.</param>
/// <param name="Via">The part before it; <c>null</c> for a source.</param>
public sealed record PlanReach(string Part, double? ReachUm, string From, string? Via);
