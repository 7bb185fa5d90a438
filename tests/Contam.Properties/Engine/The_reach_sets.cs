using System.Collections.Immutable;
using Contam.Families;
using Contam.Properties.Spread;
using Contam.Spread;
using Contam.Support;

namespace Contam.Properties.Engine;

/// <summary>The sets of all failures at once against one walk for each.</summary>
public class The_reach_sets
{
    [Fact]
    public void Of_all_failures_are_those_of_each_by_itself() => ForEvery.Case(asked =>
    {
        PartId[][] alone = [.. asked.Family.Parts.Select(failed => ReferenceSpread.Of(new SpreadQuestion(asked.Family, [failed.Id], Debris.Metal)).Parts.Select(part => part.Part).ToArray())];
        foreach (int sourcesInABlock in new[] { 1_000, 3, 1 })
        {
            int next = 0;
            foreach (ReachBlock block in ReachSets.Of(asked.Family, (long)sourcesInABlock * asked.Family.Parts.Length))
            {
                Assert.Equal(next, block.First);
                Assert.InRange(block.Count, 1, sourcesInABlock);
                for (int failed = block.First; failed < block.First + block.Count; failed++)
                    Assert.Equal(alone[failed], block.From(failed));
                next += block.Count;
            }

            Assert.Equal(asked.Family.Parts.Length, next);
        }
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
