using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Gauging;

/// <summary>How evenly a set of injectors delivers.</summary>
/// <param name="Spread">Most less least, as a share of the mean: what a <c>flow-balance</c> limit is held against.</param>
/// <param name="AgainstMean">Each against the mean, in the order given: 0.02 is 2 % above it.</param>
/// <param name="Most">The place of the one that delivers most, from 0; of several the first.</param>
/// <param name="Least">The place of the one that delivers least, from 0; of several the first.</param>
public sealed record FlowBalance(Share Spread, ImmutableArray<Share> AgainstMean, int Most, int Least)
{
    /// <summary>The balance of flows.</summary>
    /// <param name="flows">At least two, none negative, not all 0. A dead injector (0) is an ordinary reading.</param>
    public static Sum<FlowBalance> Of(ImmutableArray<FlowRate> flows) =>
        OfNumbers(flows.IsDefault ? [] : [.. flows.Select(flow => flow.LitresPerMinute)], "L/min");

    /// <summary>The balance of volumes delivered in one and the same time.</summary>
    /// <param name="volumes">At least two, none negative, not all 0.</param>
    public static Sum<FlowBalance> Of(ImmutableArray<Volume> volumes) =>
        OfNumbers(volumes.IsDefault ? [] : [.. volumes.Select(volume => volume.Litres)], "L");

    private static Sum<FlowBalance> OfNumbers(ImmutableArray<double> delivered, string unit)
    {
        if (delivered.Length < 2)
            return new Fault($"{Expect.Count(delivered.Length, "delivery is", "deliveries are")} given; at least 2 were expected");
        for (int i = 0; i < delivered.Length; i++)
        {
            if (Expect.NotNegative(FormattableString.Invariant($"delivery {i + 1}"), delivered[i], unit) is { } fault)
                return fault;
        }

        double mean = delivered.Average();
        if (mean == 0)
            return new Fault("nothing delivers anything; at least one delivery above 0 was expected");
        if (Expect.Computable("the mean", mean) is { } beyond)
            return beyond;
        int most = 0;
        int least = 0;
        for (int i = 1; i < delivered.Length; i++)
        {
            if (delivered[i] > delivered[most])
                most = i;
            if (delivered[i] < delivered[least])
                least = i;
        }

        return new FlowBalance(
            new Share((delivered[most] - delivered[least]) / mean),
            [.. delivered.Select(one => new Share((one - mean) / mean))],
            most,
            least);
    }
}
