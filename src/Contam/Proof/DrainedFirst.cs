using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether every reservoir is drained before something below it comes off: whatever the flow of a circuit leads to from it, and the reservoir itself.
/// </summary>
internal static class DrainedFirst
{
    /// <summary>The first part that comes off too early, or <c>null</c>. Time: that of sorting the steps, and linear in parts and joints.</summary>
    internal static string? FirstFault(ImmutableArray<PlanStep> steps, Family family)
    {
        var off = new Dictionary<int, PlanStep>();
        var drained = new Dictionary<int, PlanStep>();
        foreach (PlanStep step in steps)
        {
            foreach (int part in Places(step.Drains?.OrEmpty() ?? [], family))
                drained.TryAdd(part, step);
            foreach (int part in step is { Action: StepAction.Remove, Phase: not Phase.Prove } ? Places([.. PlayedStep.PartsOf(step)], family) : [])
                off.TryAdd(part, step);
        }

        return family.Circuits.Select(circuit => FirstFault(circuit, off, drained, family)).FirstOrDefault(fault => fault is not null);
    }

    private static string? FirstFault(Circuit circuit, Dictionary<int, PlanStep> off, Dictionary<int, PlanStep> drained, Family family)
    {
        ILookup<int, int> into = family.Joints
            .Where(joint => joint.Circuit == circuit.Name && joint.OnlyIfFailed is null && (joint.When & family.States) != EngineStates.None)
            .ToLookup(joint => family.IndexOf(joint.To), joint => family.IndexOf(joint.From));
        var seen = new HashSet<int>();
        // By start, so that the first to come off below a reservoir is the one that finds it.
        foreach (int first in circuit.Parts.Select(family.IndexOf).Where(off.ContainsKey).OrderBy(part => off[part].Start).ThenBy(part => off[part].Number))
        {
            var queue = new Queue<int>();
            if (seen.Add(first))
                queue.Enqueue(first);
            while (queue.TryDequeue(out int part))
            {
                if (family.Parts[part].Kind.IsReservoir && IsTooEarly(off[first], drained.GetValueOrDefault(part)))
                {
                    return FormattableString.Invariant(
                        $"step {off[first].Number} takes {family.Parts[first].Id} off before {family.Parts[part].Id} of the {circuit.Name} circuit is drained: what stands there would run out");
                }

                foreach (int from in into[part])
                {
                    if (seen.Add(from))
                        queue.Enqueue(from);
                }
            }
        }

        return null;
    }

    private static bool IsTooEarly(PlanStep off, PlanStep? drained) => drained is null || drained.Number >= off.Number || off.Start < drained.Finish;

    private static IEnumerable<int> Places(ImmutableArray<string> parts, Family family) => parts.Select(id => family.IndexOf(new PartId(id))).Where(part => part >= 0);
}
