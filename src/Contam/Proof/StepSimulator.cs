using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Plays the steps of a plan against the engine family: which parts are dirty, which are off, what each flush and the first run carry on.
/// Knows nothing of how the order was made, and sees only the plan and the family.
/// </summary>
/// <remarks>
/// The model, ours, and cautious where the bench could go either way:
/// <list type="bullet">
/// <item>A part that the plan lists as exposed or guarded begins dirty, or suspect where its treatment is only to inspect or test; all others begin clean.</item>
/// <item>A step takes effect when it finishes, and what it needs must hold when it starts and still when it finishes. At one moment, what finishes goes before what starts, and then the number decides.</item>
/// <item>The last cleaning of a part (flush, clean or replace; of a suspect part the look for debris, or the last test where it is not looked at) makes it clean. Earlier ones change nothing. A suspect part that a flush has carried debris into is no longer cured by a look.</item>
/// <item>A look for debris shows something only as long as nothing has cleaned, flushed or renewed the part, and no flush has gone through it.</item>
/// <item>A flush of a part in its place carries debris over open joints into every fitted part beyond that is not blanked, and on through it; barriers are not relied on.</item>
/// </list>
/// </remarks>
public static class StepSimulator
{
    /// <summary>
    /// Plays all steps. Time: that of sorting the steps, and linear in parts, joints and steps for steps that blank what lies beyond a flush
    /// or take it off; a flush that does neither may cost once more what lies beyond it.
    /// </summary>
    /// <param name="family">The family that the plan is for. A plan of another family gives faults, not an exception.</param>
    /// <param name="plan">The plan; any document at all.</param>
    public static Simulation Play(Family family, PlanDocument plan)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(plan);
        return new StepPlay(family, plan).Play();
    }

    /// <summary>
    /// Plays steps one after the other in this order, whatever numbers, times and predecessors they bear: each begins when the one before it is finished. For
    /// work as it is really done. Cost as <see cref="Play"/>.
    /// </summary>
    /// <param name="family">The family that the plan is for.</param>
    /// <param name="plan">The plan: what is dirty at first, and what has failed. Its own steps are not played.</param>
    /// <param name="order">The steps. In the answer they are numbered by their place here, from 1.</param>
    public static Simulation PlayInOrder(Family family, PlanDocument plan, ImmutableArray<PlanStep> order)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(plan);
        return Play(family, plan with { Steps = [.. order.Select((step, place) => step with { Number = place + 1, After = [], Start = place, Finish = place })] });
    }
}
