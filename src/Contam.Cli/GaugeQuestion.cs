using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Gauging;
using Contam.Measurement.Water;
using Contam.Measurement.Wording;

namespace Contam.Cli;

/// <summary>Reads what was typed for one limit by what the limit measures, and asks the sums.</summary>
internal sealed class GaugeQuestion(ParseResult call, GaugeArguments arguments, Family family, Limit limit)
{
    private readonly string[] typed = call.GetValue(arguments.Readings) ?? [];

    public GaugeAnswer Answer()
    {
        arguments.RefuseStrangers(call, limit);
        if (typed.Length == 0)
            throw new WrongUseException($"no reading is given. {Expected()}");
        return Typed.Take(limit.Measures switch
        {
            Measure.RunOut => RunOut(),
            Measure.Clearance => Clearance(),
            Measure.PressureDrop or Measure.VacuumDrop => Hold(),
            Measure.Cleanliness => Cleanliness(),
            Measure.WaterContent => Water(),
            Measure.FlowBalance => Balance(),
            _ => throw new ArgumentOutOfRangeException(nameof(limit), limit.Measures, "not a measure"),
        });
    }

    private Sum<GaugeAnswer> RunOut()
    {
        ImmutableArray<ReadingText> read = ReadingText.All(typed, Dimension.Length, maySink: true);
        if (read.Length < 2)
            throw new WrongUseException($"{limit.Id} needs at least 2 readings, got 1. Where it is the total already, write the two ends of it: 0{read[0].Unit.Symbol} {typed[0]}.");
        (ImmutableArray<RunOutReading> readings, TurnMarks marks) = TurnReadings.Of(read);
        return Gauge.RunOut(limit, readings, marks, read[0].Unit, new Length(Uncertainty(Dimension.Length)));
    }

    private Sum<GaugeAnswer> Clearance()
    {
        ImmutableArray<ReadingText> read = ReadingText.All(WithoutPlaces(), Dimension.Length, maySink: false);
        return Gauge.Clearance(limit, [.. read.Select(one => new Length(one.Si))], read[0].Unit, new Length(Uncertainty(Dimension.Length)));
    }

    private Sum<GaugeAnswer> Hold()
    {
        bool isVacuum = limit.Measures == Measure.VacuumDrop;
        ImmutableArray<ReadingText> read = ReadingText.All(WithoutPlaces(), Dimension.Pressure, maySink: isVacuum);
        if (read.Length != 2)
            throw new WrongUseException($"{limit.Id} needs 2 readings, at the start and at the end, got {Count(read.Length)}. {Expected()}");
        if (call.GetValue(arguments.Minutes) is not { } minutes)
            throw new WrongUseException($"{limit.Id} needs --minutes: how long was it watched? {Expected()}");
        // Many gauges show vacuum with a minus, and many without; two signs in one hold would be a gauge that passed through 0.
        if (read[0].Si < 0 != read[1].Si < 0 && read[0].Si != 0 && read[1].Si != 0)
            throw new WrongUseException("one reading is below 0 and the other above. Write both as vacuum, with a minus or both without.");
        var test = new HoldTest(isVacuum ? HoldKind.Vacuum : HoldKind.Pressure, new Pressure(Math.Abs(read[0].Si)), new Pressure(Math.Abs(read[1].Si)), Typed.Minutes("--minutes", minutes))
        {
            StartTemperature = call.GetValue(arguments.TemperatureFrom) is { } from ? Typed.Temperature("--temperature-from", from) : null,
            EndTemperature = call.GetValue(arguments.TemperatureTo) is { } to ? Typed.Temperature("--temperature-to", to) : null,
            Volume = call.GetValue(arguments.Volume) is { } volume ? Typed.Volume("--volume", volume) : family[limit.Part].Volume,
            WaterGotIn = call.GetValue(arguments.WaterGotIn),
        };
        return Gauge.Hold(family, limit, test, read[0].Unit, new Pressure(Uncertainty(Dimension.Pressure)));
    }

    private Sum<GaugeAnswer> Cleanliness()
    {
        (CleanlinessCode code, ParticleCounts? counts) = ParticleReadings.Of(typed, call.GetValue(arguments.CountedIn));
        return Gauge.Cleanliness(family, limit, code, counts);
    }

