using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Tests.Families.Quantities;

public sealed class Quantities_as_written
{
    // Factors: NIST SP 811 (2008), appendix B.8, exact by definition; psi and inHg from their definitions, worked out by hand to 16 digits.
    [Theory]
    [InlineData("25 um", Dimension.Length, 25e-6)]
    [InlineData("25 \u00B5m", Dimension.Length, 25e-6)]
    [InlineData("25 \u03BCm", Dimension.Length, 25e-6)]
    [InlineData("25micron", Dimension.Length, 25e-6)]
    [InlineData("0.04 mm", Dimension.Length, 40e-6)]
    [InlineData("2 cm", Dimension.Length, 0.02)]
    [InlineData("1.8 m", Dimension.Length, 1.8)]
    [InlineData("1 thou", Dimension.Length, 25.4e-6)]
    [InlineData("1 mil", Dimension.Length, 25.4e-6)]
    [InlineData("1 in", Dimension.Length, 0.0254)]
    [InlineData("1 ft", Dimension.Length, 0.3048)]
    [InlineData("0.2 L", Dimension.Volume, 0.0002)]
    [InlineData("5 mL", Dimension.Volume, 5e-6)]
    [InlineData("5 cL", Dimension.Volume, 5e-5)]
    [InlineData("1 dm3", Dimension.Volume, 0.001)]
    [InlineData("1 m3", Dimension.Volume, 1)]
    [InlineData("1 gal(US)", Dimension.Volume, 0.003785411784)]
    [InlineData("1 qt(US)", Dimension.Volume, 0.000946352946)]
    [InlineData("10 cc", Dimension.Volume, 1e-5)]
    [InlineData("10 cm3", Dimension.Volume, 1e-5)]
    [InlineData("90 s", Dimension.Duration, 90)]
    [InlineData("20 min", Dimension.Duration, 1200)]
    [InlineData("1.5 h", Dimension.Duration, 5400)]
    [InlineData("3 d", Dimension.Duration, 259200)]
    [InlineData("5 Pa", Dimension.Pressure, 5)]
    [InlineData("5 kPa", Dimension.Pressure, 5000)]
    [InlineData("5 MPa", Dimension.Pressure, 5e6)]
    [InlineData("5 mbar", Dimension.Pressure, 500)]
    [InlineData("0.7 bar", Dimension.Pressure, 70000)]
    [InlineData("1 psi", Dimension.Pressure, 6894.757293168361)]
    [InlineData("1 psid", Dimension.Pressure, 6894.757293168361)]
    [InlineData("1 inHg", Dimension.Pressure, 3386.388640341)]
    [InlineData("1 mmHg", Dimension.Pressure, 133.322387415)]
    [InlineData("46 cSt", Dimension.KinematicViscosity, 46e-6)]
    [InlineData("46 mm2/s", Dimension.KinematicViscosity, 46e-6)]
    [InlineData("1 m2/s", Dimension.KinematicViscosity, 1)]
    [InlineData("875 kg/m3", Dimension.Density, 875)]
    [InlineData("0.875 g/cm3", Dimension.Density, 875)]
    [InlineData("0.875 kg/L", Dimension.Density, 875)]
    [InlineData("40 C", Dimension.Temperature, 313.15)]
    [InlineData("40 °C", Dimension.Temperature, 313.15)]
    [InlineData("40 degC", Dimension.Temperature, 313.15)]
    [InlineData("-40 C", Dimension.Temperature, 233.15)]
    [InlineData("-40 F", Dimension.Temperature, 233.15)]
    [InlineData("212 °F", Dimension.Temperature, 373.15)]
    [InlineData("32 degF", Dimension.Temperature, 273.15)]
    [InlineData("0 K", Dimension.Temperature, 0)]
    [InlineData("30 L/min", Dimension.FlowRate, 0.0005)]
    [InlineData("3.6 L/h", Dimension.FlowRate, 1e-6)]
    [InlineData("1 gpm(US)", Dimension.FlowRate, 6.30901964e-5)]
    [InlineData("3.6 m3/h", Dimension.FlowRate, 0.001)]
    [InlineData("1 m3/s", Dimension.FlowRate, 1)]
    [InlineData("200 ppm", Dimension.Share, 0.0002)]
    [InlineData("0.1 %", Dimension.Share, 0.001)]
    [InlineData("1.5e3 um", Dimension.Length, 0.0015)]
    [InlineData("1E-3 m", Dimension.Length, 0.001)]
    [InlineData("1e+3 um", Dimension.Length, 0.001)]
    [InlineData("0 mm", Dimension.Length, 0)]
    [InlineData("0e5 mm", Dimension.Length, 0)]
    [InlineData("007 mm", Dimension.Length, 0.007)]
    public void Are_held_in_the_SI_unit(string text, Dimension dimension, double si)
    {
        Assert.True(Quantity.TryParse(text, dimension, out double read, out QuantityError? error));
        Assert.Equal(si, read);
        Assert.Null(error);
    }

