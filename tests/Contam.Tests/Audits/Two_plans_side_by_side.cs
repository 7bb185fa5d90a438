using System.Collections.Immutable;
using Contam.Audits;
using Contam.Families;
using Contam.Treatment;
using Contam.Treatment.Reading;
using static Contam.Tests.Audits.Audited;

namespace Contam.Tests.Audits;

public sealed class Two_plans_side_by_side
{
    [Fact]
    public void Of_the_same_are_the_same()
    {
        PlanComparison plans = Compare(Winch(), Winch());
        Assert.Equal(("sump, pump, line, motor", 0, false, false, false), (string.Join(", ", plans.Same), plans.Parts.Length, plans.IsChanged, plans.HasOtherTimes, plans.HasOtherWords));
    }

    [Fact]
    public void Name_the_joint_that_one_has_not() => Assert.Equal(
        ["far-hose OnlySecond: winch has no joint `motor` to `far-hose` (engine.yaml:17)", "far-pipe OnlySecond: winch has no joint `motor` to `far-hose` (engine.yaml:17)", "cooler OnlySecond: winch has no joint `motor` to `far-hose` (engine.yaml:17)"],
        Told(Compare(Winch(), Winch(runs: "- [motor, far-hose]"))));

    [Fact]
    public void Name_the_joint_that_is_closed()
    {
        string closed = Winch() + "\nlinks: [{from: motor, to: far-hose, circuit: oil, only-if-failed: motor}]";
        Assert.Equal(
            "far-hose OnlyFirst: the joint `motor` to `far-hose` (engine.yaml:17) is closed in winch (engine.yaml:18)",
            Told(Compare(Winch(runs: "- [motor, far-hose]"), closed))[0]);
    }

    [Fact]
    public void Name_the_part_that_one_has_not() => Assert.Equal(
        ["drum OnlyFirst: winch has no such part"],
        Told(Compare(Winch("drum: {kind: housing}", "- [motor, drum]"), Winch())));

    [Fact]
    public void Name_both_rules_where_a_treatment_differs()
    {
        string told = Assert.Single(Told(Compare(Winch(), Winch(), second: "rules: [{for: {kind: hydraulic-motor, debris: metal}, exposed: [test], guarded: [test], because: a trial}]")));
        Assert.Matches("^motor Treatment: the first by house.yaml:[0-9]+, the second by shop.yaml:3$", told);
    }

    [Fact]
    public void Tell_a_grade_that_alone_differs()
    {
        string held = Winch(line: "line: {kind: hose, cleared-by: nothing, passage: 20 um, inspect: {minutes: 5, shows: good}}").Replace("motor: {kind: hydraulic-motor}", "motor: {kind: hydraulic-motor, cleared-by: nothing}", StringComparison.Ordinal);
        string open = held.Replace("passage: 20 um, ", "", StringComparison.Ordinal);
        Assert.Contains("motor Grade: exposed to metal in the first, guarded from metal in the second", Told(Compare(open, held)));
    }

    [Fact]
    public void See_a_time_that_alone_differs()
    {
        PlanComparison plans = Compare(Winch(), Winch(), second: "times: {hydraulic-motor: {remove: 500}}");
        Assert.Equal((true, true, 0, false), (plans.IsChanged, plans.HasOtherTimes, plans.Parts.Length, plans.HasOtherWords));
        Assert.True(plans.BenchHours > 5);
    }

    [Fact]
    public void See_a_caution_that_alone_differs()
    {
        PlanComparison plans = Compare(Winch(), Winch(), second: "cautions: [{for: {circuit: oil}, say: mind the deck, source: common practice}]");
        Assert.Equal((false, true), (plans.IsChanged, plans.HasOtherWords));
    }

    [Fact]
    public void Are_compared_for_the_failures_that_both_have()
    {
        ShopStandard house = BuiltInStandards.HouseOverKinds;
        string other = Winch(line: "line: {kind: hose, sheds: {rubber: rare}}").Replace("motor: {kind: hydraulic-motor}", "motor: {kind: hydraulic-motor, sheds: {metal: rare}}", StringComparison.Ordinal);
        ComparisonAnswer all = Comparing.All([(new ComparedSide(Family(Winch(line: "line: {kind: hose, sheds: {metal: rare}}")), house), new ComparedSide(Family(other), house))], "a", "b", jobs: 2);
        Assert.Equal(["pump metal"], Names(all.Failures.Select(failure => failure.Name)));
        Assert.Equal(["line metal"], Names(all.OnlyFirst));
        Assert.Equal(["line rubber", "motor metal"], Names(all.OnlySecond));
    }

    private static string[] Names(IEnumerable<FailureName> names) => [.. names.Select(name => $"{name.Parts[0]} {name.Debris[0]}")];

    private static string[] Told(PlanComparison plans) => [.. plans.Parts.Select(part => $"{part.Part} {part.Difference}: {part.Because}")];

    private static PlanComparison Compare(string first, string other, string second = "")
    {
        ShopStandard house = BuiltInStandards.HouseOverKinds;
        ShopStandard shop = second.Length == 0 ? house : StandardReader.ReadText($"format: 1\nstandard: shop\n{second}", "shop.yaml").Value!.Over(house);
        var question = new ComparedQuestion([new PartId("pump")], [Debris.Metal]);
        return Comparing.One(new ComparedSide(Family(first), house), new ComparedSide(Family(other, shop), shop), question).Plans;
    }
}
