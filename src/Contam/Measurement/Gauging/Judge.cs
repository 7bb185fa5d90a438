using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Water;

namespace Contam.Measurement.Gauging;

/// <summary>
/// Holds readings against a family's limits. A reading that meets reject is rejected, also where a badly written limit lets it meet good
/// too; one that meets good is good; any other is marginal, or rejected where the limit has no reject of its own. With an uncertainty
/// every value from reading − uncertainty to reading + uncertainty (closed) is judged, and where they do not agree the reading is undecided.
/// A reading on a limit's own value is taken as exactly on it, give or take one part in 10⁹, so that unit conversion decides nothing.
/// </summary>
public static class Judge
{
    /// <summary>A run-out (its total indicated reading) or a clearance.</summary>
    /// <param name="limit">Measures run-out or clearance.</param>
    /// <param name="reading">Finite.</param>
    /// <param name="uncertainty">Of the figure judged, at least 0. A total indicated reading is the difference of two dial readings, so it may be off by both.</param>
    public static Sum<Judgement> Reading(Limit limit, Length reading, Length uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return MeasureFault(limit, "a length", Measure.RunOut, Measure.Clearance)
            ?? Band.Judge(limit, reading.Metres, uncertainty.Metres, new Band.Unit("mm", 1e3));
    }

    /// <summary>A pressure or vacuum lost. Whether the hold was long enough and began high enough is <see cref="HoldTest.Judge"/>'s question.</summary>
    /// <param name="limit">Measures pressure-drop or vacuum-drop.</param>
    /// <param name="reading">Finite.</param>
    /// <param name="uncertainty">Of the figure judged, at least 0.</param>
    public static Sum<Judgement> Reading(Limit limit, Pressure reading, Pressure uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return MeasureFault(limit, "a pressure", Measure.PressureDrop, Measure.VacuumDrop)
            ?? Band.Judge(limit, reading.Pascals, uncertainty.Pascals, new Band.Unit("kPa", 1e-3));
    }

    /// <summary>A water content or a flow balance (its spread).</summary>
    /// <param name="limit">Measures water-content or flow-balance.</param>
    /// <param name="reading">Water 0 to 100 %; a spread at least 0.</param>
    /// <param name="uncertainty">Of the figure judged, at least 0.</param>
    public static Sum<Judgement> Reading(Limit limit, Share reading, Share uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(limit);
        if (MeasureFault(limit, "a share", Measure.WaterContent, Measure.FlowBalance) is { } wrong)
            return wrong;
        if (limit.Measures == Measure.FlowBalance)
            return Expect.NotNegative("the spread", reading.Percent, "%") is { } fault ? fault : Band.Judge(limit, reading.OfOne, uncertainty.OfOne, new Band.Unit("%", 100));
        return WaterInOil.WaterFault(reading) is { } water ? water : Band.Judge(limit, reading.OfOne, uncertainty.OfOne, new Band.Unit("ppm", 1e6));
    }

    /// <summary>A cleanliness code. All three numbers must meet good; one that meets reject rejects. A size not counted could be anything.</summary>
    /// <param name="limit">Measures cleanliness, with codes as its values.</param>
    /// <param name="reading">The code.</param>
    public static Sum<Judgement> Reading(Limit limit, CleanlinessCode reading)
    {
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(reading);
        return MeasureFault(limit, "a cleanliness code", Measure.Cleanliness) ?? CodeJudge.Judge(limit, reading);
    }

    private static Sum<Judgement>? MeasureFault(Limit limit, string given, params ReadOnlySpan<Measure> wanted) =>
        wanted.Contains(limit.Measures) ? null
            : (Sum<Judgement>)new Fault($"{limit.Id} measures {Wording(limit.Measures)}, and {given} is given");

    private static string Wording(Measure measure) => measure switch
    {
        Measure.RunOut => "run-out",
        Measure.PressureDrop => "a pressure drop",
        Measure.VacuumDrop => "a vacuum drop",
        Measure.Clearance => "a clearance",
        Measure.Cleanliness => "cleanliness",
        Measure.WaterContent => "water content",
        Measure.FlowBalance => "flow balance",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "not a measure"),
    };
}
