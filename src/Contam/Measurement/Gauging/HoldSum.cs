using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Wording;

namespace Contam.Measurement.Gauging;

/// <summary>
/// The sums of a hold. Definition: by the gas law shut-in gas has p/T constant, so the end's absolute pressure is taken back to the
/// start's temperature, p₂·T₁/T₂, and the difference to p₁ is what leaked. The leak is that, times the volume, by the time.
/// Source: the ideal gas law; 40 CFR 1065.644 has the same sum for vacuum.
/// </summary>
internal static class HoldSum
{
    internal static Sum<HoldFigures> Of(HoldTest test)
    {
        if (GivenFault(test) is { } fault)
            return fault;
        double sign = test.Kind == HoldKind.Pressure ? 1 : -1;
        double startAbsolute = test.Atmosphere.Pascals + (sign * test.Start.Pascals);
        double endAbsolute = (test.AtmosphereAtEnd ?? test.Atmosphere).Pascals + (sign * test.End.Pascals);
        if ((AbsoluteFault("start", test.Start, startAbsolute) ?? AbsoluteFault("end", test.End, endAbsolute)) is { } vacuum)
            return vacuum;

        bool corrected = test.StartTemperature is not null;
        double ratio = corrected ? test.StartTemperature!.Value.Kelvin / test.EndTemperature!.Value.Kelvin : 1;
        double loss = sign * (startAbsolute - (endAbsolute * ratio));
        LeakRate? leak = test.Volume is { } volume ? new LeakRate(loss * volume.CubicMetres / test.Watched.TotalSeconds) : null;
        if ((Expect.Computable("the loss", loss) ?? Expect.Computable("the leak", leak?.PascalCubicMetresPerSecond ?? 0)) is { } beyond)
            return beyond;
        return new HoldFigures(new Pressure(test.Start.Pascals - test.End.Pascals), new Pressure(loss), corrected, leak);
    }

    internal static Sum<HoldJudgement> Judge(HoldTest test, Limit limit, Pressure uncertainty, Band.Unit? shown = null)
    {
        ArgumentNullException.ThrowIfNull(limit);
        Measure wanted = test.Kind == HoldKind.Pressure ? Measure.PressureDrop : Measure.VacuumDrop;
        if (limit.Measures != wanted)
            return new Fault($"{limit.Id} does not measure a {(test.Kind == HoldKind.Pressure ? "pressure" : "vacuum")} drop");
        if (!Of(test).TryGet(out HoldFigures? figures, out Fault? fault))
            return fault;
        if (!Band.Judge(limit, figures.Loss.Pascals, uncertainty.Pascals, shown ?? new Band.Unit("kPa", 1e-3)).TryGet(out Judgement? judgement, out fault))
            return fault;

        var notes = ImmutableArray.CreateBuilder<HoldNote>();
        if (limit.Over is { } over && test.Watched < over)
            notes.Add(HoldNote.WatchedTooShort);
        // One part in 10⁹ of give, so that unit conversion does not make a start on the limit's own figure too low.
        if (limit.At is { } at && test.Start.Pascals < at.Pascals * (1 - 1e-9))
            notes.Add(HoldNote.StartedTooLow);
        if (figures.Loss.Pascals < -Math.Max(uncertainty.Pascals, 1e-9 * test.Start.Pascals))
            notes.Add(HoldNote.RoseInstead);
        // A loss that is rejected already stays rejected, however short or gentle the test was; anything else then says nothing.
        if (notes.Count > 0 && judgement.Verdict != Verdict.Reject)
            judgement = new Judgement(Verdict.Undecided, judgement.Mildest, Verdict.Reject, HoldNotes.Text(notes[0]));
        if (!figures.IsCorrected)
            notes.Add(HoldNote.NotCorrectedForTemperature);
        if (test.WaterGotIn && judgement.Verdict == Verdict.Good)
            notes.Add(HoldNote.HoldsAlthoughWaterGotIn);
        return new HoldJudgement(figures, judgement, notes.ToImmutable());
    }

    private static Fault? GivenFault(HoldTest test)
    {
        Fault? fault = Expect.Positive("the gauge at the start", test.Start.Bar, "bar")
            ?? Expect.NotNegative("the gauge at the end", test.End.Bar, "bar")
            ?? Expect.Positive("the time watched", test.Watched.TotalMinutes, "min")
            ?? Expect.Positive("the atmosphere", test.Atmosphere.Bar, "bar")
            ?? Expect.Positive("the atmosphere at the end", (test.AtmosphereAtEnd ?? test.Atmosphere).Bar, "bar")
            ?? (test.Volume is { } volume ? Expect.Positive("the volume", volume.Litres, "L") : null)
            ?? TemperatureFault("start", test.StartTemperature)
            ?? TemperatureFault("end", test.EndTemperature);
        if (fault is not null)
            return fault;
        return (test.StartTemperature is null) == (test.EndTemperature is null) ? null
            : new Fault($"a temperature is given at the {(test.EndTemperature is null ? "start" : "end")} alone; one at both, or none, was expected");
    }

    private static Fault? TemperatureFault(string when, Temperature? temperature) =>
        temperature is { } given ? Expect.Positive($"the absolute temperature at the {when}", given.Kelvin, "K") : null;

    private static Fault? AbsoluteFault(string when, Pressure gauge, double absolute) =>
        absolute > 0 ? null : new Fault(
            $"a vacuum of {Expect.Show(gauge.Bar)} bar at the {when} is more than the atmosphere gives; an absolute pressure above 0 was expected");
}
