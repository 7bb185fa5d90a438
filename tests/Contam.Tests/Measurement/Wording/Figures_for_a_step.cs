using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Wording;
using Contam.Support;

namespace Contam.Tests.Measurement.Wording;

public sealed class Figures_for_a_step
{
    private static readonly SourceSpan Nowhere = new("family.yaml", 1, 1);

    private static readonly Fluid Diesel = new("diesel-fuel", Nowhere) { Viscosity = [(Given.Celsius(40), Given.Cst(15)), (Given.Celsius(100), Given.Cst(3))] };

    private static Part Bored(string id, double millimetres, string? repeatOf = null, int number = 0) =>
        new(new PartId(id), ShopFloor.Part, Nowhere) { Bore = Given.Mm(millimetres), RepeatOf = repeatOf, RepeatIndex = number };

    private static Family With(ImmutableArray<Fluid> fluids, ImmutableArray<Limit> limits, params Part[] parts) =>
        new(
            "engine",
            [.. parts],
            [new Circuit("fuel", Nowhere) { Fluid = "diesel-fuel", Parts = [.. parts.Select(part => part.Id)] }],
            [.. parts.Select((part, i) => new Joint(i, part.Id, parts[0].Id, "fuel", Nowhere) { IsLink = part.Id.Value == "by-link-alone" })]) { Fluids = fluids, Limits = limits };

    /// <summary>12 mm and 15 cSt at Reynolds 4000 is 33.93 L/min: worked out by an independent program.</summary>
    [Fact]
    public void Say_the_least_flow_of_the_widest_bore()
    {
        Part[] parts = [Bored("pipe", 8), Bored("rail", 12), new Part(new PartId("tank"), ShopFloor.Part, Nowhere)];
        Assert.Equal("at least 34 L/min at 40 °C (Reynolds 4000, 12 mm bore)", new FlushFigures(With([Diesel], [], parts)).For([.. parts]));
    }

    [Fact]
    public void Count_the_branches_that_are_flushed_together()
    {
        Part[] parts = [Bored("pipe-1", 4, "pipe", 1), Bored("pipe-2", 4, "pipe", 2), Bored("pipe-3", 4, "pipe", 3), Bored("pipe-4", 4, "pipe", 4), Bored("rail", 12)];
        Family family = With([Diesel], [], parts);
        // 16 mm of bore in all beats the 12 mm rail: 4/3 of 33.93 is 45.24.
        Assert.Equal("at least 46 L/min at 40 °C (Reynolds 4000, 4 bores of 4 mm)", new FlushFigures(family).For([.. parts]));
        Assert.Equal("at least 12 L/min at 40 °C (Reynolds 4000, 4 mm bore)", new FlushFigures(family).For([parts[2]]));
    }

    /// <summary>105 and 14.2 cSt give 46.0147 cSt at 60 °C (ASTM D341 by another program): 104.08 L/min in 12 mm.</summary>
    [Fact]
    public void Reckon_a_thick_oil_warm()
    {
        var oil = new Fluid("diesel-fuel", Nowhere) { Viscosity = [(Given.Celsius(40), Given.Cst(105)), (Given.Celsius(100), Given.Cst(14.2))] };
        Part[] parts = [Bored("gallery", 12)];
        Assert.Equal("at least 110 L/min at 60 °C (Reynolds 4000, 12 mm bore)", new FlushFigures(With([oil], [], parts)).For([.. parts]));
    }

    [Fact]
    public void Leave_out_a_part_that_only_a_link_brings_to_the_circuit()
    {
        Part[] parts = [Bored("rail", 12), Bored("by-link-alone", 40)];
        Assert.Equal("at least 34 L/min at 40 °C (Reynolds 4000, 12 mm bore)", new FlushFigures(With([Diesel], [], parts)).For([.. parts]));
    }

    [Fact]
    public void Are_not_said_where_bore_or_fluid_is_not_known()
    {
        Part[] parts = [Bored("rail", 12)];
        Part[] none = [new Part(new PartId("tank"), ShopFloor.Part, Nowhere)];
        Assert.Null(new FlushFigures(With([Diesel], [], none)).For([.. none]));
        Assert.Null(new FlushFigures(With([], [], parts)).For([.. parts]));
        Assert.Null(new FlushFigures(With([Diesel with { Viscosity = [Diesel.Viscosity[0]] }], [], parts)).For([.. parts]));
        Assert.Null(new FlushFigures(With([Diesel], [], parts)).For([]));
    }

    private static Limit Of(string part, Measure measures, Threshold good, Threshold? reject = null) =>
        Given.Limit(measures, good, reject) with { Part = new PartId(part) };

    [Fact]
    public void Say_what_a_part_must_measure_up_to()
    {
        Part shaft = Bored("shaft", 1);
        Part other = Bored("other", 1);
        Family family = With(
            [],
            [
                Of("shaft", Measure.RunOut, new Threshold(Comparison.AtMost, 0, "<= 6 thou"), new Threshold(Comparison.Above, 0, "> 9 thou")),
                Of("other", Measure.Clearance, new Threshold(Comparison.AtMost, 0, "<= 1 mm")),
                Of("shaft", Measure.PressureDrop, new Threshold(Comparison.Below, 0, "< 0.5 psi")) with { At = new Pressure(10 * 6894.757293168361), Over = TimeSpan.FromMinutes(10) },
                Of("shaft", Measure.Cleanliness, Given.Code(Comparison.AtMost, 18, 16, 13), Given.Code(Comparison.AtLeast, 20, 18, 15) with { Text = ">= 20/18/15" }),
            ],
            shaft,
            other);
        Assert.Equal(
            "run-out good to 6 thou, reject above 9 thou; pressure drop good below 0.5 psi, else rejected, in 10 min from 10 psi; cleanliness good to 18/16/13, reject from 20/18/15",
            LimitFigures.For(family, shaft));
        Assert.Equal("clearance good to 1 mm, else rejected", LimitFigures.For(family, other));
        Assert.Null(LimitFigures.For(family, Bored("third", 1)));
    }
}
