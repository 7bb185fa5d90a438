using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>A part that takes two clean places on every way to it is spared by no fewer, and by none that was not made.</summary>
public class Looks_before_a_part_that_takes_two
{
    private static readonly Family Family = CaseReader.System("pump > screen[inplace look=good] > port[inplace look=good] > bearing[inplace two-looks]");

    private const string Parts = """
        pump replace
        screen inspect+clean exposed any pump
        port inspect+clean exposed any screen
        bearing clean exposed any port
        """;

    private const string Steps = """
        safe
        look pump
        remove pump
        inspect screen
        inspect port
        replace pump
        clean screen onlyif=A
        clean port onlyif=B
        clean bearing onlyif=A+B
        refit pump
        prove
        """;

    [Fact]
    public void Spare_it_where_both_are_clean() => Answered("A screen 4; B port 5", Steps, null, histories: 4);

    // Not due is not clean.
    [Fact]
    public void Spare_nothing_where_the_second_is_not_due() => Answered(
        "A screen 4; B port 5 A",
        Steps.Replace("inspect port", "inspect port onlyif=A", StringComparison.Ordinal),
        "with A clean, B not due: bearing is said to be left alone, but debris can have come to it: it would go back as dirty as it is",
        histories: 3);

    [Fact]
    public void Spare_nothing_where_they_are_one_at_one_place() => Answered(
        "A screen 4",
        Steps.Replace("inspect port\n", "inspect port onlyif=A\n", StringComparison.Ordinal).Replace("onlyif=B", "onlyif=A", StringComparison.Ordinal).Replace("A+B", "A", StringComparison.Ordinal),
        "with A clean: bearing is said to be left alone, but debris can have come to it: it would go back as dirty as it is",
        histories: 2,
        bearing: "A");

    // Two places are two clean places, though they are one look.
    [Fact]
    public void Spare_it_where_one_is_made_at_both_places() => Answered(
        "A screen+port 4",
        Steps.Replace("inspect screen\n", "inspect screen+port\n", StringComparison.Ordinal).Replace("inspect port\n", "", StringComparison.Ordinal)
            .Replace("onlyif=B", "onlyif=A", StringComparison.Ordinal).Replace("A+B", "A", StringComparison.Ordinal),
        null,
        histories: 2,
        bearing: "A");

    [Fact]
    public void Are_for_nothing_where_nothing_spares_it()
    {
        Family family = CaseReader.System("pump > screen[inplace look=good] > port[inplace look=good] > bearing[inplace critical]");
        PlanDocument plan = BranchingPlan.Of(family, "pump", "A screen 4; B port 5", "bearing A+B", Parts, Steps);
        Assert.StartsWith("with A clean, B clean: bearing is said to be left alone", PlanVerifier.Verify(plan, family).Claims[(int)ClaimKind.Treated].Where, StringComparison.Ordinal);
    }

    private static void Answered(string looks, string steps, string? where, int histories, string bearing = "A+B")
    {
        PlanDocument plan = BranchingPlan.Of(Family, "pump", looks, $"bearing {bearing}", Parts, steps);
        Verification verification = PlanVerifier.Verify(plan, Family);
        Assert.Equal(where, verification.Claims[(int)ClaimKind.Treated].Where);
        Assert.Equal(where is null, verification.Holds);
        Assert.Equal(histories, verification.Histories);
    }
}