    private Sum<GaugeAnswer> Water()
    {
        ImmutableArray<ReadingText> read = ReadingText.All(WithoutPlaces(), Dimension.Share, maySink: false);
        if (read.Length != 1)
            throw new WrongUseException($"{limit.Id} needs 1 reading, got {Count(read.Length)}. {Expected()}");
        return Gauge.Water(family, limit, new Share(read[0].Si), SaturationOf(), read[0].Unit, new Share(Uncertainty(Dimension.Share)));
    }

    private Saturation? SaturationOf()
    {
        if (call.GetValue(arguments.Saturation) is { } figure)
        {
            Share share = Typed.Share("--saturation", figure);
            return new Saturation(share, share, "as given");
        }

        return call.GetValue(arguments.Oil) switch
        {
            "engine" => Saturation.DefaultFor(OilUse.Engine),
            "hydraulic" => Saturation.DefaultFor(OilUse.Hydraulic),
            "turbine" => Saturation.DefaultFor(OilUse.Turbine),
            "transformer" => Saturation.DefaultFor(OilUse.Transformer),
            _ => family.Circuits.FirstOrDefault(circuit => circuit.Parts.Contains(limit.Part))?.Name switch
            {
                "oil" => Saturation.DefaultFor(OilUse.Engine),
                "hydraulic" => Saturation.DefaultFor(OilUse.Hydraulic),
                _ => null,
            },
        };
    }

    private Sum<GaugeAnswer> Balance()
    {
        bool isFlow = ReadingText.DimensionOf(typed[0]) == Dimension.FlowRate;
        ImmutableArray<ReadingText> read = ReadingText.All(WithoutPlaces(), isFlow ? Dimension.FlowRate : Dimension.Volume, maySink: false);
        if (read.Length < 2)
            throw new WrongUseException($"{limit.Id} needs at least 2 readings, one an injector, got 1. {Expected()}");
        FlowBalance balance = Typed.Take(isFlow ? FlowBalance.Of([.. read.Select(one => new FlowRate(one.Si))]) : FlowBalance.Of([.. read.Select(one => new Volume(one.Si))]));
        double mean = read.Average(one => one.Si);
        string? uncertainty = call.GetValue(arguments.Uncertainty);
        bool isShare = uncertainty is not null && ReadingText.DimensionOf(uncertainty) == Dimension.Share;
        var share = new Share(isShare ? Uncertainty(Dimension.Share) : Uncertainty(isFlow ? Dimension.FlowRate : Dimension.Volume) / mean);
        return Gauge.Balance(family, limit, [.. read.Select(one => new GaugeFigure("delivered", one.Unit.Of(one.Si), one.Unit.Symbol))], balance, share);
    }

    private string[] WithoutPlaces() =>
        typed.FirstOrDefault(text => text.Contains(':', StringComparison.Ordinal)) is { } placed
            ? throw new WrongUseException($"the reading {Problems.Wording.Quoted(placed)} says a place round a turn, and {limit.Id} measures {MeasureText.Of(limit.Measures)}. {Expected()}")
            : typed;

    private double Uncertainty(Dimension dimension) =>
        call.GetValue(arguments.Uncertainty) is { } text ? Typed.Si("--uncertainty", text, dimension) : 0;

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private string Expected() => limit.Measures switch
    {
        Measure.RunOut => "Write the dial's readings round one turn, for instance 0mm 0.02mm 0.05mm 0.02mm, or with places 12:0mm 3:0.02mm.",
        Measure.Clearance => "Write what was measured, for instance 0.25mm.",
        Measure.PressureDrop => "Write the gauge at the start and at the end, for instance 0.70bar 0.68bar --minutes 10.",
        Measure.VacuumDrop => "Write the vacuum at the start and at the end, for instance 0.30bar 0.29bar --minutes 5.",
        Measure.Cleanliness => "Write a code (19/16/13) or three counts (3000/mL 500/mL 7/mL).",
        Measure.WaterContent => "Write what the laboratory says, for instance 250ppm.",
        _ => "Write what each injector delivers, for instance 101mL 99mL 100mL 98mL.",
    };
}
