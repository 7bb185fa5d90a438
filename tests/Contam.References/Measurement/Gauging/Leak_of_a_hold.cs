using Contam.Families.Quantities;
using Contam.Measurement.Gauging;
using Contam.Tests.Measurement;

namespace Contam.References.Measurement.Gauging;

public sealed class Leak_of_a_hold
{
    /// <summary>
    /// 40 CFR 1065.644 (ecfr.io/Title-40/Section-1065.644), vacuum-decay leak rate: 2.0000 L, from 25.300 kPa to 50.600 kPa absolute at 293.15 K
    /// in 70 s. The text seen gives the inputs; its answer, 0.00030 mol/s, is from memory and agrees with V·Δp/(R·T·t) worked out by hand: 0.00029657.
    /// </summary>
    [Fact]
    public void Agrees_with_the_regulations_example()
    {
        var atmosphere = new Pressure(101_325);
        var test = new HoldTest(HoldKind.Vacuum, new Pressure(101_325 - 25_300), new Pressure(101_325 - 50_600), TimeSpan.FromSeconds(70))
        {
            Atmosphere = atmosphere,
            StartTemperature = new Temperature(293.15),
            EndTemperature = new Temperature(293.15),
            Volume = Given.Litres(2),
        };
        LeakRate leak = test.Figures().Value.Leak!.Value;
        Assert.Equal(0.00030, leak.MolesPerSecond(new Temperature(293.15)), 5);
        Assert.Equal(0.00029657, leak.MolesPerSecond(new Temperature(293.15)), 8);
    }

    /// <summary>By hand, the gas law: tight at 2 bar above 1 bar and 300 K, cooled to 290 K, it stands at 3·290/300 = 2.9 bar absolute, 1.9 on the gauge.</summary>
    [Fact]
    public void Finds_no_leak_where_the_gas_only_cooled()
    {
        var test = new HoldTest(HoldKind.Pressure, Given.Bar(2), Given.Bar(1.9), TimeSpan.FromMinutes(10))
        {
            Atmosphere = Given.Bar(1),
            StartTemperature = new Temperature(300),
            EndTemperature = new Temperature(290),
        };
        HoldFigures figures = test.Figures().Value;
        Assert.Equal(0.1, figures.GaugeLoss.Bar, 10);
        Assert.Equal(0, figures.Loss.Bar, 10);
    }
}
