using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Flushing;

namespace Contam.Tests.Measurement.Flushing;

public sealed class Viscosity_line
{
    [Theory]
    [InlineData(40, 105, 100, 14.2)]
    [InlineData(100, 14.2, 40, 105)]
    [InlineData(-70, 2e7, 370, 0.21)]
    [InlineData(20, 3, 100, 0.9)]
    public void Goes_through_its_two_points_in_either_order(double firstAt, double first, double secondAt, double second)
    {
        ViscosityLine line = ViscosityLine.Through(Given.Celsius(firstAt), Given.Cst(first), Given.Celsius(secondAt), Given.Cst(second)).Value;
        Assert.Equal(1, line.At(Given.Celsius(firstAt)).Value.Centistokes / first, 8);
        Assert.Equal(1, line.At(Given.Celsius(secondAt)).Value.Centistokes / second, 8);
        Assert.Equal(firstAt, line.For(Given.Cst(first)).Value.Celsius, 6);
        Assert.Equal(secondAt, line.For(Given.Cst(second)).Value.Celsius, 6);
    }

    [Theory]
    [InlineData(40, 105, 40, 14.2, "both viscosities are for 40 °C; two different temperatures were expected")]
    [InlineData(40, 14.2, 100, 105, "14.2 cSt at 40 °C and 105 cSt at 100 °C would thicken with heat or stay as they are; thinner when hotter was expected")]
    [InlineData(40, 14.2, 100, 14.2, "14.2 cSt at 40 °C and 14.2 cSt at 100 °C would thicken with heat or stay as they are; thinner when hotter was expected")]
    [InlineData(40, 105, 400, 2, "the temperature is 400 °C; -70 to 370 °C was expected")]
    [InlineData(double.NaN, 105, 100, 14.2, "the temperature is not a number; -70 to 370 °C was expected")]
    [InlineData(40, 105, 100, 0.2, "the viscosity is 0.2 cSt; 0.21 to 20000000 cSt was expected")]
    [InlineData(40, double.PositiveInfinity, 100, 14.2, "the viscosity is infinite; 0.21 to 20000000 cSt was expected")]
    public void Says_what_is_wrong_with_its_points(double firstAt, double first, double secondAt, double second, string fault) =>
        Assert.Equal(fault, ViscosityLine.Through(Given.Celsius(firstAt), Given.Cst(first), Given.Celsius(secondAt), Given.Cst(second)).Fault!.Text);

    [Fact]
    public void Answers_nothing_beyond_its_range()
    {
        ViscosityLine line = ViscosityLine.Through(Given.Celsius(40), Given.Cst(105), Given.Celsius(100), Given.Cst(14.2)).Value;
        Assert.Equal("the temperature is -80 °C; -70 to 370 °C was expected", line.At(Given.Celsius(-80)).Fault!.Text);
        Assert.Equal("the viscosity is -1 cSt; 0.21 to 20000000 cSt was expected", line.For(Given.Cst(-1)).Fault!.Text);
        Assert.Equal("0.21 cSt would take 989.608 °C; -70 to 370 °C was expected", line.For(Given.Cst(0.21)).Fault!.Text);
    }

    [Fact]
    public void Answers_nothing_where_the_oil_would_be_too_thick_or_too_thin()
    {
        ViscosityLine thick = ViscosityLine.Through(Given.Celsius(0), Given.Cst(1e7), Given.Celsius(40), Given.Cst(1e4)).Value;
        Assert.StartsWith("at -60 °C the viscosity is ", thick.At(Given.Celsius(-60)).Fault!.Text, StringComparison.Ordinal);
        ViscosityLine thin = ViscosityLine.Through(Given.Celsius(0), Given.Cst(1), Given.Celsius(40), Given.Cst(0.3)).Value;
        Assert.StartsWith("at 200 °C the viscosity is ", thin.At(Given.Celsius(200)).Fault!.Text, StringComparison.Ordinal);
    }
}

public sealed class Viscosity_curve
{
    private static Fluid Oil(params (double Celsius, double Cst)[] points) =>
        new("oil", new SourceSpan("family.yaml", 1, 1)) { Viscosity = [.. points.Select(point => (Given.Celsius(point.Celsius), Given.Cst(point.Cst)))] };

    [Fact]
    public void Is_the_line_where_there_are_two_points()
    {
        ViscosityCurve curve = ViscosityCurve.Of(Oil((40, 105), (100, 14.2))).Value;
        ViscosityLine line = ViscosityLine.Through(Given.Celsius(40), Given.Cst(105), Given.Celsius(100), Given.Cst(14.2)).Value;
        foreach (double celsius in new[] { 0d, 40, 60, 100, 150 })
            Assert.Equal(line.At(Given.Celsius(celsius)).Value, curve.At(Given.Celsius(celsius)).Value);
        Assert.Equal(line.For(Given.Cst(30)).Value, curve.For(Given.Cst(30)).Value);
    }

    [Fact]
    public void Goes_through_every_point_and_back()
    {
        ViscosityCurve curve = ViscosityCurve.Of(Oil((0, 1000), (40, 105), (100, 14.2), (150, 4))).Value;
        foreach ((double celsius, double cst) in new[] { (0d, 1000d), (40, 105), (100, 14.2), (150, 4) })
        {
            Assert.Equal(cst, curve.At(Given.Celsius(celsius)).Value.Centistokes, 6);
            Assert.Equal(celsius, curve.For(Given.Cst(cst)).Value.Celsius, 6);
        }

        Assert.True(curve.Spans(Given.Celsius(0)));
        Assert.True(curve.Spans(Given.Celsius(150)));
        Assert.False(curve.Spans(Given.Celsius(151)));
    }

    [Theory]
    [InlineData(-10, 0, 1000, 40, 105)]
    [InlineData(20, 0, 1000, 40, 105)]
    [InlineData(70, 40, 105, 100, 14.2)]
    [InlineData(120, 100, 14.2, 150, 4)]
    [InlineData(160, 100, 14.2, 150, 4)]
    public void Is_the_line_of_the_two_points_about_it(double celsius, double firstAt, double first, double secondAt, double second)
    {
        ViscosityCurve curve = ViscosityCurve.Of(Oil((0, 1000), (40, 105), (100, 14.2), (150, 4))).Value;
        ViscosityLine line = ViscosityLine.Through(Given.Celsius(firstAt), Given.Cst(first), Given.Celsius(secondAt), Given.Cst(second)).Value;
        KinematicViscosity expected = line.At(Given.Celsius(celsius)).Value;
        Assert.Equal(expected, curve.At(Given.Celsius(celsius)).Value);
        Assert.Equal(line.For(expected).Value, curve.For(expected).Value);
    }

    [Fact]
    public void Needs_two_points_that_fall()
    {
        Assert.Equal("oil has its viscosity at 1 temperature; at least 2 were expected", ViscosityCurve.Of(Oil((40, 105))).Fault!.Text);
        Assert.Equal(
            "oil: 10 cSt at 40 °C and 20 cSt at 60 °C would thicken with heat or stay as they are; thinner when hotter was expected",
            ViscosityCurve.Of(Oil((0, 100), (40, 10), (60, 20))).Fault!.Text);
    }
}
