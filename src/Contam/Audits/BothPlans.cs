using System.Collections.Immutable;
using Contam.Plans;

namespace Contam.Audits;

/// <summary>The plan for one failure with as many looks as pay, and that without any; one and the same where no look pays.</summary>
/// <param name="Branching">With looks: what a technician works by.</param>
/// <param name="Flat">Without: all that could be reached is treated.</param>
internal sealed record BothPlans(PlanDocument Branching, PlanDocument Flat)
{
    /// <summary>Both, or the one.</summary>
    public ImmutableArray<PlanDocument> Each => ReferenceEquals(Branching, Flat) ? [Flat] : [Flat, Branching];

    public static BothPlans Of(PlanRequest request)
    {
        PlanDocument branching = Planner.Plan(request with { MostLooks = HowFar.MostLooks, LookAt = null });
        return new BothPlans(branching, branching.Looks.IsEmpty ? branching : Planner.Plan(request with { MostLooks = 0, LookAt = null }));
    }
}
