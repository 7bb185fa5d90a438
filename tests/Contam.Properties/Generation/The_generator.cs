using Contam.Families;
using Contam.Support;
using Contam.Support.Generation;
using Contam.Support.Notation;
using Contam.Treatment;

namespace Contam.Properties.Generation;

public class The_generator
{
    private static readonly TestCase[] Samples = [.. Enumerable.Range(0, 500).Select(seed => Cases.Make(seed))];

    public static TheoryData<string> FeatureNames => [.. Features.All.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(FeatureNames))]
    public void Makes(string feature)
    {
        int made = Samples.Count(Features.All[feature]);

        Assert.True(made >= 5, $"of {Samples.Length} cases {made} have: {feature}");
    }

    [Fact]
    public void Spreads_sizes_from_1_to_200()
    {
        int[] sizes = [.. Samples.Select(sample => sample.Family.Parts.Length)];

        Assert.All(sizes, size => Assert.InRange(size, 1, 200));
        foreach ((int from, int to) in new[] { (1, 1), (2, 4), (5, 10), (11, 25), (26, 50), (51, 100), (101, 150), (151, 190), (191, 200) })
            Assert.True(sizes.Count(size => size >= from && size <= to) >= 5, $"too few of {from} to {to} parts");
    }

    [Fact]
    public void Makes_the_same_case_from_the_same_seed() =>
        Assert.Equal(Written(17), Written(17));

    [Fact]
    public void Is_drawn_from_as_often_as_a_rule_asks_for()
    {
        var drawn = new HashSet<string>(StringComparer.Ordinal);
        ForEvery.Case(asked => drawn.Add(asked.ToString()));

        Assert.True(drawn.Count >= ForEvery.Runs(ForEvery.Usual) * 0.95, $"only {drawn.Count} cases differ");
    }

    [Fact]
    public void Makes_only_sensible_cases_with_access_in_no_circle() => ForEvery.Case(asked =>
    {
        Assert.True(asked.IsSensible);
        Assert.False(Features.HasAccessInACircle(asked.Family));
    });

    [Fact]
    public void Makes_no_two_rules_for_the_same_thing() => Assert.All(Samples, sample =>
        Assert.Equal(sample.Standard.Rules.Length, sample.Standard.Rules.Select(rule => rule.For).Distinct().Count()));

    private static string Written(int seed) => Notation.Written.Fully(Cases.Make(seed));
}
