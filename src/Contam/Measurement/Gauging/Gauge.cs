using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Wording;

namespace Contam.Measurement.Gauging;

/// <summary>How the places of run-out readings were said.</summary>
public enum TurnMarks
{
    /// <summary>Not said: evenly spread in the order given, the first at 0°.</summary>
    Even,

    /// <summary>In degrees.</summary>
    Degrees,

    /// <summary>As hours on a clock face: 12 is 0°, 3 is 90°.</summary>
    Clock,
}

/// <summary>
/// Holds readings against one limit of a family and answers with every figure behind the verdict, in the unit that the readings were given in.
/// An uncertainty here is the meter's, of one reading; a figure that is the difference of two readings may be off by twice as much.
/// </summary>
public static partial class Gauge
{
    /// <summary>Run-out from readings round one turn.</summary>
    /// <param name="limit">Measures run-out.</param>
    /// <param name="readings">At least two.</param>
    /// <param name="marks">How their places were said; for the wording alone.</param>
    /// <param name="unit">The unit that they were given in.</param>
    /// <param name="uncertainty">Of one reading, at least 0.</param>
    public static Sum<GaugeAnswer> RunOut(Limit limit, ImmutableArray<RunOutReading> readings, TurnMarks marks, ReadingUnit unit, Length uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (!Gauging.RunOut.Of(readings).TryGet(out RunOut? runOut, out Fault? fault))
            return fault;
        double total = runOut.TotalIndicatedReading.Metres;
        if (!Judged(limit, total, 2 * uncertainty.Metres, unit, Measure.RunOut).TryGet(out Judgement? judgement, out fault))
            return fault;
        return new GaugeAnswer(
            limit,
            judgement,
            [new GaugeFigure("totalIndicatedReading", unit.Of(total), unit.Symbol) { Label = "Total indicated reading" }, .. ShapeFigures(runOut.Shape, marks, unit), .. Margin.Figures(limit, total, unit)])
        {
            Margin = Margin.Text(limit, total, judgement.Verdict, unit),
            Unit = unit,
            Round = [.. readings.OrderBy(one => one.At.WithinTurn().Radians)],
            Shape = runOut.Shape,
            Notes = runOut.NoShapeBecause is { } because ? [because] : [],
            Assumed = [.. Places(marks, readings.Length), .. Twice(uncertainty.Metres, "the total indicated reading", unit)],
        };
    }

    /// <summary>A clearance; of several readings the worst decides.</summary>
    /// <param name="limit">Measures clearance.</param>
    /// <param name="readings">At least one.</param>
    /// <param name="unit">The unit that they were given in.</param>
    /// <param name="uncertainty">Of one reading, at least 0.</param>
    public static Sum<GaugeAnswer> Clearance(Limit limit, ImmutableArray<Length> readings, ReadingUnit unit, Length uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (readings.IsDefaultOrEmpty)
            return new Fault("no clearance is given; at least 1 was expected");
        (Length Reading, Judgement Judgement)? worst = null;
        foreach (Length reading in readings)
        {
            // A clearance that is not there at all is read as 0; below it no feeler goes.
            if (Expect.NotNegative("the clearance", reading.Metres * unit.PerSi, unit.Symbol) is { } negative)
                return negative;
            if (!Judged(limit, reading.Metres, uncertainty.Metres, unit, Measure.Clearance).TryGet(out Judgement? judgement, out Fault? fault))
                return fault;
            if (worst is null || Severity(judgement.Verdict) > Severity(worst.Value.Judgement.Verdict))
                worst = (reading, judgement);
        }

        double decides = worst!.Value.Reading.Metres;
        ImmutableArray<GaugeFigure> all = readings.Length == 1 ? [] :
        [
            new GaugeFigure("smallest", unit.Of(readings.Min().Metres), unit.Symbol) { Label = "Smallest" },
            new GaugeFigure("largest", unit.Of(readings.Max().Metres), unit.Symbol) { Label = "Largest" },
        ];
        return new GaugeAnswer(
            limit,
            worst.Value.Judgement,
            [new GaugeFigure("clearance", unit.Of(decides), unit.Symbol) { Label = "Clearance" }, .. all, .. Margin.Figures(limit, decides, unit)])
        {
            Margin = Margin.Text(limit, decides, worst.Value.Judgement.Verdict, unit),
            Unit = unit,
            Assumed = readings.Length == 1 ? [] : ["of several readings the worst decides"],
        };
    }

    private static IEnumerable<GaugeFigure> ShapeFigures(TurnShape? shape, TurnMarks marks, ReadingUnit unit)
    {
        if (shape is null)
            yield break;
        yield return new GaugeFigure("oncePerTurn", unit.Of(shape.OncePerTurn.Metres), unit.Symbol)
        {
            Label = "Once per turn",
            Meaning = "how far the centre is off, by a bend or off-centre; alone it reads twice this",
        };
        if (shape.HighSpot is { } high)
        {
            string at = marks == TurnMarks.Clock ? $" {ClockText.Of(high)}" : "";
            yield return new GaugeFigure("highSpotDegrees", WholeTurn(high), "deg") { Label = "High spot", Meaning = at.Trim() };
        }

        yield return new GaugeFigure("ovality", unit.Of(shape.Ovality.Metres), unit.Symbol) { Label = "Ovality", Meaning = "twice per turn; alone it reads twice this" };
        if (shape.OvalHighSpot is { } oval)
            yield return new GaugeFigure("ovalHighSpotDegrees", WholeTurn(oval), "deg") { Label = "Oval high spot", Meaning = "and opposite" };
        yield return new GaugeFigure("residual", unit.Of(shape.Residual.Metres), unit.Symbol) { Label = "Left over", Meaning = "the most that a reading is off both: a dent, a burr, a misread dial" };
    }

    // A ten-thousandth of a degree is finer than any mark on a shaft, and 359.99996° is 0°.
    private static double WholeTurn(Angle angle) => Math.Round(angle.Degrees, 4) % 360;

    private static IEnumerable<string> Places(TurnMarks marks, int readings) => marks switch
    {
        // Two readings are the ends of what the dial showed, wherever they were.
        TurnMarks.Even when readings > 2 => ["the readings are evenly spread round one turn in the order given, the first at 0°"],
        TurnMarks.Clock => ["12 o'clock is 0°, 3 o'clock 90°"],
        _ => [],
    };

    private static IEnumerable<string> Twice(double uncertainty, string figure, ReadingUnit unit) =>
        uncertainty > 0 ? [$"each reading may be off by {unit.Show(uncertainty)}, so {figure}, which is the difference of two, by {unit.Show(2 * uncertainty)}"] : [];

    private static int Severity(Verdict verdict) => verdict switch
    {
        Verdict.Good => 0,
        Verdict.Marginal => 1,
        Verdict.Undecided => 2,
        _ => 3,
    };

    private static Sum<Judgement> Judged(Limit limit, double reading, double uncertainty, ReadingUnit unit, Measure wanted)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return limit.Measures == wanted
            ? Band.Judge(limit, reading, uncertainty, new Band.Unit(unit.Symbol, unit.PerSi))
            : new Fault($"{limit.Id} measures {MeasureText.Of(limit.Measures)}, not {MeasureText.Of(wanted)}");
    }
}
