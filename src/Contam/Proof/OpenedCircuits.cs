using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether what is made safe, drained and tried is what this plan opens: a circuit that something comes off is made safe first; a circuit at which nothing
/// is done is left alone; and what is tried before the first start has been open.
/// </summary>
internal static class OpenedCircuits
{
    /// <summary>The first circuit or part for which that does not hold, or <c>null</c>. Linear in plan and family.</summary>
    internal static string? FirstFault(PlanDocument plan, Family family) => Unsafe(plan.Steps.OrEmpty(), family) ?? ForNothing(plan, family);

    /// <summary>The first circuit that something comes off before it is made safe, or <c>null</c>. Linear in steps and family.</summary>
    internal static string? Unsafe(ImmutableArray<PlanStep> steps, Family family)
    {
        var off = new Dictionary<string, PlanStep>(StringComparer.Ordinal);
        foreach (PlanStep step in steps.Where(IsOff))
        {
            foreach (string part in PlayedStep.PartsOf(step))
                off.TryAdd(part, step);
        }

        Dictionary<string, PlanStep> safe = SafeOf(steps);
        return family.Circuits.Select(circuit => Unsafe(circuit, off, safe)).FirstOrDefault(fault => fault is not null);
    }

    private static string? Unsafe(Circuit circuit, Dictionary<string, PlanStep> off, Dictionary<string, PlanStep> safe)
    {
        PlanStep? made = safe.GetValueOrDefault(circuit.Name);
        foreach (PartId part in circuit.Parts)
        {
            if (!off.TryGetValue(part.Value, out PlanStep? opened))
                continue;
            if (made is null)
                return $"{part} comes off, but no step makes the {circuit.Name} circuit safe: it would be opened under pressure or full";
            if (made.Number >= opened.Number || !(opened.Start >= made.Finish))
            {
                return FormattableString.Invariant(
                    $"step {opened.Number} takes {part} off before step {made.Number} has made the {circuit.Name} circuit safe: it would be opened under pressure or full");
            }
        }

        return null;
    }

    /// <summary>The first circuit that is made safe and left alone, or part that is tried and never opened, or <c>null</c>. Linear in plan and family.</summary>
    internal static string? ForNothing(PlanDocument plan, Family family)
    {
        ImmutableArray<PlanStep> steps = plan.Steps.OrEmpty();
        HashSet<string> off = [.. steps.Where(IsOff).SelectMany(PlayedStep.PartsOf)];
        HashSet<string> touched = [.. steps.Where(step => step.Phase != Phase.Prove && (PlayedStep.IsTreatmentOf(step) || PlayedStep.IsConditionLook(step))).SelectMany(PlayedStep.PartsOf)];
        HashSet<string> worked = [.. steps.Where(step => PlayedStep.IsTreatmentOf(step) && step.Action != StepAction.Inspect).SelectMany(PlayedStep.PartsOf)];
        Dictionary<string, PlanStep> safe = SafeOf(steps);
        return family.Circuits.Select(circuit => Needless(circuit, off, touched, worked, safe, family)).FirstOrDefault(fault => fault is not null)
            ?? steps.Select(step => TriedUnopened(step, off, worked, family)).FirstOrDefault(fault => fault is not null);
    }

    private static bool IsOff(PlanStep step) => step is { Action: StepAction.Remove, Phase: not Phase.Prove };

    private static Dictionary<string, PlanStep> SafeOf(ImmutableArray<PlanStep> steps)
    {
        var safe = new Dictionary<string, PlanStep>(StringComparer.Ordinal);
        foreach (PlanStep step in steps.Where(step => step is { Action: StepAction.MakeSafe, Circuit: not null }))
            safe.TryAdd(step.Circuit!, step);
        return safe;
    }

    private static string? Needless(Circuit circuit, HashSet<string> off, HashSet<string> touched, HashSet<string> worked, Dictionary<string, PlanStep> safe, Family family)
    {
        if (!safe.TryGetValue(circuit.Name, out PlanStep? step))
            return null;
        // A link belongs to its circuit without standing on one of its runs.
        IEnumerable<PartId> members = circuit.Parts.Concat(family.Joints.Where(joint => joint.Circuit == circuit.Name).SelectMany(joint => new[] { joint.From, joint.To }));
        if (members.Any(part => off.Contains(part.Value) || (touched.Contains(part.Value) && Opens(family[part]))))
            return null;
        return FormattableString.Invariant($"step {step.Number} makes the {circuit.Name} circuit safe, which nothing in this plan opens: it would be emptied for nothing");

        // A look that needs nothing off opens nothing, unless something is drawn off for it.
        bool Opens(Part part) => part.Kind.IsReservoir || part.LookOpens || worked.Contains(part.Id.Value);
    }

    private static string? TriedUnopened(PlanStep step, HashSet<string> off, HashSet<string> worked, Family family)
    {
        if (step is not { Phase: Phase.Prove, Action: StepAction.Prove, DueAfterRunningHours: null })
            return null;
        string? whole = PlayedStep.PartsOf(step).FirstOrDefault(part => !off.Contains(part) && !worked.Contains(part) && !IsOpenedFromOutside(part));
        return whole is null ? null : FormattableString.Invariant($"step {step.Number} tries {whole}, which this plan never opens: time for nothing");

        // What closes a fluid in stands on what it closes: a carrier with its lips opens the case.
        bool IsOpenedFromOutside(string part) => family.Parts.Any(on =>
            off.Contains(on.Id.Value) && on.StandsOn.Any(below => below.Value == part) && family.Circuits.Any(circuit => circuit.Parts.Contains(on.Id) && circuit.Parts.Any(one => one.Value == part)));
    }
}
