using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

/// <summary>A part that asks for two looks is cleared behind two clean places, and no sooner; the verifier counts them for itself.</summary>
public class A_plan_with_two_clean_places
{
    private const string OneWay = "pump > screen[inplace look=good] > gallery[inplace look=good] > bearing[two-looks look=good]\n@failed pump\n";

    [Theory]
    [InlineData(OneWay, Grade.Exposed)]
    [InlineData(OneWay + "@clean screen metal", Grade.Exposed)]
    [InlineData(OneWay + "@clean bearing metal", Grade.Exposed)]
    [InlineData(OneWay + "@clean screen metal\n@clean gallery metal", Grade.Cleared)]
    [InlineData(OneWay + "@clean gallery metal\n@clean bearing metal", Grade.Cleared)]
    [InlineData("pump > screen[look=good] > bearing[two-looks]; pump > pipe[look=good] > bearing\n@failed pump\n@clean screen metal\n@clean pipe metal", Grade.Exposed)]
    [InlineData("pump > screen[look=good] > pipe > screen > bearing[two-looks]\n@failed pump\n@clean screen metal", Grade.Exposed)]
    public void Holds(string text, Grade grade)
    {
        (Family family, PlanDocument plan) = Plan(text);
        Assert.Equal(grade, plan.Parts.Single(part => part.Id == "bearing").Exposure.Single().Grade);
        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(plan, family).Claims.Select(claim => claim.Where));
    }

    [Theory]
    [InlineData(OneWay + "@clean screen metal")]
    [InlineData(OneWay + "@clean bearing metal")]
    [InlineData("pump > screen[look=good] > bearing[two-looks]; pump > pipe[look=good] > bearing\n@failed pump\n@clean screen metal\n@clean pipe metal")]
    public void Is_refused_where_the_part_is_cleared_sooner(string text) => Refused(
        text, Grade.Cleared, ClaimKind.Closed, "bearing is called cleared for metal, but it is exposed: it would be treated too lightly");

    [Fact]
    public void Is_refused_where_the_part_is_treated_for_nothing() => Refused(
        OneWay + "@clean screen metal\n@clean gallery metal", Grade.Exposed, ClaimKind.Grounded, "bearing is called exposed for metal, but it is cleared: work would be done that nothing asks for");

    private static void Refused(string text, Grade said, ClaimKind kind, string expected)
    {
        (Family family, PlanDocument plan) = Plan(text);
        PlanPart bearing = plan.Parts.Single(part => part.Id == "bearing");
        PlanDocument edited = plan with { Parts = plan.Parts.Replace(bearing, bearing with { Exposure = [bearing.Exposure[0] with { Grade = said }] }) };
        Assert.Equal(expected, PlanVerifier.Verify(edited, family).Claims.Single(claim => claim.Kind == kind).Where);
    }

    private static (Family Family, PlanDocument Plan) Plan(string text)
    {
        TestCase asked = CaseReader.Read(text);
        return (asked.Family, Planner.Plan(new PlanRequest(asked.Family, asked.Standard, asked.Failures, asked.Asked) { Findings = asked.Findings }));
    }
}
