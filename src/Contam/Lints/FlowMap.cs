using Contam.Families;
using Contam.Graphs;
using Contam.Spread;

namespace Contam.Lints;

/// <summary>Where fluid and debris get to in a family, for the lints.</summary>
internal sealed class FlowMap
{
    private readonly Family family;
    private readonly EngineStates flowing;

    public FlowMap(Family family)
    {
        this.family = family;
        EngineStates turning = family.States & (EngineStates.Running | EngineStates.Cranking);
        flowing = turning == EngineStates.None ? family.States : turning;
    }

    /// <summary>Whether fluid flows on through this joint in ordinary use: nothing need have failed, and not only what falls back when the engine stops.</summary>
    public bool Flows(Joint joint) => joint.OnlyIfFailed is null && (joint.When & flowing) != EngineStates.None;

    /// <summary>The parts that something from one of these parts can get to over joints that fit, those parts included. Cost: linear.</summary>
    public bool[] ReachedFrom(Func<Part, bool> isStart, Func<Joint, bool> fits) => Search(isStart, fits, isBackward: false);

    /// <summary>The parts from which something can get to one of these parts over joints that fit, those parts included. Cost: linear.</summary>
    public bool[] LeadingTo(Func<Part, bool> isEnd, Func<Joint, bool> fits) => Search(isEnd, fits, isBackward: true);

    private bool[] Search(Func<Part, bool> isStart, Func<Joint, bool> fits, bool isBackward)
    {
        PackedGraph graph = SpreadGraph.Pack(family, fits);
        return Reachable.From(isBackward ? graph.Reversed() : graph, Enumerable.Range(0, family.Parts.Length).Where(part => isStart(family.Parts[part])));
    }
}
