using System.Collections.Immutable;
using Contam.Families;
using Contam.Properties.Spread;
using Contam.Spread;
using Contam.Support;

namespace Contam.Properties.Engine;

/// <summary>The sets of all failures at once against one walk for each.</summary>
public class The_reach_sets
{
    [Theory]
    [InlineData(1_000)]
    [InlineData(3)]
    [InlineData(1)]
    public void Of_all_failures_are_those_of_each_by_itself(int sourcesInABlock) => ForEvery.Case(asked =>
    {
        var next = 0;
        foreach (ReachBlock block in ReachSets.Of(asked.Family, (long)sourcesInABlock * asked.Family.Parts.Length))
        {
            Assert.Equal(next, block.First);
            Assert.InRange(block.Count, 1, sourcesInABlock);
            for (int failed = block.First; failed < block.First + block.Count; failed++)
            {
                var alone = new SpreadQuestion(asked.Family, [asked.Family.Parts[failed].Id], Debris.Metal);
                Assert.Equal(ReferenceSpread.Of(alone).Parts.Select(part => part.Part), block.From(failed));
            }

            next += block.Count;
        }

        Assert.Equal(asked.Family.Parts.Length, next);
    }, runs: 100);

    [Fact]
    public void Are_there_for_no_part_of_another_block() => ForEvery.Case(asked =>
    {
        foreach (ReachBlock block in ReachSets.Of(asked.Family, 2L * asked.Family.Parts.Length))
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => block.Reaches(block.First - 1, 0));
            Assert.Throws<ArgumentOutOfRangeException>(() => block.Reaches(block.First + block.Count, 0));
            Assert.Throws<ArgumentOutOfRangeException>(() => block.Reaches(block.First, asked.Family.Parts.Length));
        }
    });
}
