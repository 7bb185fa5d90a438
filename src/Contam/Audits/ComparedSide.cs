using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Audits;

/// <summary>One side of a comparison: a family, read with the standard that it is planned by.</summary>
/// <param name="Family">The family.</param>
/// <param name="Standard">The standard, its layers joined.</param>
public sealed record ComparedSide(Family Family, ShopStandard Standard);

/// <summary>A failure to be compared.</summary>
/// <param name="Failures">The failed parts, of both families, with what each shed.</param>
/// <param name="Debris">What is followed.</param>
public sealed record ComparedQuestion(ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris);
