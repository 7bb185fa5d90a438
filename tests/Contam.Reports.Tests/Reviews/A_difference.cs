using Contam.Families;
using Contam.Reports.Reviews;
using Contam.Reviews;
using Contam.Support.Notation;

namespace Contam.Reports.Tests.Reviews;

/// <summary>What changed between two families, in words.</summary>
public sealed class A_difference
{
    private const string Ring = "oil: pump[sheds metal 400] > filter[holds metal 30 abs] > motor > tank > pump";

    [Fact]
    public void Of_a_family_from_itself_is_none() => Assert.Equal([], Between(Ring, Ring));

    [Fact]
    public void Does_not_count_the_order_of_the_file() => Assert.Equal([], Between("oil: a[sheds metal 400] > b; oil: a > c", "oil: a[sheds metal 400] > c; oil: a > b"));

    [Fact]
    public void Names_a_return_that_was_forgotten_and_what_it_reaches() => Assert.Equal(
        [
            "part added: drain",
            "joint added: motor > drain (oil)",
            "joint added: drain > sump (oil)",
            "a failure of pump (metal) now reaches 2 parts more: sump, drain",
        ],
        Between("oil: pump[sheds metal 400] > motor; oil: sump > pump", "oil: pump[sheds metal 400] > motor; oil: sump > pump; oil: motor > drain > sump"));

    [Fact]
    public void Names_what_is_reached_no_more() => Assert.Equal(
        [
            "part gone: tank",
            "joint gone: motor > tank (oil)",
            "a failure of pump (metal) now reaches 1 part less: tank",
        ],
        Between("oil: pump[sheds metal 400] > motor > tank", "oil: pump[sheds metal 400] > motor"));

    [Fact]
    public void Tells_a_barrier_that_is_relied_on_no_more() => Assert.Equal(
        [
            "filter: rating \u201cabsolute\u201d, now \u201cnominal\u201d",
            "a failure of pump (metal) now reaches 2 parts at full size, not past a barrier: motor, tank",
        ],
        Between(Ring, Ring.Replace("abs", "nominal", StringComparison.Ordinal)));

    [Fact]
    public void Tells_a_barrier_that_is_new() => Assert.Equal(
        [
            "filter: holds not said, now \u201cmetal 30 um\u201d",
            "filter: rating not said, now \u201cabsolute\u201d",
            "a failure of pump (metal) now reaches 2 parts only past a barrier: motor, tank",
        ],
        Between(Ring.Replace("[holds metal 30 abs]", "", StringComparison.Ordinal), Ring));

    [Fact]
    public void Takes_a_joint_that_says_something_else_for_another() => Assert.Equal(
        [
            "joint added: a > b (oil, if seal has failed)",
            "joint gone: a > b (oil)",
            "a failure of a (metal) now reaches 1 part less: b",
        ],
        Between("a[sheds metal 400]; b; seal; oil: a >-> b", "a[sheds metal 400]; b; seal; oil: a >?seal> b"));

    [Fact]
    public void Counts_one_of_two_joints_that_are_alike() => Assert.Equal(["joint gone: a > b (oil)"], Between("oil: a > b; oil: a > b", "oil: a > b"));

    private static string[] Between(string before, string after)
    {
        Family was = CaseReader.System(before), now = CaseReader.System(after);
        return [.. DifferenceWords.Of(FamilyDifference.Between(was, now), was, now)];
    }
}
