using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Plans;

namespace Contam.Jobs.Work;

/// <summary>
/// What makes two steps of two plans the same work. Numbers change from plan to plan; this does not.
/// <para>
/// Work at parts is the same where phase, action and parts are, and for looks and treatments also the debris that reaches those parts: a part
/// cleaned of metal is not clean of water. Taking off and putting back is the same whatever the debris. Steps that no part names, and those that
/// prove the engine, are the same only where they read the same: the cautious way, since one of them too many costs minutes. Two steps are known by their
/// name in the standard's frame instead, because their words follow the plan: ordering, which opens again only where there is more to order, and the hint where a look would save
/// work, which asks for nothing that must be done.
/// </para>
/// </summary>
internal static class StepKey
{
    /// <summary>The key of the step that orders what the order list names.</summary>
    public const string Order = "make safe/note//order";

    /// <summary>The keys of a plan's steps, in the order of the steps; each is there once.</summary>
    public static ImmutableArray<string> Of(PlanDocument plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var debrisAt = plan.Parts.ToDictionary(part => part.Id, part => part.Exposure.Where(line => line.Grade != Grade.Cleared).Select(line => line.Debris).ToArray(), StringComparer.Ordinal);
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var keys = ImmutableArray.CreateBuilder<string>(plan.Steps.Length);
        foreach (PlanStep step in plan.Steps)
        {
            string key = KeyOf(step, plan, debrisAt);
            // Should a plan ask for the same work twice, the second is another step.
            int times = seen[key] = seen.GetValueOrDefault(key) + 1;
            keys.Add(times == 1 ? key : FormattableString.Invariant($"{key} #{times}"));
        }

        return keys.MoveToImmutable();
    }

    /// <summary>The key of the step that puts this one part back.</summary>
    public static string OfRefit(string part) => $"{PlanWords.Of(Phase.Refit)}/{PlanWords.Of(StepAction.Refit)}/{part}";

    /// <summary>The parts of a step: the one, or the several, or none.</summary>
    public static ImmutableArray<string> PartsOf(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Part is { } part ? [part] : step.Parts;
    }

    private static string KeyOf(PlanStep step, PlanDocument plan, Dictionary<string, string[]> debrisAt)
    {
        ImmutableArray<string> parts = PartsOf(step);
        string work = $"{PlanWords.Of(step.Phase)}/{PlanWords.Of(step.Action)}/{string.Join(',', parts)}";
        if (step.Frame is FrameNames.Order or FrameNames.OrderSlowest)
            return Order;
        if (step.Frame is FrameNames.LookFirst)
            return $"{PlanWords.Of(step.Phase)}/{PlanWords.Of(step.Action)}//{FrameNames.LookFirst}";
        if (parts.IsEmpty || step.Phase == Phase.Prove)
            return $"{work}/{EntryChain.Sha256(step.Text)[..12]}";
        bool isOfDebris = step.Action is StepAction.Inspect or StepAction.Flush or StepAction.Clean or StepAction.Test
            || (step.Action == StepAction.Note && step.Phase != Phase.Refit);
        if (!isOfDebris)
            return work;
        var there = parts.SelectMany(part => debrisAt.GetValueOrDefault(part) ?? []).ToHashSet(StringComparer.Ordinal);
        return $"{work}/{string.Join('+', plan.Debris.Where(there.Contains))}";
    }
}
