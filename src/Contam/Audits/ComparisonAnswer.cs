using System.Collections.Immutable;

namespace Contam.Audits;

/// <summary>The same failures under two families, or under two standards.</summary>
/// <param name="First">What the first is called.</param>
/// <param name="Second">What the second is called.</param>
/// <param name="Failures">Every failure that was compared, in the order of the first.</param>
public sealed record ComparisonAnswer(string First, string Second, ImmutableArray<ComparedFailure> Failures)
{
    /// <summary>Failures that only the first has.</summary>
    public ImmutableArray<FailureName> OnlyFirst { get; init; } = [];

    /// <summary>Failures that only the second has.</summary>
    public ImmutableArray<FailureName> OnlySecond { get; init; } = [];

    /// <summary>How many plans change.</summary>
    public int Changed => Failures.Count(failure => failure.Plans.IsChanged);

    /// <summary>What all plans together take in bench hours in the second, less in the first.</summary>
    public double BenchHours => Math.Round(Failures.Sum(failure => failure.Plans.BenchHours), 2);
}

/// <summary>One failure, planned twice.</summary>
/// <param name="Name">The failure.</param>
/// <param name="Plans">The two plans.</param>
public sealed record ComparedFailure(FailureName Name, PlanComparison Plans);

/// <summary>A failure by name.</summary>
/// <param name="Family">The id of the family; of two compared, the first's.</param>
/// <param name="Parts">The ids of the failed parts.</param>
/// <param name="Debris">What they shed.</param>
public sealed record FailureName(string Family, ImmutableArray<string> Parts, ImmutableArray<string> Debris);
