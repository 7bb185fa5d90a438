using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Flushing;

namespace Contam.Tests.Measurement.Flushing;

public sealed class Flush_of_a_circuit
{
    private static readonly ImmutableArray<BoreToFlush> Circuit =
    [
        new(new PartId("hose"), Given.Mm(12)),
        new(new PartId("gallery"), Given.Mm(25)),
        new(new PartId("branch"), Given.Mm(10)) { Branches = 4 },
    ];

    private static readonly ViscosityCurve Oil = ViscosityCurve.Of(
        new Fluid("oil", new SourceSpan("family.yaml", 1, 1)) { Viscosity = [(Given.Celsius(40), Given.Cst(105)), (Given.Celsius(100), Given.Cst(14.2))] }).Value;

    /// <summary>By hand: 4000·π·d·ν/4 is 22.62, 47.12 and four times 18.85 = 75.40 L/min at 10 cSt.</summary>
    [Fact]
    public void Takes_the_flow_that_its_hardest_bore_needs()
    {
        FlushAnswer answer = Flush.Of(new FlushQuestion(Circuit, Given.Cst(10))).Value;
        Assert.Equal(75.40, answer.Flow.LitresPerMinute, 2);
        Assert.True(answer.IsEnough);
        Assert.Equal([true, true, true], answer.Bores.Select(bore => bore.Enough));
        Assert.Equal(Regime.Turbulent, answer.Bores[2].Regime);
        Assert.Equal(4000, answer.Bores[2].Reynolds, 6);
        Assert.Equal(75.40 / 4, answer.Bores[2].Flow.LitresPerMinute, 2);
        Assert.All(answer.Bores, bore => Assert.Null(bore.Mend));
    }

    /// <summary>By hand: at 30 L/min the hose has 30/22.62·4000 = 5305, the gallery 2546, each branch 1592.</summary>
    [Fact]
    public void Says_which_bores_stay_below_and_what_mends_each()
    {
        FlushAnswer answer = Flush.Of(new FlushQuestion(Circuit, Given.Cst(10)) { Flow = Given.LitresPerMinute(30), Curve = Oil }).Value;
        Assert.False(answer.IsEnough);
        Assert.Equal(["hose", "gallery", "branch"], answer.Bores.Select(bore => bore.Part.Value));
        Assert.Equal([5305d, 2546, 1592], answer.Bores.Select(bore => Math.Round(bore.Reynolds)));
        Assert.Equal([Regime.Turbulent, Regime.Transitional, Regime.Laminar], answer.Bores.Select(bore => bore.Regime));

        Assert.Null(answer.Bores[0].Mend);
        FlushMend gallery = answer.Bores[1].Mend!;
        Assert.Equal(6.366, gallery.ThinnerTo!.Value.Centistokes, 3);
        Assert.Equal(6.366, Oil.At(gallery.HotterTo!.Value).Value.Centistokes, 3);
        Assert.Null(gallery.NoTemperatureBecause);
        Assert.Equal(47.12, gallery.CircuitFlow.LitresPerMinute, 2);
        Assert.False(gallery.OneBranchAtATime);

        FlushMend branch = answer.Bores[2].Mend!;
        Assert.Equal(18.85, branch.FlowAlone.LitresPerMinute, 2);
        Assert.Equal(75.40, branch.CircuitFlow.LitresPerMinute, 2);
        Assert.True(branch.OneBranchAtATime);
        Assert.Equal(3.979, branch.ThinnerTo!.Value.Centistokes, 3);
    }

    [Fact]
    public void Does_not_promise_one_branch_at_a_time_where_the_flow_is_too_small_for_one() =>
        Assert.False(Flush.Of(new FlushQuestion(Circuit, Given.Cst(10)) { Flow = Given.LitresPerMinute(18) }).Value.Bores[2].Mend!.OneBranchAtATime);

    [Fact]
    public void Says_why_it_names_no_temperature()
    {
        FlushQuestion question = new(Circuit, Given.Cst(10)) { Flow = Given.LitresPerMinute(0.5) };
        Assert.Equal("the fluid's viscosity is not known at two temperatures", Flush.Of(question).Value.Bores[0].Mend!.NoTemperatureBecause);
        FlushMend mend = Flush.Of(question with { Curve = Oil }).Value.Bores[1].Mend!;
        Assert.Null(mend.HotterTo);
        Assert.Equal("the viscosity is 0.106103 cSt; 0.21 to 20000000 cSt was expected", mend.NoTemperatureBecause);
        FlushMend still = Flush.Of(question with { Curve = Oil, Flow = default(FlowRate) }).Value.Bores[1].Mend!;
        Assert.Null(still.ThinnerTo);
        Assert.Equal("the flow is 0 L/min; more than 0 L/min was expected", still.NoTemperatureBecause);
    }

    [Fact]
    public void Has_the_pressure_where_length_and_density_are_said()
    {
        ImmutableArray<BoreToFlush> bores = [Circuit[0] with { Length = new Length(1.8) }, Circuit[1]];
        FlushAnswer answer = Flush.Of(new FlushQuestion(bores, Given.Cst(10)) { Density = Given.Density(875) }).Value;
        Assert.Equal(
            PressureLoss.Along(new(Given.Mm(12), new Length(1.8)), answer.Flow, Given.Cst(10), Given.Density(875)).Value,
            answer.Bores[0].Loss);
        Assert.Null(answer.Bores[1].Loss);
    }

    [Fact]
    public void Says_what_is_wrong_with_a_figure_and_of_which_part()
    {
        Assert.Equal("no bore is given; at least one was expected", Flush.Of(new FlushQuestion([], Given.Cst(10))).Fault!.Text);
        Assert.Equal("hose: the bore is 0 mm; more than 0 mm was expected", Flush.Of(new FlushQuestion([new(new PartId("hose"), default)], Given.Cst(10))).Fault!.Text);
        Assert.Equal(
            "hose: the flow divides among 0 branches; at least 1 was expected",
            Flush.Of(new FlushQuestion([Circuit[0] with { Branches = 0 }], Given.Cst(10))).Fault!.Text);
        Assert.Equal(
            "hose: the flow is -1 L/min; at least 0 L/min was expected",
            Flush.Of(new FlushQuestion(Circuit, Given.Cst(10)) { Flow = Given.LitresPerMinute(-1) }).Fault!.Text);
        Assert.Equal(
            "hose: the Reynolds number is 0; more than 0 was expected",
            Flush.Of(new FlushQuestion(Circuit, Given.Cst(10)) { WantedReynolds = 0 }).Fault!.Text);
    }
}
