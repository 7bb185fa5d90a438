using Contam.Families.Quantities;
using Contam.Measurement.Flushing;
using Contam.Tests.Measurement;

namespace Contam.References.Measurement.Flushing;

public sealed class Flushing_flow
{
    private const double UsGallonPerMinute = 6.309020e-5; // NIST SP 811, App. B, in m³/s: from memory, sure
    private const double FootPerSecond = 0.3048;
    private const double SquareFootPerSecond = 0.09290304;

    /// <summary>ISO 23309:2016 as extracted at ulstandardspdf.com/bs-iso-23309-2016-pdf-free.html: a Reynolds number greater than 4 000.</summary>
    [Fact]
    public void Is_turbulent_from_the_number_that_the_standard_names()
    {
        Assert.Equal(4000, BoreFlow.TurbulentFrom);
        Assert.Equal(Regime.Turbulent, BoreFlow.RegimeAt(4000.1).Value);
        Assert.Equal(Regime.Transitional, BoreFlow.RegimeAt(3999.9).Value);
    }

    /// <summary>
    /// hydraulicspneumatics.com/maintenance/hydraulic-system-flushing-procedures, page 2: a 1 in tube with 0.049 in wall and 1.288·10⁻⁴ ft²/s
    /// has a Reynolds number of 25 000 at 42.8 ft/s and 85 gpm.
    /// </summary>
    [Fact]
    public void Agrees_with_the_printed_example_of_a_1_in_tube()
    {
        Length bore = Given.Inch(1 - (2 * 0.049));
        var viscosity = new KinematicViscosity(1.288e-4 * SquareFootPerSecond);
        FlowRate flow = BoreFlow.FlowFor(25_000, bore, viscosity).Value;
        Assert.Equal(85, flow.CubicMetresPerSecond / UsGallonPerMinute, 0);
        Assert.Equal(42.8, BoreFlow.Velocity(flow, bore).Value.MetresPerSecond / FootPerSecond, 1);
    }

    /// <summary>The same tube at other numbers, worked out by an independent program.</summary>
    [Theory]
    [InlineData(3000, 5.14, 10.24)]
    [InlineData(4000, 6.85, 13.65)]
    public void Agrees_for_the_same_tube_at_other_numbers(double reynolds, double feetPerSecond, double gallonsPerMinute)
    {
        Length bore = Given.Inch(0.902);
        FlowRate flow = BoreFlow.FlowFor(reynolds, bore, new KinematicViscosity(1.288e-4 * SquareFootPerSecond)).Value;
        Assert.Equal(gallonsPerMinute, flow.CubicMetresPerSecond / UsGallonPerMinute, 2);
        Assert.Equal(feetPerSecond, BoreFlow.Velocity(flow, bore).Value.MetresPerSecond / FootPerSecond, 2);
    }

    /// <summary>Re = 3160·Q/(D·ν) with gpm, in and cSt, as the trade prints it: from memory; the exact constant is 3162.56 (worked out).</summary>
    [Fact]
    public void Has_the_constant_of_the_trades_formula() =>
        Assert.Equal(3162.56, BoreFlow.Reynolds(new FlowRate(UsGallonPerMinute), Given.Inch(1), Given.Cst(1)).Value, 2);

    /// <summary>Re = 4000 in metric bores, worked out by an independent program.</summary>
    [Theory]
    [InlineData(25, 10, 47.12, 1.6)]
    [InlineData(25, 32, 150.80, 5.12)]
    [InlineData(12, 15, 33.93, 5.0)]
    [InlineData(50, 20, 188.50, 1.6)]
    public void Agrees_for_metric_bores(double boreMm, double cst, double litresPerMinute, double metresPerSecond)
    {
        FlowRate flow = BoreFlow.FlowFor(4000, Given.Mm(boreMm), Given.Cst(cst)).Value;
        Assert.Equal(litresPerMinute, flow.LitresPerMinute, 2);
        Assert.Equal(metresPerSecond, BoreFlow.Velocity(flow, Given.Mm(boreMm)).Value.MetresPerSecond, 2);
    }
}
