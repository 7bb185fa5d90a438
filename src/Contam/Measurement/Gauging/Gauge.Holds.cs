using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Wording;

namespace Contam.Measurement.Gauging;

public static partial class Gauge
{
    /// <summary>A hold of pressure or vacuum.</summary>
    /// <param name="family">The family, for what else should be measured.</param>
    /// <param name="limit">Measures a pressure drop or a vacuum drop, whichever <paramref name="test"/> is.</param>
    /// <param name="test">The hold.</param>
    /// <param name="unit">The unit that the gauge was read in.</param>
    /// <param name="uncertainty">Of one reading, at least 0.</param>
    public static Sum<GaugeAnswer> Hold(Family family, Limit limit, HoldTest test, ReadingUnit unit, Pressure uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(unit);
        var shown = new Band.Unit(unit.Symbol, unit.PerSi);
        if (!HoldSum.Judge(test, limit, new Pressure(2 * uncertainty.Pascals), shown).TryGet(out HoldJudgement? judged, out Fault? fault))
            return fault;
        HoldFigures figures = judged.Figures;
        return new GaugeAnswer(limit, judged.Judgement, [.. HoldFigureList(test, figures, unit), .. Margin.Figures(limit, figures.Loss.Pascals, unit)])
        {
            Margin = judged.Judgement.Verdict == Verdict.Undecided ? "" : Margin.Text(limit, figures.Loss.Pascals, judged.Judgement.Verdict, unit),
            Unit = unit,
            HoldsAlthoughWaterGotIn = judged.Notes.Contains(HoldNote.HoldsAlthoughWaterGotIn),
            Notes =
            [
                // What made the reading undecided is the verdict's own reason already.
                .. judged.Notes.Select(HoldNotes.Text).Where(note => note != judged.Judgement.Because),
                .. judged.Notes.Contains(HoldNote.HoldsAlthoughWaterGotIn) ? NextToMeasure(family, limit) : [],
            ],
            Assumed =
            [
                $"the gauge reads {(test.Kind == HoldKind.Pressure ? "above" : "below")} an atmosphere of {Expect.Show(test.Atmosphere.Bar)} bar, the same at start and end",
                .. Twice(uncertainty.Pascals, "the loss", unit),
            ],
        };
    }

    private static IEnumerable<GaugeFigure> HoldFigureList(HoldTest test, HoldFigures figures, ReadingUnit unit)
    {
        double minutes = test.Watched.TotalMinutes;
        yield return new GaugeFigure("gaugeLoss", unit.Of(figures.GaugeLoss.Pascals), unit.Symbol) { Label = "Lost on the gauge" };
        yield return new GaugeFigure("loss", unit.Of(figures.Loss.Pascals), unit.Symbol)
        {
            Label = figures.IsCorrected ? "Lost, temperature taken out" : "Lost",
            Meaning = figures.IsCorrected ? "by the gas law" : "not corrected for temperature",
        };
        yield return new GaugeFigure("minutes", ReadingUnit.Dusted(minutes), "min") { Label = "Watched" };
        yield return new GaugeFigure("lossPerMinute", unit.Of(figures.Loss.Pascals / minutes), unit.Symbol + "/min") { Label = "Lost a minute" };
        if (figures.Leak is { } leak)
        {
            yield return new GaugeFigure("leakRate", ReadingUnit.Dusted(leak.MillibarLitresPerSecond), "mbar·L/s") { Label = "Leak" };
            // One standard atmosphere is 1013.25 mbar: the same leak as air at that pressure, which a bench can picture.
            yield return new GaugeFigure("leakAirMlPerMin", ReadingUnit.Dusted(leak.MillibarLitresPerSecond / 1013.25 * 60_000), "mL/min") { Label = "Leak as air", Meaning = "at one atmosphere" };
        }
    }

    /// <summary>What a hold that passes in spite of water leaves to be measured: the run-out of the shafts that turn in the same fluid, and the hold the other way round.</summary>
    private static IEnumerable<string> NextToMeasure(Family family, Limit limit)
    {
        var fellows = family.Circuits.Where(circuit => circuit.Parts.Contains(limit.Part)).SelectMany(circuit => circuit.Parts).ToHashSet();
        Limit[] runOuts = [.. family.Limits.Where(one => one.Measures == Measure.RunOut && fellows.Contains(one.Part) && family[one.Part].Kind.Name == "shaft")];
        if (runOuts.Length > 0)
            yield return $"measure next the run-out: {string.Join(", ", runOuts.Select(one => $"{one.Id} ({LimitFigures.Sentence(one)})"))}";
        Measure other = limit.Measures == Measure.PressureDrop ? Measure.VacuumDrop : Measure.PressureDrop;
        Limit[] otherWay = [.. family.Limits.Where(one => one.Measures == other && one.Part == limit.Part)];
        if (otherWay.Length > 0)
            yield return $"then hold it the other way round: {string.Join(", ", otherWay.Select(one => $"{one.Id} ({LimitFigures.Sentence(one)})"))}";
    }
}
