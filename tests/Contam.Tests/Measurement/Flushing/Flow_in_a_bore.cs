using Contam.Families.Quantities;
using Contam.Measurement.Flushing;

namespace Contam.Tests.Measurement.Flushing;

public sealed class Flow_in_a_bore
{
    [Theory]
    [InlineData(0, Regime.Laminar)]
    [InlineData(2299.9, Regime.Laminar)]
    [InlineData(2300, Regime.Transitional)]
    [InlineData(3999.9, Regime.Transitional)]
    [InlineData(4000, Regime.Turbulent)]
    public void Has_its_regime(double reynolds, Regime regime) => Assert.Equal(regime, BoreFlow.RegimeAt(reynolds).Value);

    [Fact]
    public void Stands_still_without_flow()
    {
        Assert.Equal(0, BoreFlow.Velocity(default, Given.Mm(10)).Value.MetresPerSecond);
        Assert.Equal(0, BoreFlow.Reynolds(default, Given.Mm(10), Given.Cst(10)).Value);
        Assert.Equal(0, PressureLoss.Along(new(Given.Mm(10), new Length(1)), default, Given.Cst(10), Given.Density(870)).Value.Pascals);
    }

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        FlowRate flow = Given.LitresPerMinute(10);
        Assert.Equal("the bore is 0 mm; more than 0 mm was expected", BoreFlow.Velocity(flow, default).Fault!.Text);
        Assert.Equal("the bore is infinite; more than 0 mm was expected", BoreFlow.Velocity(flow, new Length(double.PositiveInfinity)).Fault!.Text);
        Assert.Equal("the flow is infinite; at least 0 L/min was expected", BoreFlow.Velocity(new FlowRate(double.PositiveInfinity), Given.Mm(10)).Fault!.Text);
        Assert.Equal("the flow is -10 L/min; at least 0 L/min was expected", BoreFlow.Velocity(Given.LitresPerMinute(-10), Given.Mm(10)).Fault!.Text);
        Assert.Equal("the viscosity is 0 cSt; more than 0 cSt was expected", BoreFlow.Reynolds(flow, Given.Mm(10), default).Fault!.Text);
        Assert.Equal("the Reynolds number is not a number; more than 0 was expected", BoreFlow.FlowFor(double.NaN, Given.Mm(10), Given.Cst(10)).Fault!.Text);
        Assert.Equal("the flow is 0 L/min; more than 0 L/min was expected", BoreFlow.ViscosityFor(4000, default, Given.Mm(10)).Fault!.Text);
        Assert.Equal("the Reynolds number is -1; at least 0 was expected", BoreFlow.RegimeAt(-1).Fault!.Text);
        Assert.Equal(
            "the velocity comes out beyond what can be computed from these figures; look at their units",
            BoreFlow.Velocity(new FlowRate(1e300), new Length(1e-160)).Fault!.Text);
    }
}

public sealed class Pressure_lost_in_a_bore
{
    private static readonly StraightBore Pipe = new(Given.Mm(10), new Length(2));

    [Fact]
    public void Doubles_with_the_length() =>
        Assert.Equal(2, Loss(Pipe with { Length = new Length(4) }, 30, 10) / Loss(Pipe, 30, 10), 10);

    [Fact]
    public void Rises_with_the_roughness_in_turbulent_flow_alone()
    {
        StraightBore rough = Pipe with { Roughness = Given.Mm(0.1) };
        Assert.True(Loss(rough, 30, 10) > Loss(Pipe, 30, 10));
        Assert.Equal(Loss(Pipe, 5, 46), Loss(rough, 5, 46));
    }

    /// <summary>Between laminar and turbulent the larger is taken: at 3000 that of Colebrook, 0.0435 against 64/3000 = 0.0213 (both worked out by hand).</summary>
    [Fact]
    public void Is_the_turbulent_one_between_the_two() =>
        Assert.Equal(0.0435, PressureLoss.FrictionFactor(3000, default).Value, 4);

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        FlowRate flow = Given.LitresPerMinute(30);
        Assert.Equal("the length is -1 m; at least 0 m was expected", PressureLoss.Along(Pipe with { Length = new Length(-1) }, flow, Given.Cst(10), Given.Density(870)).Fault!.Text);
        Assert.Equal("the density is 0 kg/m³; more than 0 kg/m³ was expected", PressureLoss.Along(Pipe, flow, Given.Cst(10), default).Fault!.Text);
        Assert.Equal("the roughness is -1 µm; at least 0 µm was expected", PressureLoss.Along(Pipe with { Roughness = new Length(-1e-6) }, flow, Given.Cst(10), Given.Density(870)).Fault!.Text);
        Assert.Equal("the roughness is 0.1 of the bore; 0 to 0.05 of the bore was expected", PressureLoss.Along(Pipe with { Roughness = Given.Mm(1) }, flow, Given.Cst(10), Given.Density(870)).Fault!.Text);
    }

    private static double Loss(StraightBore pipe, double litresPerMinute, double cst) =>
        PressureLoss.Along(pipe, Given.LitresPerMinute(litresPerMinute), Given.Cst(cst), Given.Density(870)).Value.Pascals;
}
