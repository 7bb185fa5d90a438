using Contam.Families;
using Contam.Graphs;
using Contam.Problems;

namespace Contam.Lints;

/// <summary>What may be forgotten in how fluids run: parts that nothing joins, ends, returns, fluids that meet.</summary>
internal static class FlowLints
{
    public static void Look(Family family, FlowMap map, LintSink sink)
    {
        OnNoRun(family, sink);
        DeadEnds(family, map, sink);
        foreach (Circuit circuit in family.Circuits.Where(circuit => circuit.Fluid is null && !IsOfGas(circuit.Name)))
            sink.At(LintCodes.NoFluid, circuit, LintProblems.NoFluid(circuit.Place, circuit.Name, family.Fluids.Select(fluid => fluid.Id)));
        foreach (Circuit circuit in family.Circuits)
            Returns(family, circuit, map, sink);
        FluidsMix(family, sink);
    }

    private static void OnNoRun(Family family, LintSink sink)
    {
        var joined = family.Joints.SelectMany(joint => new[] { joint.From, joint.To }).ToHashSet();
        // Where there is no circuit at all, that is one thing to say and not one for each part.
        if (family.Circuits.IsEmpty && joined.Count == 0)
        {
            foreach (Part part in family.Parts)
                sink.At(LintCodes.OnNoRun, part, _ => LintProblems.NoCircuits(new SourceSpan(family.File, 1, 1)));
            return;
        }

        foreach (Part part in family.Parts.Where(part => !joined.Contains(part.Id)))
            sink.At(LintCodes.OnNoRun, part, name => LintProblems.OnNoRun(part.Place, name));
    }

    // Air and exhaust are neither ordered nor flushed with, so that nothing hangs on their being named.
    private static bool IsOfGas(string circuit) => circuit.Split('-').Any(word => word is "air" or "exhaust" or "gas" or "breather");

    private static void DeadEnds(Family family, FlowMap map, LintSink sink)
    {
        var leadsOn = family.Joints.Where(map.Flows).Select(joint => joint.From).ToHashSet();
        var joined = family.Joints.SelectMany(joint => new[] { joint.From, joint.To }).ToHashSet();
        foreach (Circuit circuit in family.Circuits)
        {
            foreach (PartId end in circuit.RunEnds)
            {
                Part part = family[end];
                // A run of one part joins nothing; that is told as such.
                if (!part.Kind.FluidMayEnd && !leadsOn.Contains(end) && joined.Contains(end))
                    sink.At(LintCodes.DeadEnd, part, circuit, name => LintProblems.DeadEnd(part.Place, name, part.Kind.Name, circuit.Name));
            }
        }
    }

    private static void Returns(Family family, Circuit circuit, FlowMap map, LintSink sink)
    {
        if (family.Fluids.Any(fluid => fluid.Id == circuit.Fluid && fluid.IsFree))
            return;
        Joint[] joints = [.. family.Joints.Where(joint => joint.Circuit == circuit.Name && map.Flows(joint))];
        // What leaves a part comes back to it exactly where a joint from it stays within its loops.
        int[] loopOf = StronglyConnectedComponents.Of(family.Parts.Length, joints.Select(joint => (family.IndexOf(joint.From), family.IndexOf(joint.To)))).Component;
        ILookup<PartId, Joint> from = joints.ToLookup(joint => joint.From);
        foreach (Part part in circuit.Parts.Select(id => family[id]).Where(part => part.Kind.IsReservoir && from.Contains(part.Id)))
        {
            if (!from[part.Id].Any(joint => loopOf[family.IndexOf(joint.To)] == loopOf[family.IndexOf(part.Id)]))
                sink.At(LintCodes.DoesNotClose, part, circuit, name => LintProblems.DoesNotClose(circuit.Place, circuit.Name, name, part.Place));
        }
    }

    private static void FluidsMix(Family family, LintSink sink)
    {
        // A circuit that names no fluid is taken to have one of its own.
        var fluidOf = family.Circuits.ToDictionary(circuit => circuit.Name, circuit => circuit.Fluid is { } fluid ? "fluid " + fluid : "circuit " + circuit.Name, StringComparer.Ordinal);
        // What waits for a failure is where fluids meet that should not, so it puts a part in no circuit.
        ILookup<PartId, string> circuitsOf = family.Joints.Where(joint => joint.OnlyIfFailed is null)
            .SelectMany(joint => new[] { (Part: joint.From, joint.Circuit), (Part: joint.To, joint.Circuit) })
            .Distinct()
            .ToLookup(one => one.Part, one => one.Circuit);
        foreach (Part part in family.Parts.Where(part => !part.Kind.JoinsFluids))
        {
            string[] circuits = [.. family.Circuits.Select(circuit => circuit.Name).Where(circuitsOf[part.Id].Contains)];
            if (circuits.Select(circuit => fluidOf[circuit]).Distinct(StringComparer.Ordinal).Count() > 1)
                sink.At(LintCodes.FluidsMix, part, name => LintProblems.FluidsMix(part.Place, name, part.Kind.Name, circuits));
        }
    }
}
