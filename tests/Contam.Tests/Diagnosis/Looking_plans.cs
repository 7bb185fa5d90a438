using System.Globalization;
using Contam.Diagnosis;

namespace Contam.Tests.Diagnosis;

public class Looking_plans
{
    [Fact]
    public void Say_where_to_look_and_where_then()
    {
        // a and b, even. A find at x makes a 0.9 / 0.91 = 0.989 sure; clean leaves b 1 / 1.1 = 0.909 sure. So one look ends it, and x is the cheaper.
        LookingPlan plan = Looking.Plan(Asked.Of("a[sheds metal] > x[look=good:4]; b[sheds metal] > y[look=good:6]"), 0.9);
        Assert.Equal("x(4) found: a 0.989 Sure; clean: b 0.909 Sure", Text(plan.Root));
        Assert.Equal((true, 2, 4.0), (plan.IsExact, plan.Places, plan.ExpectedMinutes));
    }

    [Fact]
    public void Go_on_where_one_look_is_not_enough()
    {
        // With 0.95 wanted a clean x is not enough, and y follows. Found there, b is sure: 0.9 to 0.1 × 0.01. Clean there, both are at 0.1 and nothing is left.
        LookingPlan plan = Looking.Plan(Asked.Of("a[sheds metal] > x[look=good:4]; b[sheds metal] > y[look=good:6]"), 0.95);
        Assert.Equal("x(4) found: a 0.989 Sure; clean: y(6) found: b 0.999 Sure; clean: a 0.5 NothingTells", Text(plan.Root));
        // Clean at x: 0.5 × 0.1 + 0.5 × 1 / 1.01.
        Assert.Equal(4 + (6 * (0.05 + (0.5 / 1.01))), plan.ExpectedMinutes!.Value, 9);
    }

    [Fact]
    public void End_at_once_where_the_source_is_known()
    {
        LookingPlan plan = Looking.Plan(Asked.Of("a[sheds metal] > x[look=good]; b[sheds metal rare]"), 0.9);
        Assert.Equal(("a 0.9 Sure", 0.0), (Text(plan.Root), plan.ExpectedMinutes));
    }

    [Fact]
    public void End_where_no_look_tells_anything()
    {
        LookingPlan plan = Looking.Plan(Asked.Of("a[sheds metal] > x[look=good]; b[sheds metal] > x"), 0.9);
        Assert.Equal(("a 0.5 NothingTells", 0), (Text(plan.Root), plan.Places));
    }

    [Fact]
    public void Of_no_suspect_end_at_once() => Assert.Empty(Looking.Plan(Asked.Of("a > x[look=good]"), 0.9).Root.Leaders);

    [Fact]
    public void With_more_than_twelve_places_take_the_best_look_each_time()
    {
        LookingPlan exact = Looking.Plan(Asked.Of(Star(12)), 0.9);
        LookingPlan greedy = Looking.Plan(Asked.Of(Star(13)), 0.9);
        Assert.True(exact.IsExact);
        Assert.NotNull(exact.ExpectedMinutes);
        Assert.False(greedy.IsExact);
        // The last place takes least time and tells as much as any.
        Assert.Equal("p13", greedy.Root.Look!.Part.Value);
    }

    [Fact]
    public void Of_a_long_search_are_written_out_from_the_likeliest_branch_on()
    {
        // A look that shows poorly leaves nobody sure for long.
        LookingPlan plan = Looking.Plan(Asked.Of(Star(12).Replace("good", "poor", StringComparison.Ordinal)), 0.9);
        Assert.Equal(LookingTree.MostLooks, Looks(plan.Root));
        Assert.NotNull(plan.ExpectedMinutes);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void Need_a_share_that_can_be_come_to(double sure) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Looking.Plan(Asked.Of("a[sheds metal] > x[look=good]"), sure));

    // Each of n suspects has a place of its own; the later the quicker to look at.
    private static string Star(int count) => string.Join("; ", Enumerable.Range(1, count).Select(i => string.Create(CultureInfo.InvariantCulture, $"s{i}[sheds metal] > p{i}[look=good:{30 - i}]")));

    private static int Looks(LookingNode node) => node.Look is null ? 0 : 1 + Looks(node.Found!) + Looks(node.Clean!);

    private static string Text(LookingNode node) => node.Look is { } look
        ? string.Create(CultureInfo.InvariantCulture, $"{look.Part}({look.Minutes}) found: {Text(node.Found!)}; clean: {Text(node.Clean!)}")
        : string.Create(CultureInfo.InvariantCulture, $"{node.Leaders[0]} {node.LeaderShare:0.###} {node.End}");
}
