using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// What a filter takes out. Definition: β at a size is the number of particles of that size and larger before the filter, divided
/// by the number after it; it takes out the share 1 − 1/β of them in one pass. Source: ISO 16889. A β was measured on a rig with steady
/// flow; a loaded filter on an engine that shakes does worse.
/// </summary>
public static class FilterBeta
{
    /// <summary>The share that a filter takes out in one pass.</summary>
    /// <param name="beta">At least 1: below that a filter would be adding particles.</param>
    public static Sum<Share> Efficiency(double beta) =>
        BetaFault(beta) is { } fault ? fault : new Share((beta - 1) / beta);

    /// <summary>The β of a filter that takes out a share in one pass.</summary>
    /// <param name="efficiency">At least 0, below 1: nothing takes out all.</param>
    public static Sum<double> Of(Share efficiency)
    {
        if (Expect.NotNegative("the efficiency", efficiency.Percent, "%") is { } fault)
            return fault;
        return efficiency.OfOne < 1
            ? 1 / (1 - efficiency.OfOne)
            : new Fault($"the efficiency is {Expect.Show(efficiency.Percent)} %; less than 100 % was expected");
    }

    /// <summary>The β from counts before and after a filter, both of one size and larger.</summary>
    /// <param name="upstream">Before it, above 0.</param>
    /// <param name="downstream">After it, above 0 (where none were counted, β cannot be told: count more) and not more than before.</param>
    public static Sum<double> Of(ParticleConcentration upstream, ParticleConcentration downstream)
    {
        Fault? fault = Expect.Positive("the count before the filter", upstream.PerMillilitre, "per mL")
            ?? Expect.Positive("the count after the filter", downstream.PerMillilitre, "per mL");
        if (fault is not null)
            return fault;
        double beta = upstream.PerMillilitre / downstream.PerMillilitre;
        return (Expect.Computable("beta", beta) ?? BetaFault(beta)) is { } beyond ? beyond : beta;
    }

    internal static Fault? BetaFault(double beta) =>
        beta >= 1 && double.IsFinite(beta) ? null : Expect.Positive("beta", beta, "") ?? new Fault($"beta is {Expect.Show(beta)}; at least 1 was expected");
}
