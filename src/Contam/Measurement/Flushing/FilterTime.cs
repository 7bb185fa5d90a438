using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;

namespace Contam.Measurement.Flushing;

/// <summary>A filter's β at the three sizes of the cleanliness code; <c>null</c> for not said. Each at least 1.</summary>
/// <param name="At4">At 4 µm(c) and larger.</param>
/// <param name="At6">At 6 µm(c) and larger.</param>
/// <param name="At14">At 14 µm(c) and larger.</param>
public sealed record BetaRatios(double? At4, double? At6, double? At14);

/// <summary>How long a filter must run until each size is down to the wanted number.</summary>
/// <param name="At4">For 4 µm(c) and larger; zero where it is clean enough already.</param>
/// <param name="At6">For 6 µm(c) and larger.</param>
/// <param name="At14">For 14 µm(c) and larger.</param>
public sealed record FilterTimes(TimeSpan At4, TimeSpan At6, TimeSpan At14)
{
    /// <summary>The longest of the three: when the code is reached.</summary>
    public TimeSpan Longest => new(Math.Max(At4.Ticks, Math.Max(At6.Ticks, At14.Ticks)));
}

/// <summary>
/// How long fluid must go round through a filter. Definition: the reservoir is mixed at all times, nothing new gets in, and each pass
/// takes out 1 − 1/β, so that the count falls as exp(−(1 − 1/β)·Q·t/V). What is still being shed, and dirt in corners that the flow does
/// not stir, make it take longer: the answer is the least. Source: the mass balance of a stirred tank, ours; β by ISO 16889.
/// </summary>
public static class FilterTime
{
    /// <summary>How long until one size is down.</summary>
    /// <param name="from">The count now, at least 0.</param>
    /// <param name="to">The count wanted, above 0.</param>
    /// <param name="beta">The filter's at that size; at least 1, and 1 alone never gets there.</param>
    /// <param name="system">What goes round, above 0.</param>
    /// <param name="flow">Through the filter, above 0.</param>
    public static Sum<TimeSpan> Of(ParticleConcentration from, ParticleConcentration to, double beta, Volume system, FlowRate flow)
    {
        Fault? fault = Expect.NotNegative("the count", from.PerMillilitre, "per mL") ?? Expect.Positive("the count wanted", to.PerMillilitre, "per mL");
        if (fault is not null)
            return fault;
        if (!FilterBeta.Efficiency(beta).TryGet(out Share efficiency, out fault))
            return fault;
        if (from <= to)
            return TimeSpan.Zero;
        return efficiency.OfOne > 0
            ? Dilution.Time(Math.Log(from.PerMillilitre / to.PerMillilitre) / efficiency.OfOne, system, flow)
            : new Fault("beta is 1, so the filter takes nothing out; more than 1 was expected");
    }

    /// <summary>
    /// How long until a wanted code is reached. A β holds for larger sizes too (a filter lets no more of them through), so one that is
    /// said at 4 stands in at 6 and 14; one that is said at a larger size says nothing of a smaller.
    /// </summary>
    /// <param name="from">The counts now.</param>
    /// <param name="target">The code wanted: scale numbers 0 to 28.</param>
    /// <param name="filter">The filter.</param>
    /// <param name="system">What goes round, above 0.</param>
    /// <param name="flow">Through the filter, above 0.</param>
    public static Sum<FilterTimes> ToCode(ParticleCounts from, (int At4, int At6, int At14) target, BetaRatios filter, Volume system, FlowRate flow)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(filter);
        if (from.Fault() is { } wrong)
            return wrong;
        if (!ParticleCounts.MostOf(target).TryGet(out ParticleCounts? to, out Fault? fault))
            return fault;
        Sum<TimeSpan> at4 = Size("4", from.At4, to.At4, filter.At4, system, flow);
        Sum<TimeSpan> at6 = Size("6", from.At6, to.At6, filter.At6 ?? filter.At4, system, flow);
        Sum<TimeSpan> at14 = Size("14", from.At14, to.At14, filter.At14 ?? filter.At6 ?? filter.At4, system, flow);
        return (at4.Fault ?? at6.Fault ?? at14.Fault) is { } first ? first : new FilterTimes(at4.Value, at6.Value, at14.Value);
    }

    private static Sum<TimeSpan> Size(string size, ParticleConcentration from, ParticleConcentration to, double? beta, Volume system, FlowRate flow)
    {
        if (from <= to)
            return TimeSpan.Zero;
        if (beta is null)
            return new Fault($"no beta is said at {size} µm(c) or smaller; without one the time for that size cannot be told");
        Sum<TimeSpan> time = Of(from, to, beta.Value, system, flow);
        return time.Fault is { } fault ? new Fault($"at {size} µm(c): {fault.Text}") : time;
    }
}
