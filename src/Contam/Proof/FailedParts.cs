using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>The failed parts of a plan, and what the plan says that each shed. Parts are meant by their place in the family; ids that it does not have are left out.</summary>
internal sealed class FailedParts
{
    private readonly ImmutableArray<(int Part, PlanFailure Said)> all;

    /// <summary>Linear in the failures.</summary>
    internal FailedParts(Family family, PlanDocument plan)
    {
        all = [.. plan.Failed.OrEmpty().Select(failure => (family.IndexOf(new PartId(failure.Part)), failure)).Where(failure => failure.Item1 >= 0)];
        Parts = [.. all.Select(failure => failure.Part).Distinct()];
    }

    /// <summary>Every failed part, each once, whatever it shed: it holds nothing back, and what waits for its failure is open.</summary>
    internal ImmutableArray<int> Parts { get; }

    /// <summary>Each failure that shed this debris, with the largest particle that it shed: what was seen, else what the family says, else any.</summary>
    internal IEnumerable<(int Part, ParticleSize Size)> ShedOf(DebrisPassages passages) =>
        from failure in all
        where failure.Said.Debris.OrEmpty().Contains(passages.Debris.Name)
        select (failure.Part, passages.Debris.HasSize && failure.Said.UpToUm is { } seen and > 0 ? ParticleSize.FromMicrometres(seen) : passages.ShedBy(failure.Part));
}
