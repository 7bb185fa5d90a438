using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Families.Reading;
using Contam.Measurement;
using Contam.Measurement.Gauging;
using Contam.Support;
using Contam.Tests.Measurement;
using Contam.Treatment.Reading;
using MathNet.Numerics.IntegralTransforms;

namespace Contam.References.Measurement.Gauging;

public sealed class Run_out
{
    /// <summary>−0.01 to +0.03 mm is 0.04 mm: machinecalc.pages.dev/cylindricity-runout-calculator.</summary>
    [Fact]
    public void Is_the_printed_0_04_mm() =>
        Assert.Equal(0.04, RunOut.Of(Given.Dial(-0.01, 0.03)).Value.TotalIndicatedReading.Millimetres, 10);

    /// <summary>+0.003 and −0.006 in is 0.009 in: an examination question on a flywheel housing, api17195.sec3.dev.</summary>
    [Fact]
    public void Is_the_printed_9_thou_of_a_flywheel_housing() =>
        Assert.Equal(0.009, RunOut.Of([Given.Inch(0), Given.Inch(0.003), Given.Inch(0), Given.Inch(-0.006)]).Value.TotalIndicatedReading.Metres / 0.0254, 10);

    /// <summary>e = 0.05 at 0°, oval 0.02 at 0°, 8 readings: worked out by an independent program.</summary>
    [Fact]
    public void Takes_the_check_set_apart()
    {
        RunOut runOut = RunOut.Of(Given.Dial(0.07, 0.0353553, -0.02, -0.0353553, -0.03, -0.0353553, -0.02, 0.0353553)).Value;
        Assert.Equal(0.1053553, runOut.TotalIndicatedReading.Millimetres, 7);
        TurnShape shape = runOut.Shape!;
        Assert.Equal(0.05, shape.OncePerTurn.Millimetres, 6);
        Assert.Equal(0, Math.Min(shape.HighSpot!.Value.Degrees, 360 - shape.HighSpot.Value.Degrees), 3);
        Assert.Equal(0.02, shape.Ovality.Millimetres, 6);
        Assert.Equal(0, Math.Min(shape.OvalHighSpot!.Value.Degrees, 180 - shape.OvalHighSpot.Value.Degrees), 3);
        Assert.Equal(0, shape.Residual.Millimetres, 6);
    }

    /// <summary>Against the Fourier transform of MathNet.Numerics 5.0.0, on readings that no formula made.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(12)]
    [InlineData(37)]
    public void Agrees_with_the_Fourier_transform_of_another_library(int count)
    {
        double[] readings = [.. Enumerable.Range(0, count).Select(i => ((i * 7919) + (i * i * 104729 % 613)) % 97 / 1000.0)];
        TurnShape shape = RunOut.Of(Given.Dial(readings)).Value.Shape!;

        Complex[] spectrum = [.. readings.Select(reading => new Complex(reading, 0))];
        Fourier.Forward(spectrum, FourierOptions.Matlab);
        Assert.Equal(2 * spectrum[1].Magnitude / count, shape.OncePerTurn.Millimetres, 10);
        Assert.Equal(2 * spectrum[2].Magnitude / count, shape.Ovality.Millimetres, 10);
        // The transform has e^(−iθ), so the high spot lies at minus its phase.
        Assert.Equal(new Angle(-spectrum[1].Phase).WithinTurn().Degrees, shape.HighSpot!.Value.Degrees, 8);
        Assert.Equal(new Angle(-spectrum[2].Phase).WithinTurn().Degrees / 2, shape.OvalHighSpot!.Value.Degrees, 8);
    }

    /// <summary>A propeller shaft: fine to 6 thou, at its limit at 9, so that 15 scraps or straightens it. Common practice, no source.</summary>
    [Theory]
    [InlineData(5.9, Verdict.Good)]
    [InlineData(6, Verdict.Good)]
    [InlineData(6.1, Verdict.Marginal)]
    [InlineData(7, Verdict.Marginal)]
    [InlineData(9, Verdict.Marginal)]
    [InlineData(9.1, Verdict.Reject)]
    [InlineData(15, Verdict.Reject)]
    public void Judges_a_propeller_shaft_as_the_trade_does(double thou, Verdict verdict)
    {
        Family gearcase = FamilyReader.ReadFile(RepositoryFiles.At("systems/families/outboard-gearcase.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        Limit limit = gearcase.Limits.Single(one => one.Id == "propeller-shaft-run-out");
        Assert.Equal(("<= 6 thou", "> 9 thou"), (limit.Good.Text, limit.Reject!.Text));
        Length total = RunOut.Of([Given.Thou(-thou / 3), Given.Thou(thou * 2 / 3)]).Value.TotalIndicatedReading;
        Assert.Equal(verdict, Judge.Reading(limit, total).Value.Verdict);
    }
}
