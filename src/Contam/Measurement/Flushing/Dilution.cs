using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// How much clean fluid must go through to leave only so much of the old. A volume here is one filling of the system.
/// Two ideal cases bound the real one. Mixed: new and old mix at once, and exp(−volumes) is left; the slower, so the one to plan by.
/// Once-through: the new pushes the old out before it, and one volume is enough. A dead end is swept by neither: it must be drained by itself.
/// Source: the mass balance of a stirred tank, and of a plug; any textbook of process engineering.
/// </summary>
public static class Dilution
{
    /// <summary>The share of the old that is left when it mixes at once.</summary>
    /// <param name="volumes">Volumes gone through, at least 0.</param>
    public static Sum<Share> LeftWhenMixed(double volumes) =>
        Expect.NotNegative("the number of volumes", volumes, "") is { } fault ? fault : new Share(Math.Exp(-volumes));

    /// <summary>The volumes that must go through for a share to be left when the fluids mix at once.</summary>
    /// <param name="left">Above 0 (nothing at all is never reached), at most 1.</param>
    public static Sum<double> VolumesWhenMixed(Share left) =>
        LeftFault(left) is { } fault ? fault : Math.Abs(Math.Log(left.OfOne));

    /// <summary>The share of the old that is left when the new pushes it out.</summary>
    /// <param name="volumes">Volumes gone through, at least 0.</param>
    public static Sum<Share> LeftWhenOnceThrough(double volumes) =>
        Expect.NotNegative("the number of volumes", volumes, "") is { } fault ? fault : new Share(Math.Max(0, 1 - volumes));

    /// <summary>The volumes that must go through for a share to be left when the new pushes the old out: one at most.</summary>
    /// <param name="left">0 to 1.</param>
    public static Sum<double> VolumesWhenOnceThrough(Share left) =>
        Expect.Between("what is left", left.Percent, 0, 100, "%") is { } fault ? fault : 1 - left.OfOne;

    /// <summary>How often the system must be drained and filled for a share to be left, when each draining leaves some of the fluid behind.</summary>
    /// <param name="staysBehind">What a draining leaves, as a share of a volume: above 0, below 1.</param>
    /// <param name="left">Above 0, at most 1.</param>
    /// <returns>A whole number of fillings, 0 where the whole may be left.</returns>
    public static Sum<int> Fillings(Share staysBehind, Share left)
    {
        if ((LeftFault(left) ?? Expect.Positive("what a draining leaves", staysBehind.Percent, "%")) is { } fault)
            return fault;
        if (staysBehind.OfOne >= 1)
            return new Fault($"what a draining leaves is {Expect.Show(staysBehind.Percent)} %; less than 100 % was expected");
        // A hair is taken off so that a share that three fillings leave exactly does not ask for a fourth.
        double fillings = Math.Ceiling((Math.Log(left.OfOne) / Math.Log(staysBehind.OfOne)) - 1e-9);
        return fillings <= 1e6 ? (int)fillings : new Fault("more than a million fillings come out; look at what a draining leaves");
    }

    /// <summary>How long it takes for so many volumes to go through.</summary>
    /// <param name="volumes">At least 0.</param>
    /// <param name="system">What the system holds, above 0.</param>
    /// <param name="flow">Above 0.</param>
    public static Sum<TimeSpan> Time(double volumes, Volume system, FlowRate flow)
    {
        Fault? fault = Expect.NotNegative("the number of volumes", volumes, "")
            ?? Expect.Positive("the system's volume", system.Litres, "L")
            ?? Expect.Positive("the flow", flow.LitresPerMinute, "L/min");
        return fault is not null ? fault : Expect.Time("the flushing time", volumes * system.CubicMetres / flow.CubicMetresPerSecond);
    }

    private static Fault? LeftFault(Share left) =>
        left.OfOne > 0 && left.OfOne <= 1 ? null
            : Expect.Positive("what is left", left.Percent, "%") ?? new Fault($"what is left is {Expect.Show(left.Percent)} %; at most 100 % was expected");
}
