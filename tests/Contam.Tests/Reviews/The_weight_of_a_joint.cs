using System.Collections.Immutable;
using Contam.Families;
using Contam.Reviews;
using Contam.Spread;
using Contam.Support;
using Contam.Support.Notation;
using Contam.Treatment.Reading;
using Contam.Families.Reading;

namespace Contam.Tests.Reviews;

/// <summary>What would be missed if a joint had been forgotten.</summary>
public sealed class The_weight_of_a_joint
{
    public static TheoryData<string> Families => ["outboard-gearcase", "stern-trim-unit", "harbour-reverse-gear", "dinghy-four-stroke"];

    [Fact]
    public void Counts_all_that_lies_beyond_the_only_way() => Assert.Equal(
        [(1, 2L, 0L), (1, 1L, 0L)],
        Weights("pump[sheds metal 400] > pipe > tank"));

    [Fact]
    public void Is_nothing_where_there_is_another_way() => Assert.Equal(
        [(1, 1L, 0L), (0, 0L, 0L), (1, 1L, 0L), (0, 0L, 0L)],
        Weights("pump[sheds metal 400] > left > tank; pump > right > tank"));

    [Fact]
    public void Counts_what_would_only_be_taken_as_held_back() => Assert.Equal(
        [(1, 1L, 0L), (0, 0L, 0L), (1, 1L, 1L), (1, 0L, 1L)],
        Weights("pump[sheds metal 400] > filter[holds metal 30 abs] > tank; pump > bypass > tank"));

    [Fact]
    public void Counts_a_way_that_opens_only_when_the_failed_part_has_failed() => Assert.Equal(
        [(1, 1L, 0L)],
        Weights("seal[sheds rubber]; a; seal >?seal> a"));

    /// <summary>Against the definition itself: every joint left out in turn, every failure spread again.</summary>
    [Theory]
    [MemberData(nameof(Families))]
    public void Is_what_leaving_the_joint_out_shows(string name)
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        (Part Part, Shed Shed)[] failures = [.. family.Parts.SelectMany(part => part.Sheds.Select(shed => (part, shed)))];
        ReachedPart?[][] whole = [.. failures.Select(failure => Spread(family, failure))];
        ImmutableArray<JointWeight> weights = JointWeights.Of(family)!.Value;
        foreach (Joint left in family.Joints)
        {
            var without = new Family(family.Id, family.Parts, family.Circuits, [.. family.Joints.Where(joint => joint.Id != left.Id).Select((joint, id) => joint with { Id = id })]) { States = family.States };
            (int plans, long missed, long lowered) = (0, 0, 0);
            for (int i = 0; i < failures.Length; i++)
            {
                ReachedPart?[] now = Spread(without, failures[i]);
                int lost = whole[i].Where((part, place) => part is not null && now[place] is null).Count();
                int less = whole[i].Where((part, place) => part?.Grade == Grade.Exposed && now[place]?.Grade == Grade.Guarded).Count();
                (plans, missed, lowered) = (plans + (lost + less > 0 ? 1 : 0), missed + lost, lowered + less);
            }

            Assert.Equal((left, plans, missed, lowered), (weights[left.Id].Joint, weights[left.Id].Plans, weights[left.Id].Missed, weights[left.Id].Lowered));
        }
    }

    private static ReachedPart?[] Spread(Family family, (Part Part, Shed Shed) failure)
    {
        DebrisSpread spread = Spreading.Of(new SpreadQuestion(family, [failure.Part.Id], failure.Shed.Debris));
        return [.. family.Parts.Select(part => spread.Find(part.Id))];
    }

    private static (int, long, long)[] Weights(string system) => [.. JointWeights.Of(CaseReader.System(system))!.Value.Select(weight => (weight.Plans, weight.Missed, weight.Lowered))];
}
