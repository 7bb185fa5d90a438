using Contam.Families;
using Contam.Families.Reading;
using Contam.Reviews;
using Contam.Treatment.Reading;

namespace Contam.Tests.Reviews;

/// <summary>What is to be checked at the machine before a family is trusted.</summary>
public sealed class A_review
{
    private const string Engine = """
        format: 1
        family: engine
        fluids: {oil: {}, water: {}}
        parts:
          sump: {kind: sump}
          pump: {kind: pump, sheds: {metal: {likely: common, up-to: 400 um}}}   # kind not known for sure
          oil-filter: {kind: filter, holds: {metal: 10 um}, rating: absolute}   # page 12
          cooler: {kind: cooler}
          cooler-water: {kind: cooler}
          second-filter: {kind: filter}
          hose: {kind: hose, sheds: {rubber: rare}, passage: 4 mm}
        circuits:
          oil: {fluid: oil, runs: [[sump, pump, oil-filter, cooler, second-filter, sump]]}
          water: {fluid: water, runs: [[hose, cooler-water]]}
        links:
          - {from: cooler, to: cooler-water, circuit: oil, both-ways: true, only-if-failed: cooler}
        """;

    private static readonly FamilyReview Review = Reviewing.Of(Read());

    [Fact]
    public void Asks_what_parts_two_fluids()
    {
        Wall wall = Assert.Single(Review.Walls);
        Assert.Equal(new PartId("cooler"), wall.Part);
        Assert.True(wall.PartsFluids);
        Assert.Equal(["oil", "water"], wall.Sides.Select(side => Assert.Single(side)));
    }

    [Fact]
    public void Lists_each_return_and_each_circuit_without_one()
    {
        Joint back = Assert.Single(Review.Returns);
        Assert.Equal(("second-filter", "sump"), (back.From.Value, back.To.Value));
        Assert.Equal(["water"], Review.WithoutReturn.Select(circuit => circuit.Name));
    }

    [Fact]
    public void Shows_each_figure_with_the_comment_beside_it()
    {
        Assert.Equal([("oil-filter", "page 12", true, 10.0), ("hose", "", true, 4000.0)], Review.Barriers.Select(barrier => (barrier.Part!.Value.Value, barrier.Comment, barrier.IsReliedOn, barrier.Above.Micrometres)));
        Assert.All(Review.Barriers, barrier => Assert.True(barrier.Place.Line > 1));
    }

    [Fact]
    public void Lists_what_is_not_known() => Assert.Equal(
        [
            (DoubtKind.Comment, "kind not known for sure"),
            (DoubtKind.ShedsNothing, "sump"),
            (DoubtKind.ShedsNothing, "oil-filter"),
            (DoubtKind.ShedsNothing, "cooler"),
            (DoubtKind.ShedsNothing, "cooler-water"),
            (DoubtKind.HoldsNothing, "second-filter"),
            (DoubtKind.ShedsNothing, "second-filter"),
            (DoubtKind.AnySize, "hose"),
        ],
        Review.Doubts.Select(doubt => (doubt.Kind, doubt.About)));

    [Fact]
    public void Puts_first_the_joint_without_which_most_is_missed() =>
        Assert.Equal(("pump", "oil-filter"), (Review.Joints!.Value[0].Joints[0].From.Value, Review.Joints.Value[0].Joints[0].To.Value));

    private static Family Read()
    {
        Outcome<Family> read = FamilyReader.ReadText(Engine, "engine.yaml", BuiltInStandards.HouseOverKinds.CatalogueOf());
        Assert.Equal("", string.Join('\n', read.Problems.Select(problem => problem.Text)));
        return read.Value!;
    }
}
