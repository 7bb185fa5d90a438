using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Tests.Families;

/// <summary>Numbers and places that a part, a look or a joint may say or not say: unsaid is no number, and 0 is one.</summary>
public class What_is_said_of_a_part
{
    private static readonly Part Pipe = new(new PartId("pipe"), new Kind("pipe", new SourceSpan("kinds.yaml", 1, 1)), new SourceSpan("a.yaml", 3, 5));
    private static readonly Joint Onward = new(0, new PartId("pipe"), new PartId("hose"), "oil", new SourceSpan("a.yaml", 9, 9));
    private static readonly Inspection Glance = new(null, Shows.Fair, "", null);

    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    [InlineData(double.Epsilon)]
    [InlineData(8e-3)]
    [InlineData(-1.0)]
    [InlineData(double.MaxValue)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NaN)]
    public void Is_kept_as_it_is_said(double? number)
    {
        Part filled = Pipe with { Volume = number is double volume ? new Volume(volume) : null };
        Part bored = Pipe with { Bore = number is double bore ? new Length(bore) : null };
        Part cut = Pipe with { Length = number is double length ? new Length(length) : null };
        Assert.Equal((number, null, null), Said(filled));
        Assert.Equal((null, number, null), Said(bored));
        Assert.Equal((null, null, number), Said(cut));
        Assert.Equal(number, new Inspection(number, Shows.Good, "", null).Minutes);
        Assert.Equal(number, (Glance with { Minutes = number }).Minutes);

        static (double? Volume, double? Bore, double? Length) Said(Part part) => (part.Volume?.CubicMetres, part.Bore?.Metres, part.Length?.Metres);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    [InlineData(25.0)]
    [InlineData(double.PositiveInfinity)]
    public void Is_a_size_as_it_is_said(double? micrometres)
    {
        ParticleSize? size = micrometres is double known ? ParticleSize.FromMicrometres(known) : null;
        Assert.Equal(size, (Pipe with { Passage = size }).Passage);
        Assert.Equal(size, (Pipe with { Clearance = size }).Clearance);
        Assert.Null((Pipe with { Passage = size }).Clearance);
        Assert.Null((Pipe with { Clearance = size }).Passage);
        Assert.Equal(size, (Onward with { Passage = size }).Passage);
    }

    [Fact]
    public void Is_not_said_unless_it_is()
    {
        Assert.Equal((null, null, null, null, null), (Pipe.Passage, Pipe.Clearance, Pipe.Volume, Pipe.Bore, Pipe.Length));
        Assert.Equal((null, null, null), (Glance.Minutes, Glance.Place, Glance.Access));
        Assert.Equal((null, null), (Onward.Passage, Onward.OnlyIfFailed));
    }

    [Fact]
    public void May_be_taken_back()
    {
        Part said = Pipe with { Passage = ParticleSize.Zero, Bore = new Length(1) };
        Assert.Equal(Pipe, said with { Passage = null, Bore = null });
        Inspection look = new(5, Shows.Fair, "", new SourceSpan("a.yaml", 1, 1)) { Access = [] };
        Assert.Equal(Glance, look with { Minutes = null, Place = null, Access = null });
    }

    [Fact]
    public void Differs_where_one_says_0_and_the_other_nothing()
    {
        Assert.NotEqual(Pipe, Pipe with { Bore = new Length(0) });
        Assert.Equal(Pipe with { Bore = new Length(0) }, Pipe with { Bore = new Length(-0.0) });
        Assert.NotEqual(Glance, Glance with { Minutes = 0 });
        Assert.NotEqual(Onward, Onward with { Passage = ParticleSize.Zero });
    }

    [Fact]
    public void Tells_nothing_in_the_way_from_not_said()
    {
        Assert.Equal(ImmutableArray<PartId>.Empty, (Glance with { Access = [] }).Access);
        Assert.Null(Glance.Access);
        ImmutableArray<PartId> inTheWay = [new PartId("cover")];
        Assert.Equal(inTheWay, (Glance with { Access = inTheWay }).Access);
    }

    [Fact]
    public void Keeps_where_it_is_written()
    {
        var place = new SourceSpan("a.yaml", 4, 7);
        Assert.Equal(place, (Glance with { Place = place }).Place);
        Assert.Equal(place, new Inspection(1, Shows.Good, "", place).Place);
        Assert.Equal(new PartId("valve"), (Onward with { OnlyIfFailed = new PartId("valve") }).OnlyIfFailed);
    }
}
