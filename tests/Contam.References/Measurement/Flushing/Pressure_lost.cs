using Contam.Families.Quantities;
using Contam.Measurement.Flushing;
using Contam.Tests.Measurement;

namespace Contam.References.Measurement.Flushing;

public sealed class Pressure_lost
{
    /// <summary>
    /// White, Fluid Mechanics, example 6.7, as printed at coursehero.com/file/5650355: oil of 900 kg/m³ and 10⁻⁵ m²/s at 0.2 m³/s through
    /// 500 m of 200 mm cast iron with a grain of 0.26 mm: 6.4 m/s, Re 128 000, f read from the chart 0.0225 (a chart is read to some 2 %). Its head loss, 117 m, is from memory, sure.
    /// </summary>
    [Fact]
    public void Agrees_with_the_printed_example_of_oil_in_cast_iron()
    {
        var flow = new FlowRate(0.2);
        Length bore = Given.Mm(200);
        KinematicViscosity viscosity = Given.Cst(10);
        Assert.Equal(6.4, BoreFlow.Velocity(flow, bore).Value.MetresPerSecond, 1);
        double reynolds = BoreFlow.Reynolds(flow, bore, viscosity).Value;
        Assert.InRange(reynolds, 127_000, 128_500);
        Assert.InRange(PressureLoss.FrictionFactor(reynolds, new Share(0.0013)).Value, 0.0225 * 0.98, 0.0225 * 1.02);
        Pressure loss = PressureLoss.Along(new(bore, new Length(500), Given.Mm(0.26)), flow, viscosity, Given.Density(900)).Value;
        Assert.InRange(loss.Pascals / (900 * 9.81), 115, 118);
    }

    /// <summary>Points of the Moody chart for smooth and rough bores, as textbooks print them: from memory, sure of three figures.</summary>
    [Theory]
    [InlineData(1e4, 0, 0.0309)]
    [InlineData(1e5, 0, 0.0180)]
    [InlineData(1e6, 0, 0.01165)]
    [InlineData(1e8, 0.01, 0.0379)]
    [InlineData(1e8, 0.05, 0.0716)]
    public void Agrees_with_the_chart(double reynolds, double roughness, double friction) =>
        Assert.InRange(PressureLoss.FrictionFactor(reynolds, new Share(roughness)).Value, friction * 0.995, friction * 1.005);

    /// <summary>Swamee and Jain 1976 gave an explicit formula that is within 1 % of Colebrook's for 10⁻⁶ to 10⁻² and 5000 to 10⁸, by their own statement (from memory; others find up to 3 %).</summary>
    [Fact]
    public void Lies_within_3_percent_of_the_explicit_formula()
    {
        foreach (double reynolds in new[] { 5e3, 2e4, 1e5, 1e6, 1e7, 1e8 })
        {
            foreach (double roughness in new[] { 1e-6, 1e-5, 1e-4, 1e-3, 1e-2 })
            {
                double explicitly = 0.25 / Math.Pow(Math.Log10((roughness / 3.7) + (5.74 / Math.Pow(reynolds, 0.9))), 2);
                Assert.InRange(PressureLoss.FrictionFactor(reynolds, new Share(roughness)).Value / explicitly, 0.97, 1.03);
            }
        }
    }

    /// <summary>Hagen and Poiseuille: Δp = 128·µ·L·Q/(π·d⁴), another way to the laminar loss.</summary>
    [Theory]
    [InlineData(12, 2, 46, 5)]
    [InlineData(6, 0.5, 100, 1)]
    public void Agrees_with_the_law_of_laminar_flow(double boreMm, double metres, double cst, double litresPerMinute)
    {
        double expected = 128 * (cst * 1e-6 * 875) * metres * (litresPerMinute / 60000) / (Math.PI * Math.Pow(boreMm / 1e3, 4));
        Pressure loss = PressureLoss.Along(new(Given.Mm(boreMm), new Length(metres)), Given.LitresPerMinute(litresPerMinute), Given.Cst(cst), Given.Density(875)).Value;
        Assert.Equal(1, loss.Pascals / expected, 10);
    }
}