    [Theory]
    [InlineData("", Dimension.Length, QuantityFault.Empty, 0)]
    [InlineData("wide", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData(".5 mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("5. mm", Dimension.Length, QuantityFault.NotANumber, 1)]
    [InlineData("+5 mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("--5 mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData(" 5 mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("NaN mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("Infinity mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("∞ mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("٣ mm", Dimension.Length, QuantityFault.NotANumber, 0)]
    [InlineData("1,5 mm", Dimension.Length, QuantityFault.DecimalComma, 1)]
    [InlineData("1.5,5 mm", Dimension.Length, QuantityFault.DecimalComma, 3)]
    [InlineData("1 000 mm", Dimension.Length, QuantityFault.GroupedDigits, 1)]
    [InlineData("1\u00A0000 mm", Dimension.Length, QuantityFault.GroupedDigits, 1)]
    [InlineData("1'000 mm", Dimension.Length, QuantityFault.GroupedDigits, 1)]
    [InlineData("1_000 mm", Dimension.Length, QuantityFault.GroupedDigits, 1)]
    [InlineData("1.2.3 mm", Dimension.Length, QuantityFault.GroupedDigits, 3)]
    [InlineData("5  mm", Dimension.Length, QuantityFault.ExtraSpace, 2)]
    [InlineData("5 mm ", Dimension.Length, QuantityFault.ExtraSpace, 4)]
    [InlineData("5\tmm", Dimension.Length, QuantityFault.ExtraSpace, 1)]
    [InlineData("5", Dimension.Length, QuantityFault.MissingUnit, 1)]
    [InlineData("5 ", Dimension.Length, QuantityFault.MissingUnit, 2)]
    [InlineData("5 furlong", Dimension.Length, QuantityFault.UnknownUnit, 2)]
    [InlineData("5MM", Dimension.Length, QuantityFault.UnknownUnit, 1)]
    [InlineData("5e mm", Dimension.Length, QuantityFault.UnknownUnit, 1)]
    [InlineData("5 mm mm", Dimension.Length, QuantityFault.UnknownUnit, 2)]
    [InlineData("3 bar", Dimension.Length, QuantityFault.WrongDimension, 2)]
    [InlineData("-3 mm", Dimension.Length, QuantityFault.Negative, 0)]
    [InlineData("-0 mm", Dimension.Length, QuantityFault.Negative, 0)]
    [InlineData("-1 K", Dimension.Temperature, QuantityFault.OutOfRange, 0)]
    [InlineData("-273.16 C", Dimension.Temperature, QuantityFault.OutOfRange, 0)]
    [InlineData("1e30 m", Dimension.Length, QuantityFault.OutOfRange, 0)]
    [InlineData("1e-30 m", Dimension.Length, QuantityFault.OutOfRange, 0)]
    [InlineData("1e99999 m", Dimension.Length, QuantityFault.OutOfRange, 0)]
    [InlineData("99999999999999999999999999999999 m", Dimension.Length, QuantityFault.OutOfRange, 0)]
    [InlineData("1e28 MPa", Dimension.Pressure, QuantityFault.OutOfRange, 0)]
    public void Are_refused_with_the_place_of_the_fault(string text, Dimension dimension, QuantityFault fault, int offset)
    {
        Assert.False(Quantity.TryParse(text, dimension, out double read, out QuantityError? error));
        Assert.Equal((fault, offset, 0d), (error!.Fault, error.Offset, read));
    }

    [Fact]
    public void Are_refused_unread_where_they_are_endlessly_long()
    {
        Assert.False(Quantity.TryParse(new string('1', 1_000_000) + " mm", Dimension.Length, out _, out QuantityError? error));
        Assert.Equal(QuantityFault.NotANumber, error!.Fault);
    }

    [Theory]
    [InlineData("5 MM", "mm")]
    [InlineData("5 microns ", null)]
    [InlineData("5 micorn", "micron")]
    [InlineData("5 Thou", "thou")]
    [InlineData("5 parsec", null)]
    public void Name_the_unit_that_was_likely_meant(string text, string? near)
    {
        Assert.False(Quantity.TryParse(text, Dimension.Length, out _, out QuantityError? error));
        Assert.Equal(near, error!.Near);
    }

    // A size is compared with another that may be written in another unit, so the last bit counts.
    [Theory]
    [InlineData("60 um", 60)]
    [InlineData("0.06 mm", 60)]
    [InlineData("0.1 um", 0.1)]
    [InlineData("1 thou", 25.4)]
    [InlineData("0.3 thou", 7.62)]
    [InlineData("29 um", 29)]
    [InlineData("0.029 mm", 29)]
    public void Give_particle_sizes_exact_to_the_last_bit(string text, double micrometres)
    {
        Assert.True(ParticleSize.TryParse(text, out ParticleSize size, out _));
        Assert.Equal(ParticleSize.FromMicrometres(micrometres), size);
    }

    [Fact]
    public void Give_times_and_refuse_those_that_do_not_fit()
    {
        Assert.True(Quantity.TryParse("12 d", out TimeSpan time, out _));
        Assert.Equal(TimeSpan.FromDays(12), time);
        Assert.False(Quantity.TryParse("1e9 d", out time, out QuantityError? error));
        Assert.Equal((QuantityFault.OutOfRange, TimeSpan.Zero), (error!.Fault, time));
        Assert.False(Quantity.TryParse("1e20 d", out time, out error));
        Assert.Equal((QuantityFault.OutOfRange, TimeSpan.Zero), (error!.Fault, time));
    }

    [Fact]
    public void Are_the_same_in_every_helper()
    {
        Assert.True(Quantity.TryParse("9.5 mm", out Length length, out _));
        Assert.Equal(new Length(0.0095), length);
        Assert.True(Quantity.TryParse("60 L", out Volume volume, out _));
        Assert.Equal(new Volume(0.06), volume);
        Assert.True(Quantity.TryParse("1 bar", out Pressure pressure, out _));
        Assert.Equal(new Pressure(100000), pressure);
        Assert.True(Quantity.TryParse("105 cSt", out KinematicViscosity viscosity, out _));
        Assert.Equal(new KinematicViscosity(105e-6), viscosity);
        Assert.True(Quantity.TryParse("875 kg/m3", out Density density, out _));
        Assert.Equal(new Density(875), density);
        Assert.True(Quantity.TryParse("104 F", out Temperature temperature, out _));
        Assert.Equal(Temperature.FromCelsius(40), temperature);
        Assert.True(Quantity.TryParse("60 L/min", out FlowRate flow, out _));
        Assert.Equal(new FlowRate(0.001), flow);
    }

    [Fact]
    public void Know_every_unit_by_one_name_only()
    {
        Assert.Equal(UnitTable.All.Length, UnitTable.All.Select(unit => unit.Symbol).Distinct(StringComparer.Ordinal).Count());
    }
}
