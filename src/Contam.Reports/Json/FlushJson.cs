using System.Collections.Immutable;
using Contam.Families;
using Contam.Measurement.Flushing;

namespace Contam.Reports.Json;

/// <summary>The flush of a circuit as JSON: the contract <c>contam-flush/1</c>. Units are in the names.</summary>
public static class FlushJson
{
    /// <summary>The flush as JSON, closed by a newline.</summary>
    public static string Write(CircuitFlush flush, Family family)
    {
        ArgumentNullException.ThrowIfNull(flush);
        ArgumentNullException.ThrowIfNull(family);
        return ReportJson.Write(
            new FlushJsonAnswer(
                "contam-flush/1",
                family.Id,
                flush.Circuit,
                flush.Fluid,
                Number(flush.At.Celsius),
                Number(flush.Viscosity.Centistokes),
                Number(flush.Answer.Flow.LitresPerMinute),
                flush.FlowWasGiven,
                Number(flush.Answer.WantedReynolds),
                flush.Answer.IsEnough,
                [.. flush.Answer.Bores.Select(Bore)],
                flush.System is { } system ? Number(system.Litres) : null,
                flush.Dilution is { } dilution ? Number(dilution.Volumes) : null,
                flush.Dilution is { } diluted ? Number(diluted.Time.TotalMinutes) : null,
                flush.Filter is { } filter ? Number(filter.Times.Longest.TotalMinutes) : null,
                [.. flush.Assumed]),
            ReportJson.Context.FlushJsonAnswer);
    }

    private static FlushJsonBore Bore(FlushedBore bore) => new(
        bore.Part.Value,
        Number(bore.Asked.Bore.Millimetres),
        bore.Asked.Branches,
        Number(bore.Flow.LitresPerMinute),
        Number(bore.Velocity.MetresPerSecond),
        Number(bore.Reynolds),
        bore.Regime,
        bore.Enough,
        bore.Loss is { } loss ? Number(loss.Bar) : null,
        bore.Mend is { } mend
            ? new FlushJsonMend(
                mend.HotterTo is { } hotter ? Number(hotter.Celsius) : null,
                mend.ThinnerTo is { } thinner ? Number(thinner.Centistokes) : null,
                Number(mend.CircuitFlow.LitresPerMinute),
                Number(mend.FlowAlone.LitresPerMinute),
                mend.OneBranchAtATime)
            : null);

    /// <summary>Nine figures: more than any of it is known to, and without the dust of conversion.</summary>
    private static double Number(double value) => double.Parse(
        value.ToString("G9", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);
}

internal sealed record FlushJsonAnswer(
    string Format,
    string Family,
    string Circuit,
    string Fluid,
    double TemperatureC,
    double ViscosityCst,
    double FlowLPerMin,
    bool FlowGiven,
    double WantedReynolds,
    bool Enough,
    ImmutableArray<FlushJsonBore> Bores,
    double? SystemL,
    double? Volumes,
    double? DilutionMinutes,
    double? Minutes,
    ImmutableArray<string> Assumed);

internal sealed record FlushJsonBore(
    string Part,
    double BoreMm,
    int Branches,
    double FlowLPerMin,
    double VelocityMPerS,
    double Reynolds,
    Regime Regime,
    bool Enough,
    double? LossBar,
    FlushJsonMend? Mend);

internal sealed record FlushJsonMend(double? HotterC, double? ThinnerCst, double CircuitFlowLPerMin, double FlowAloneLPerMin, bool OneBranchAtATime);
