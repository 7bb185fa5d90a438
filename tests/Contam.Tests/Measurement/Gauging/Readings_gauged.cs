using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Gauging;
using Contam.Support.Notation;

namespace Contam.Tests.Measurement.Gauging;

public sealed class Readings_gauged
{
    private static readonly ReadingUnit Thou = ReadingUnit.Find("thou", Dimension.Length)!;

    private static readonly Limit RunOutLimit = Given.Limit(
        Measure.RunOut, new Threshold(Comparison.AtMost, 6 * 25.4e-6, "<= 6 thou"), new Threshold(Comparison.Above, 9 * 25.4e-6, "> 9 thou"));

    private static GaugeAnswer Dial(double high, double uncertainty = 0) => Gauge.RunOut(
        RunOutLimit, [new(default, Given.Thou(0)), new(Angle.FromDegrees(180), Given.Thou(high))], TurnMarks.Even, Thou, Given.Thou(uncertainty)).Value;

    [Theory]
    [InlineData(5, "1 thou inside good")]
    [InlineData(6, "on the limit of good")]
    [InlineData(7, "1 thou outside good, 2 thou short of reject")]
    [InlineData(9, "3 thou outside good, on the limit of reject")]
    [InlineData(15, "6 thou past reject")]
    public void Say_their_margin(double high, string margin) => Assert.Equal(margin, Dial(high).Margin);

    [Fact]
    public void Come_back_in_the_unit_that_they_were_given_in() =>
        Assert.Equal([("totalIndicatedReading", 15, "thou"), ("marginToGood", -9, "thou"), ("marginToReject", -6, "thou")], Dial(15).Figures.Select(one => (one.Name, one.Value, one.Unit)));

    [Fact]
    public void May_be_off_twice_where_the_figure_is_a_difference()
    {
        Assert.Equal(Verdict.Undecided, Dial(5, 0.6).Judgement.Verdict);
        Assert.Equal(Verdict.Good, Dial(5, 0.4).Judgement.Verdict);
    }

    [Fact]
    public void Of_another_measure_are_refused() =>
        Assert.Equal("the-limit measures run-out, not clearance", Gauge.Clearance(RunOutLimit, [Given.Mm(1)], Thou).Fault!.Text);

    /// <summary>A margin of a limit that must be passed upward counts the other way.</summary>
    [Theory]
    [InlineData(0.30, "0.1 mm inside good")]
    [InlineData(0.15, "0.05 mm outside good, 0.05 mm short of reject")]
    [InlineData(0.05, "0.05 mm past reject")]
    public void Count_a_margin_towards_the_better_side(double clearance, string margin)
    {
        Limit limit = Given.Limit(Measure.Clearance, new Threshold(Comparison.AtLeast, 0.2e-3, ">= 0.2 mm"), new Threshold(Comparison.Below, 0.1e-3, "< 0.1 mm"));
        Assert.Equal(margin, Gauge.Clearance(limit, [Given.Mm(clearance)], ReadingUnit.Find("mm", Dimension.Length)!).Value.Margin);
    }

    [Fact]
    public void Round_a_turn_lie_on_the_fitted_wave_where_nothing_is_left_over()
    {
        ImmutableArray<RunOutReading> readings =
            [.. Enumerable.Range(0, 12).Select(i => Angle.FromDegrees(30 * i)).Select(at => new RunOutReading(at, Given.Mm(0.3 + (0.05 * Math.Cos(at.Radians - 1)) + (0.02 * Math.Cos(2 * (at.Radians - 2))))))];
        TurnShape shape = RunOut.Of(readings).Value.Shape!;
        Assert.Equal(0.3, shape.Middle.Millimetres, 9);
        foreach (RunOutReading one in readings)
            Assert.Equal(one.Reading.Millimetres, shape.At(one.At).Millimetres, 9);
    }

    [Theory]
    [InlineData("19/16/13", "19/16/13")]
    [InlineData("-/16/13", "-/16/13")]
    [InlineData("*/16/13", "-/16/13")]
    [InlineData(">28/16/13", ">28/16/13")]
    public void As_a_code_are_read_as_written(string text, string code) => Assert.Equal(code, CodeText.Read(text).Value.ToString());

    [Theory]
    [InlineData("")]
    [InlineData("19/16")]
    [InlineData("19/16/13/10")]
    [InlineData("19/16/29")]
    [InlineData("19/16/-1")]
    public void As_no_code_are_refused(string text) =>
        Assert.Equal("a cleanliness code was expected: three scale numbers from 0 to 28, for instance 19/16/13, with - for a size that was not counted", CodeText.Read(text).Fault!.Text);

    [Fact]
    public void As_half_a_code_are_no_target() =>
        Assert.Equal("the code -/16/13 has a size without a number; three numbers from 0 to 28 were expected", CodeText.ReadWhole("-/16/13").Fault!.Text);

    [Fact]
    public void Bear_on_what_the_fluid_comes_to_while_nothing_else_has_failed()
    {
        Family family = CaseReader.System(
            """
            oil: sump > pump > gallery > sump
            oil: gallery >?seal> turbo; seal
            oil: gallery ~ blanked
            air: pump > intake
            oil: feed > sump
            """);
        Assert.Equal(["sump", "pump", "gallery"], FluidReach.From(family, new PartId("sump")).Select(part => part.Id.Value));
    }
}
