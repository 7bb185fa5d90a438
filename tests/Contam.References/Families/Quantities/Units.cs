using Contam.Families.Quantities;
using Contam.Measurement.Gauging;

namespace Contam.References.Families.Quantities;

/// <summary>The factors that the quantities carry. NIST SP 811, App. B, and the SI brochure, 9th edition: from memory, sure.</summary>
public sealed class Units
{
    [Fact]
    public void Have_the_published_factors()
    {
        Assert.Equal(273.15, Temperature.FromCelsius(0).Kelvin);
        Assert.Equal(1, new KinematicViscosity(1e-6).Centistokes, 12);
        Assert.Equal(1, new Pressure(100_000).Bar, 12);
        Assert.Equal(101.325, HoldTest.StandardAtmosphere.Kilopascals, 12);
        Assert.Equal(1000, new Volume(1).Litres, 9);
        Assert.Equal(60, new FlowRate(0.001).LitresPerMinute, 9);
        Assert.Equal(25.4, new Length(0.0254).Millimetres, 12);
        Assert.Equal(25.4, new Length(25.4e-6).Micrometres, 12);
        Assert.Equal(180, new Angle(Math.PI).Degrees, 12);
        Assert.Equal(Math.PI / 2, Angle.FromDegrees(90).Radians, 12);
        Assert.Equal(500, Share.FromPercent(0.05).PartsPerMillion, 9);
        Assert.Equal(0.05, Share.FromPartsPerMillion(500).Percent, 12);
        Assert.Equal(1, new LeakRate(0.1).MillibarLitresPerSecond, 12);
        // One mole takes 22.414 L at 0 °C and one atmosphere (CODATA: from memory, sure).
        Assert.Equal(1, new LeakRate(101_325 * 0.022413969).MolesPerSecond(Temperature.FromCelsius(0)), 6);
    }
}
