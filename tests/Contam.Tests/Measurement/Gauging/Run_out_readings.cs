using System.Collections.Immutable;
using Contam.Families.Quantities;
using Contam.Measurement.Gauging;

namespace Contam.Tests.Measurement.Gauging;

public sealed class Run_out_readings
{
    private static ImmutableArray<RunOutReading> At(Func<double, double> millimetres, params double[] degrees) =>
        [.. degrees.Select(angle => new RunOutReading(Angle.FromDegrees(angle), Given.Mm(millimetres(angle * Math.PI / 180))))];

    private static double Bent(double angle) => 0.1 + (0.05 * Math.Cos(angle - 1)) + (0.02 * Math.Cos(2 * (angle - 0.5)));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Need_two_for_any_figure(int count) =>
        Assert.Equal($"run-out needs at least 2 readings; {count} given", RunOut.Of(Given.Dial(new double[count])).Fault!.Text);

    [Fact]
    public void Give_the_first_figure_alone_below_eight()
    {
        RunOut runOut = RunOut.Of(Given.Dial(0.01, 0.02, 0.03, 0.04, 0.03, 0.02, 0)).Value;
        Assert.Equal(0.04, runOut.TotalIndicatedReading.Millimetres, 10);
        Assert.Null(runOut.Shape);
        Assert.Equal("the high spot and the ovality need readings at 8 places or more round the turn; 7 given", runOut.NoShapeBecause);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(359.99999)]
    [InlineData(720)]
    public void Count_the_closing_reading_as_the_place_it_is(double closing) =>
        Assert.Equal(
            "the high spot and the ovality need readings at 8 places or more round the turn; 7 given",
            RunOut.Of(At(Bent, 0, 50, 100, 150, 200, 250, 300, closing)).Value.NoShapeBecause);

    [Fact]
    public void Are_taken_apart_at_unequal_angles_too()
    {
        TurnShape shape = RunOut.Of(At(Bent, 350, 10, 40, 95, 130, 190, 210, 260, 290, 370)).Value.Shape!;
        Assert.Equal(0.05, shape.OncePerTurn.Millimetres, 9);
        Assert.Equal(1, shape.HighSpot!.Value.Radians, 8);
        Assert.Equal(0.02, shape.Ovality.Millimetres, 9);
        Assert.Equal(0.5, shape.OvalHighSpot!.Value.Radians, 8);
        Assert.Equal(0, shape.Residual.Millimetres, 9);
    }

    [Fact]
    public void Give_the_first_figure_alone_where_they_are_badly_spread()
    {
        foreach (double[] places in new double[][] { [0, 10, 20, 30, 40, 50, 60, 70], [0, 1, 90, 91, 180, 181, 270, 271], [0, 20, 40, 60, 80, 100, 120, 140, 160, 180] })
        {
            RunOut runOut = RunOut.Of(At(Bent, places)).Value;
            Assert.True(runOut.TotalIndicatedReading.Metres > 0);
            Assert.Null(runOut.Shape);
            Assert.Equal("the readings are too badly spread round the turn to tell the high spot from the ovality; equal steps were expected", runOut.NoShapeBecause);
        }
    }

    [Fact]
    public void Show_a_dent_as_what_is_left()
    {
        double[] round = new double[36];
        round[7] = -0.1;
        TurnShape shape = RunOut.Of(Given.Dial(round)).Value.Shape!;
        // By hand: of a single one in 36 the fit takes 5/36; the rest is left at that place.
        Assert.Equal(0.1 * 31 / 36, shape.Residual.Millimetres, 9);
    }

    [Fact]
    public void Have_no_high_spot_where_nothing_runs_out()
    {
        RunOut runOut = RunOut.Of(Given.Dial(0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3)).Value;
        Assert.Equal(new RunOut(default, new TurnShape(default, null, default, null, default) { Middle = Given.Mm(0.3) }, null), runOut);
    }

    [Fact]
    public void Have_no_high_spot_where_they_are_oval_alone()
    {
        TurnShape shape = RunOut.Of(At(angle => 0.02 * Math.Cos(2 * angle), 0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330)).Value.Shape!;
        Assert.Null(shape.HighSpot);
        Assert.Equal(0.02, shape.Ovality.Millimetres, 9);
    }

    [Fact]
    public void Say_which_of_them_is_wrong()
    {
        Assert.Equal("reading 2 is not a number; a number was expected", RunOut.Of(Given.Dial(0, double.NaN)).Fault!.Text);
        Assert.Equal("reading 1 is infinite; a number was expected", RunOut.Of(Given.Dial(double.NegativeInfinity, 0)).Fault!.Text);
        Assert.Equal(
            "the angle of reading 2 is not a number; a number was expected",
            RunOut.Of([new RunOutReading(default, default), new RunOutReading(new Angle(double.NaN), default)]).Fault!.Text);
    }
}
