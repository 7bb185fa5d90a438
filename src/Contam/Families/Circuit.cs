using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>One fluid's way through the engine.</summary>
/// <param name="Name">Kebab-case name: air, fuel, oil, cooling, or another.</param>
/// <param name="Place">Where it is described.</param>
public sealed record Circuit(string Name, SourceSpan Place)
{
    /// <summary>The id of its fluid, or <c>null</c> for not said.</summary>
    public string? Fluid { get; init; }

    /// <summary>The parts on its runs in flow order: in the order in which the runs name them first, each once.</summary>
    public ImmutableArray<PartId> Parts { get; init; } = [];

    /// <summary>The last part of every run, each once: where a run ends.</summary>
    public ImmutableArray<PartId> RunEnds { get; init; } = [];

    /// <summary>What a check would warn of here and is meant so, each code once.</summary>
    public ImmutableArray<Meant> Meant { get; init; } = [];
}

/// <summary>A fluid, for flushing sums.</summary>
/// <param name="Id">Its id in the family.</param>
/// <param name="Place">Where it is described.</param>
public sealed record Fluid(string Id, SourceSpan Place)
{
    /// <summary>Whether it comes from outside, as sea water does, and need not be ordered.</summary>
    public bool IsFree { get; init; }

    /// <summary>What it is, one of <see cref="FluidSort.All"/>; <c>null</c> for not said.</summary>
    public string? Sort { get; init; }

    /// <summary>Its density, or <c>null</c> for not said.</summary>
    public Quantities.Density? Density { get; init; }

    /// <summary>Kinematic viscosity at temperatures, by rising temperature, each temperature once.</summary>
    public ImmutableArray<(Quantities.Temperature At, Quantities.KinematicViscosity Viscosity)> Viscosity { get; init; } = [];
}
