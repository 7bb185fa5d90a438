using Contam.Families;
using Contam.Plans;

namespace Contam.Drills;

/// <summary>
/// Makes exercises from a failure.
/// <para>
/// Every question has one right choice, told from the family, the spread, the stop line, the played plan and the plan with looks; wrong ones are near mistakes. A question that
/// the failure cannot pose is left out, with the reason.
/// </para>
/// <para>Cost: a plan without looks and one with, each with its first schedule, the stop line, and some hundred plays of the plan at most.</para>
/// </summary>
public static class Drilling
{
    /// <summary>Makes the exercise. The same request always gives the same exercise.</summary>
    /// <exception cref="ArgumentException">There is no failed part, or no debris.</exception>
    /// <exception cref="KeyNotFoundException">A failed part is not of the family.</exception>
    public static Drill Of(DrillRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Failures.IsDefaultOrEmpty)
            throw new ArgumentException("an exercise needs a failed part", nameof(request));
        if (request.Debris.IsDefaultOrEmpty)
            throw new ArgumentException("an exercise needs at least one debris", nameof(request));
        DrillRequest asked = request with { Failures = request.Failures.InOrderOf(request.Family), Debris = [.. request.Debris.Distinct()] };
        PlanDocument plan = Planner.Plan(new PlanRequest(asked.Family, asked.Standard, asked.Failures, asked.Debris) { TakesFirstSchedule = true });
        var ways = ShortestWays.From(asked);
        Posed[] posed =
        [
            NextReached.Pose(asked, ways),
            TrustedFilter.Pose(asked),
            OffFirst.Pose(asked, plan),
            WhereToLook.Pose(asked, ways),
            DirtyingOrder.Pose(asked, plan),
            LeftAlone.Pose(asked),
        ];
        return new Drill(
            asked,
            [.. posed.Select(one => one.Question).OfType<DrillQuestion>()],
            [.. posed.Select(one => one.LeftOut).OfType<LeftOutQuestion>()],
            ways.HopByHop());
    }
}
