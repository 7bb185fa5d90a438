using Contam.Families;
using Contam.Measurement.Wording;

namespace Contam.Measurement.Gauging;

/// <summary>
/// Judges a band of values against a limit. A verdict changes at the limit's values alone, so the ends of the band, each such value in it
/// and the number just below that show every verdict that the band holds: of two neighbouring values the upper one's stands for the stretch between.
/// </summary>
internal static class Band
{
    /// <summary>What a figure is shown in: the unit's name, and how many of it make one of SI.</summary>
    internal readonly record struct Unit(string Name, double PerSi)
    {
        internal string Show(double value) => $"{Expect.Show(value * PerSi)} {Name}";
    }

    internal static Sum<Judgement> Judge(Limit limit, double reading, double uncertainty, Unit unit)
    {
        Fault? fault = Expect.Finite("the reading", reading * unit.PerSi, unit.Name) ?? Expect.NotNegative("the uncertainty", uncertainty * unit.PerSi, unit.Name);
        if (fault is not null)
            return fault;
        if (!double.IsFinite(limit.Good.Value) || (limit.Reject is not null && !double.IsFinite(limit.Reject.Value)))
            return new Fault($"{limit.Id} has no number to hold a reading against");
        double low = OnTheLimit(limit, reading - uncertainty);
        double high = OnTheLimit(limit, reading + uncertainty);
        Verdict mildest = Verdict.Reject;
        Verdict worst = Verdict.Good;
        foreach (double value in Probes(limit, low, high))
        {
            Verdict verdict = Of(limit, value);
            mildest = verdict < mildest ? verdict : mildest;
            worst = verdict > worst ? verdict : worst;
        }

        Verdict answer = mildest == worst ? worst : Verdict.Undecided;
        string shown = uncertainty > 0 ? $"{unit.Show(reading)} ± {unit.Show(uncertainty)}" : unit.Show(reading);
        return new Judgement(answer, mildest, worst, VerdictText.Because(limit, shown, answer, mildest, worst));
    }

    private static IEnumerable<double> Probes(Limit limit, double low, double high)
    {
        yield return low;
        yield return high;
        foreach (Threshold threshold in Thresholds(limit))
        {
            if (threshold.Value < low || threshold.Value > high)
                continue;
            yield return threshold.Value;
            yield return Math.Max(Math.BitDecrement(threshold.Value), low);
        }
    }

    private static IEnumerable<Threshold> Thresholds(Limit limit) =>
        limit.Reject is null ? [limit.Good] : [limit.Good, limit.Reject];

    private static double OnTheLimit(Limit limit, double value)
    {
        foreach (Threshold threshold in Thresholds(limit))
        {
            if (Math.Abs(value - threshold.Value) <= 1e-9 * Math.Abs(threshold.Value))
                return threshold.Value;
        }

        return value;
    }

    private static Verdict Of(Limit limit, double value)
    {
        if (limit.Reject is not null && Meets(limit.Reject, value))
            return Verdict.Reject;
        if (Meets(limit.Good, value))
            return Verdict.Good;
        return limit.Reject is null ? Verdict.Reject : Verdict.Marginal;
    }

    private static bool Meets(Threshold threshold, double value) => threshold.Comparison switch
    {
        Comparison.AtMost => value <= threshold.Value,
        Comparison.Below => value < threshold.Value,
        Comparison.AtLeast => value >= threshold.Value,
        Comparison.Above => value > threshold.Value,
        _ => throw new ArgumentOutOfRangeException(nameof(threshold), threshold.Comparison, "not a comparison"),
    };
}
