using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>What a flush does in every bore.</summary>
/// <param name="Flow">The circuit's flow: what the rig gives, or the least that is enough everywhere.</param>
/// <param name="WantedReynolds">The number wanted.</param>
/// <param name="Bores">Each bore, in the order asked.</param>
public sealed record FlushAnswer(FlowRate Flow, double WantedReynolds, ImmutableArray<FlushedBore> Bores)
{
    /// <summary>Whether every bore reaches the wanted number.</summary>
    public bool IsEnough => Bores.All(bore => bore.Enough);
}

/// <summary>What a flush does in one bore.</summary>
/// <param name="Asked">The bore.</param>
/// <param name="Flow">What runs through it: the circuit's flow, or its even part of it.</param>
/// <param name="Velocity">Mean velocity.</param>
/// <param name="Reynolds">Reynolds number.</param>
/// <param name="Regime">How the fluid runs.</param>
/// <param name="Enough">Whether it reaches the wanted number.</param>
public sealed record FlushedBore(BoreToFlush Asked, FlowRate Flow, Velocity Velocity, double Reynolds, Regime Regime, bool Enough)
{
    /// <summary>The part that has the bore.</summary>
    public PartId Part => Asked.Part;

    /// <summary>What it takes of the pressure, smooth and straight; <c>null</c> where length or density is not said.</summary>
    public Pressure? Loss { get; init; }

    /// <summary>What would mend it; <c>null</c> exactly where it is enough.</summary>
    public FlushMend? Mend { get; init; }
}

/// <summary>Each of the ways to bring one bore to the wanted number; any one alone does. ISO 23309 would have it thinner or hotter rather than more flow.</summary>
/// <param name="ThinnerTo">The viscosity at which the flow it now gets is enough; <c>null</c> where it gets none.</param>
/// <param name="HotterTo">The temperature at which the fluid is that thin; <c>null</c> where that is not known or beyond reach.</param>
/// <param name="NoTemperatureBecause">Why there is no temperature; <c>null</c> exactly where there is one.</param>
/// <param name="CircuitFlow">The circuit's flow that would be enough here with all branches open.</param>
/// <param name="FlowAlone">The flow that is enough when this branch alone is flushed and its fellows are shut.</param>
/// <param name="OneBranchAtATime">Whether the flow at hand is enough for this branch alone: shutting its fellows is all it takes.</param>
public sealed record FlushMend(
    KinematicViscosity? ThinnerTo,
    Temperature? HotterTo,
    string? NoTemperatureBecause,
    FlowRate CircuitFlow,
    FlowRate FlowAlone,
    bool OneBranchAtATime);
