using Contam.Support;
using Contam.Support.Generation;
using Contam.Support.Notation;

namespace Contam.Properties.Generation;

public class The_shrinker
{
    [Fact]
    public void Gives_only_sensible_and_other_cases() => ForEvery.Case(
        asked =>
        {
            string whole = asked.ToString();
            Assert.All(CaseShrinker.Shrink(asked), simpler =>
            {
                Assert.True(simpler.IsSensible);
                Assert.NotEqual(whole, simpler.ToString());
            });
        },
        runs: 50,
        mostParts: 25);

    [Fact]
    public void Comes_to_an_end_at_the_plainest_case_there_is()
    {
        TestCase asked = Cases.Make(4);
        while (CaseShrinker.Shrink(asked).FirstOrDefault() is { } simpler)
            asked = simpler;

        Assert.Single(asked.Family.Parts);
        Assert.Empty(CaseShrinker.Shrink(asked));
    }

    // The fault: "an absolute hold lies beyond the failed part". The smallest such case has two parts and one joint.
    [Fact]
    public void Finds_the_few_parts_that_matter()
    {
        static bool IsFaulty(TestCase asked) => asked.Family.Joints.Any(joint =>
            asked.Failed.Contains(joint.From) && asked.Family[joint.To] is { HasAbsoluteRating: true, Holds.Length: > 0 });
        TestCase asked = Enumerable.Range(0, 1000).Select(seed => Cases.Make(seed)).First(sample => sample.Family.Parts.Length > 50 && IsFaulty(sample));

        while (CaseShrinker.Shrink(asked).FirstOrDefault(IsFaulty) is { } simpler)
            asked = simpler;

        Assert.Equal(2, asked.Family.Parts.Length);
        Assert.Single(asked.Family.Joints);
        Assert.Single(asked.Failed);
        Assert.Empty(asked.Findings);
        Assert.Empty(asked.Standard.Rules);
        Assert.True(asked.ToString().Length < 100, asked.ToString());
        Assert.True(IsFaulty(CaseReader.Read(asked.ToString())));
    }
}
