using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Systems;

/// <summary>The shipped families against what was worked out by hand for their usual failures.</summary>
public class ShippedFamilies
{
    public static TheoryData<string> Cases => [.. Directory.GetFiles(RepositoryFiles.At("tests/Contam.Tests/Systems"), "*.txt").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file)!)];

    public static TheoryData<string> Families => [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file)!)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Reach_just_what_was_worked_out_by_hand(string name)
    {
        (HandWorkedCase expected, PlanDocument plan) = Plan(name);
        Assert.Equal(Lines(expected.Exposed), Lines(WithGrade(plan, Grade.Exposed)));
        Assert.Equal(Lines(expected.Guarded), Lines(WithGrade(plan, Grade.Guarded)));
        Assert.Empty(WithGrade(plan, Grade.Cleared));
        Assert.Empty(expected.Clear.Intersect(plan.Parts.Select(part => part.Id)));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Treat_parts_as_was_worked_out_by_hand(string name)
    {
        (HandWorkedCase expected, PlanDocument plan) = Plan(name);
        Assert.Equal(
            expected.Treatments.Select(one => $"{one.Part}: {string.Join(", ", one.Treatments)}"),
            expected.Treatments.Select(one => $"{one.Part}: {string.Join(", ", plan.Parts.Single(part => part.Id == one.Part).Treatment.Select(treatment => treatment.ToString().ToLowerInvariant()))}"));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Work_in_the_order_that_was_worked_out_by_hand(string name)
    {
        (HandWorkedCase expected, PlanDocument plan) = Plan(name);
        string[] wrong = [.. expected.Order.Where(one => !(NumberOf(plan, one.First) < NumberOf(plan, one.Then))).Select(one => $"{one.First} ({NumberOf(plan, one.First)}) < {one.Then} ({NumberOf(plan, one.Then)})")];
        Assert.Equal([], wrong);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Name_what_further_failures_would_add(string name)
    {
        (HandWorkedCase expected, PlanDocument plan) = Plan(name);
        string[] missing =
        [
            .. expected.Conditional.SelectMany(one => one.Parts
                .Except(plan.Conditional.Where(conditional => conditional.IfFailed == one.IfFailed && conditional.AlsoFailed.IsEmpty).SelectMany(conditional => conditional.Parts))
                .Select(part => $"{one.IfFailed}: {part}")),
        ];
        Assert.Equal([], missing);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Are_sound(string name)
    {
        Outcome<Family> outcome = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf());
        Assert.Equal([], outcome.Problems.Select(problem => $"{problem.Place}: {problem.Text}"));
        Assert.Equal(name, outcome.Value!.Id);
    }

    private static (HandWorkedCase Expected, PlanDocument Plan) Plan(string name)
    {
        HandWorkedCase expected = HandWorkedCase.Read(RepositoryFiles.At($"tests/Contam.Tests/Systems/{name}.txt"));
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{expected.Family}.yaml"), standard.CatalogueOf()).Value!;
        return (expected, Planner.Plan(new PlanRequest(
            family,
            standard,
            [.. expected.Failed.Select(id => new PartId(id))],
            [.. expected.Debris.Select(debris => standard.CatalogueOf().FindDebris(debris)!)])));
    }

    private static IEnumerable<string> WithGrade(PlanDocument plan, Grade grade) =>
        plan.Parts.Where(part => part.Exposure.Min(one => one.Grade) == grade).Select(part => part.Id);

    private static string Lines(IEnumerable<string> ids) => string.Join('\n', ids.Order(StringComparer.Ordinal));

    /// <summary>The number of the step ACTION PART; a step that is not there comes at no time.</summary>
    private static double NumberOf(PlanDocument plan, string actionAndPart)
    {
        string[] words = actionAndPart.Split(' ', 2, StringSplitOptions.TrimEntries);
        StepAction action = words[0] == "send-out" ? StepAction.SendOut : Enum.Parse<StepAction>(words[0], ignoreCase: true);
        PlanStep? step = plan.Steps.SingleOrDefault(step => step.Action == action && (step.Phase is not (Phase.Confirm or Phase.Prove) || (step.Phase == Phase.Confirm && step.Action == StepAction.Remove)) && (step.Part == words[1] || step.Parts.Contains(words[1])));
        return step?.Number ?? double.NaN;
    }
}
