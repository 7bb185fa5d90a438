using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using Contam.Why;

namespace Contam.Properties.Engine;

/// <summary>What is said of one part, held against the spread and the dominators of the whole graph.</summary>
public class The_reason_why
{
    [Fact]
    public void Names_the_immediate_dominator_as_the_last_single_part() => ForEvery.Case(
        asked =>
        {
            SpreadQuestion question = asked.Question(asked.Asked[0]);
            SpreadGraph graph = SpreadGraph.Of(question);
            int[] dominators = Dominators.Immediate(graph.Open, [.. graph.Sources]);

            Assert.All(Spreading.Of(question).Parts, reached =>
            {
                PartId? last = dominators[asked.Family.IndexOf(reached.Part)] is var dominator and >= 0 ? asked.Family.Parts[dominator].Id : null;
                Assert.Equal(last, Explaining.Of(question, reached.Part, asked.Standard).LastSinglePart);
            });
        },
        runs: 300,
        mostParts: 40);
}
