using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>A bore that a flush runs through.</summary>
/// <param name="Part">The part that has it.</param>
/// <param name="Bore">The inner diameter, above 0.</param>
public sealed record BoreToFlush(PartId Part, Length Bore)
{
    /// <summary>Among how many like branches the circuit's flow divides here, this one counted; 1 where all of it goes through. Even division is assumed.</summary>
    public int Branches { get; init; } = 1;

    /// <summary>Its length, for the pressure it takes; <c>null</c> for not said.</summary>
    public Length? Length { get; init; }
}

/// <summary>What is asked about a flush.</summary>
/// <param name="Bores">The bores it runs through, at least one.</param>
/// <param name="Viscosity">The fluid's, at the flushing temperature at the coldest place.</param>
public sealed record FlushQuestion(ImmutableArray<BoreToFlush> Bores, KinematicViscosity Viscosity)
{
    /// <summary>The Reynolds number wanted in every bore; above 0. More than 4000 by ISO 23309; 3000 by an older rule of the trade.</summary>
    public double WantedReynolds { get; init; } = BoreFlow.TurbulentFrom;

    /// <summary>What the rig gives; <c>null</c> asks for the least that gives every bore the wanted number.</summary>
    public FlowRate? Flow { get; init; }

    /// <summary>How the fluid thins with heat, to say how hot would do; <c>null</c> for not known.</summary>
    public ViscosityCurve? Curve { get; init; }

    /// <summary>The fluid's density, for the pressure that bores take; <c>null</c> for not said.</summary>
    public Density? Density { get; init; }
}
