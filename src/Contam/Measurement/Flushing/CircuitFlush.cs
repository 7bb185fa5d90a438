using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>The flush of one circuit of a family, with every figure that was asked for.</summary>
/// <param name="Circuit">The circuit's name.</param>
/// <param name="Fluid">What is flushed with, in words.</param>
/// <param name="At">How warm it is.</param>
/// <param name="Viscosity">Its viscosity there.</param>
/// <param name="Answer">What it does in every bore.</param>
public sealed record CircuitFlush(string Circuit, string Fluid, Temperature At, KinematicViscosity Viscosity, FlushAnswer Answer)
{
    /// <summary>Whether the flow was given; else it is the least that is enough in every bore.</summary>
    public bool FlowWasGiven { get; init; }

    /// <summary>What goes round, where it is known.</summary>
    public Volume? System { get; init; }

    /// <summary>The dilution that was asked for, or <c>null</c>.</summary>
    public DilutionAnswer? Dilution { get; init; }

    /// <summary>The filtering that was asked for, or <c>null</c>.</summary>
    public FilterAnswer? Filter { get; init; }

    /// <summary>What is assumed, each a clause without a full stop.</summary>
    public ImmutableArray<string> Assumed { get; init; } = [];
}

/// <summary>How much must go through for a dilution.</summary>
/// <param name="Left">The share of the old that may be left.</param>
/// <param name="Volumes">Volumes of the system, where new and old mix at once.</param>
/// <param name="Time">How long that takes at the flow.</param>
public sealed record DilutionAnswer(Share Left, double Volumes, TimeSpan Time);

/// <summary>How long a filter must run.</summary>
/// <param name="From">The code now.</param>
/// <param name="To">The code wanted.</param>
/// <param name="Filter">The filter.</param>
/// <param name="Times">How long for each size.</param>
public sealed record FilterAnswer((int At4, int At6, int At14) From, (int At4, int At6, int At14) To, BetaRatios Filter, FilterTimes Times);
