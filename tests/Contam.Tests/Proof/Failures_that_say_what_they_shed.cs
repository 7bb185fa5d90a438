using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Spread;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

public class Failures_that_say_what_they_shed
{
    [Fact]
    public void Are_sources_of_that_alone() => Holds(
        "pump[sheds metal] > rail; belt[sheds rubber] > duct\n@failed pump=metal belt=rubber\n@asked metal rubber",
        "metal: pump any, rail any; rubber: belt any, duct any");

    [Fact]
    public void Are_sources_of_nothing_where_they_shed_nothing() => Holds(
        "shaft[sheds metal] > seal; pump[sheds metal 40] > rail\n@failed shaft=nothing pump=metal",
        "metal: pump 40, rail 40");

    [Fact]
    public void Open_the_joints_that_wait_for_them_all_the_same() => Holds(
        "pump[sheds metal 40] >?shaft> rail; shaft\n@failed pump=metal shaft=nothing",
        "metal: pump 40, rail 40");

    [Fact]
    public void Hold_nothing_back_of_what_others_shed() => Holds(
        "pump[sheds metal 400] > filter[holds metal 30 abs] > rail\n@failed pump=metal filter=nothing",
        "metal: pump 400, filter 400, rail 400");

    [Theory]
    [InlineData("pump=metal:20", "metal: pump 20, rail 20")]
    [InlineData("pump=metal:900", "metal: pump 900, rail 900")]
    [InlineData("pump=metal", "metal: pump 400, rail 400")]
    public void Shed_the_size_that_was_seen_instead_of_what_the_family_says(string failed, string expected) =>
        Holds($"pump[sheds metal 400] > rail\n@failed {failed}", expected);

    [Fact]
    public void Make_a_find_of_what_none_of_them_shed_a_source_of_its_own_and_void_nothing()
    {
        TestCase asked = CaseReader.Read("pump[sheds metal] > sump[look=good] > plug\n@failed pump=metal\n@asked metal rubber\n@clean sump rubber\n@found plug rubber");
        PlanDocument plan = Planner.Plan(asked.ToRequest());

        Assert.Equal(["False ", "False own"], plan.Findings.Select(finding => $"{finding.Void} {finding.Source}"));
        Assert.True(PlanVerifier.Verify(plan, asked.Family).Holds);
    }

    [Fact]
    public void Must_be_asked_about()
    {
        TestCase asked = CaseReader.Read("pump > belt");
        var request = new PlanRequest(asked.Family, asked.Standard, [new PartFailure(new PartId("belt")) { Debris = [Debris.Rubber] }], [Debris.Metal]);

        Assert.StartsWith("belt shed something that the plan is not asked about", Assert.Throws<ArgumentException>(() => Planner.Plan(request)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_refused_by_the_proof_where_they_are_left_out_or_not_made_good()
    {
        TestCase asked = CaseReader.Read("pump[sheds metal] > rail; shaft\n@failed pump=metal shaft=nothing");
        PlanDocument plan = Planner.Plan(asked.ToRequest());

        Assert.True(PlanVerifier.Verify(plan, asked.Family).Holds);
        Assert.Equal("shaft has failed and is left out: it would stay as it is", Where(plan with { Parts = plan.Parts.RemoveAll(part => part.Id == "shaft"), Clear = plan.Clear + 1 }, 0));
        Assert.Equal("shaft has failed and is given no treatment: it would go back as it is", Where(plan with { Parts = [.. plan.Parts.Select(part => part.Id == "shaft" ? part with { Treatment = [] } : part)] }, 2));
        Assert.Equal("shaft, where the metal comes from, is left out: it would go on shedding", Where(plan with { Failed = [.. plan.Failed.Select(one => one with { Debris = ["metal"] })] }, 0));
        Assert.Equal("pump is said to have shed debris of a size that is none: it would not be known what holds it back", Where(plan with { Failed = [new PlanFailure("pump", ["metal"], 0), plan.Failed[1]] }, 0));

        string? Where(PlanDocument changed, int claim) => PlanVerifier.Verify(changed, asked.Family).Claims[claim].Where;
    }

    [Fact]
    public void Are_made_good_in_every_history_where_they_shed_nothing_and_no_debris_comes_to_them()
    {
        TestCase asked = CaseReader.Read("pump[sheds metal] > sump[look=good] > rail > cooler; shaft\n@failed pump=metal shaft=nothing");
        PlanDocument plan = Planner.Plan(asked.ToRequest() with { LookAt = [new PartId("sump")] });
        PlanPart shaft = plan.Parts.Single(part => part.Id == "shaft");
        PlanStep renewed = plan.Steps.Single(step => step.Part == "shaft" && step.Action == StepAction.Replace);

        Assert.Equal((1, 0, 0, 0), (plan.Looks.Length, shaft.Asks.Length, shaft.OnlyIf.Length, shaft.Exposure.Length));
        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(plan, asked.Family).Claims.Select(claim => claim.Where));
        Assert.Equal("with A clean: shaft needs replacement, but no step that is done does so: it would go back without", Where(plan with { Steps = plan.Steps.Replace(renewed, renewed with { OnlyIf = ["A"] }) }));
        Assert.Equal("with A clean: shaft is said to be left alone, but a step that is done treats it: its list and its steps tell two things", Where(plan with { Parts = plan.Parts.Replace(shaft, shaft with { OnlyIf = ["A"] }) }));

        string? Where(PlanDocument changed) => PlanVerifier.Verify(changed, asked.Family).Claims[2].Where;
    }

    [Fact]
    public void Are_what_the_proof_of_every_history_goes_by()
    {
        // The filter lets on what the pump was seen to have shed, so that no size is held back and the rail is exposed when the look finds metal.
        TestCase asked = CaseReader.Read("pump[sheds metal 400] > sump[look=good] > filter[holds metal 30 abs] > rail; belt[sheds rubber] > rail\n@failed pump=metal:20 belt=rubber");
        PlanDocument plan = Planner.Plan(asked.ToRequest() with { LookAt = [new PartId("sump")] });

        Assert.Single(plan.Looks);
        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(plan, asked.Family).Claims.Select(claim => claim.Where));
        Assert.False(PlanVerifier.Verify(plan with { Failed = [.. plan.Failed.Select(failure => failure with { UpToUm = null })] }, asked.Family).Holds);
        Assert.False(PlanVerifier.Verify(plan with { Failed = [.. plan.Failed.Select(failure => failure with { Debris = ["metal", "rubber"] })] }, asked.Family).Holds);
    }

    [Fact]
    public void Of_an_older_document_are_refused_before_its_values_are_read() => Assert.Equal(
        "the format is contam-plan/1, which this version does not read, expected contam-plan/2; make the plan again with this version",
        Assert.Throws<System.Text.Json.JsonException>(() => PlanJson.Read("{\"format\": \"contam-plan/1\", \"failed\": [\"pump\"]}")).Message);

    private static void Holds(string text, string expected)
    {
        TestCase asked = CaseReader.Read(text);
        Verification proof = PlanVerifier.Verify(Planner.Plan(asked.ToRequest()), asked.Family);

        Assert.Equal(expected, string.Join("; ", asked.Asked.Select(debris =>
            $"{debris.Name}: " + string.Join(", ", Spreading.Of(asked.Question(debris)).Parts.Select(part => $"{part.Part} {(part.Reach.IsUnlimited ? "any" : part.Reach.Micrometres)}")))));
        Assert.True(proof.Holds, proof.Claims.FirstOrDefault(claim => !claim.Holds)?.Where);
    }
}
