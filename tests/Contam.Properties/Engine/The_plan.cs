using System.Collections.Immutable;
using System.Text.Json;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Properties.Spread;
using Contam.Support;

namespace Contam.Properties.Engine;

/// <summary>What every plan keeps to, held against random systems by judges that know nothing of how it was made.</summary>
public class The_plan
{
    private const double Tolerance = 1e-6;

    [Fact]
    public void Plays_without_a_fault() => ForEvery.Case(asked =>
        Assert.Equal([], StepSimulator.Play(asked.Family, Plan(asked)).Faults.Select(fault => fault.ToString())));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(7)]
    public void Plays_without_a_fault_whoever_is_at_hand(int technicians) => ForEvery.Case(asked =>
        Assert.Equal([], StepSimulator.Play(asked.Family, Plan(asked with { Technicians = technicians })).Faults.Select(fault => fault.ToString())));

    [Fact]
    public void Is_verified() => ForEvery.Case(asked =>
        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(Plan(asked), asked.Family, asked.Catalogue.Debris).Claims.Select(claim => claim.Where)));

    [Fact]
    public void Lists_what_the_reference_lists() => ForEvery.Case(asked =>
    {
        PlanDocument plan = Plan(asked);
        Dictionary<Debris, ReferenceSpread> reference = asked.Asked.ToDictionary(debris => debris, debris => ReferenceSpread.Of(asked.Question(debris)));

        Assert.Equal(
            asked.Family.Parts.Select(part => (part.Id.Value, Lines: Lines(asked, reference, part.Id))).Where(part => part.Lines.Length > 0 || asked.Failed.Contains(new PartId(part.Value))),
            plan.Parts.Select(part => (part.Id, string.Join(", ", part.Exposure.Select(line => Line(line.Debris, line.Grade, line.ReachUm))))));
        Assert.Equal(asked.Family.Parts.Length - plan.Parts.Length, plan.Clear);
    });

    // A part of a loop that is flushed in one go is flushed with it, whatever the standard asks for besides.
    [Fact]
    public void Gives_each_part_the_treatment_that_the_standard_asks_for() => ForEvery.Case(asked =>
    {
        Dictionary<Debris, ReferenceSpread> reference = asked.Asked.ToDictionary(debris => debris, debris => ReferenceSpread.Of(asked.Question(debris)));
        PlanDocument plan = Plan(asked);
        HashSet<string> inLoop = [.. plan.Steps.Where(step => step.Action == StepAction.Flush && step.Parts.Length > 1).SelectMany(step => step.Parts)];

        Assert.All(plan.Parts, part => Assert.Equal(
            ReferenceTreatment.Of(asked, asked.Family[new PartId(part.Id)], reference).Union(inLoop.Contains(part.Id) ? [TreatmentKind.Flush] : []).Order(),
            part.Treatment));
    });

    [Fact]
    public void Carries_the_question_it_answers() => ForEvery.Case(asked =>
    {
        PlanDocument plan = Plan(asked);

        Assert.Equal((asked.Family.Id, asked.Family.Sha256), (plan.Family.Id, plan.Family.Sha256));
        Assert.Equal((asked.Standard.Id, asked.Standard.Sha256), (plan.Standard.Id, plan.Standard.Sha256));
        Assert.Equal(asked.Failed.Select(part => part.Value), plan.FailedParts());
        Assert.Equal(
            asked.Failures.SelectMany(failure => failure.Debris ?? [.. asked.Asked], (failure, debris) => (failure.Part.Value, debris.Name, failure.UpTo?.Micrometres)),
            plan.Failed.SelectMany(failure => failure.Debris, (failure, debris) => (failure.Part, debris, failure.UpToUm)));
        Assert.Equal(asked.Asked.Select(debris => debris.Name), plan.Debris);
        Assert.Equal(asked.Findings.Select(finding => (finding.Part.Value, finding.Debris.Name, finding.Found)), plan.Findings.Select(finding => (finding.Part, finding.Debris, finding.Found)));
        Assert.Equal(asked.Technicians, plan.Hours.Technicians);
    });

    [Fact]
    public void Is_the_same_again_and_in_another_country() => ForEvery.Case(asked =>
    {
        string first = JsonSerializer.Serialize(Plan(asked));

        Assert.Equal(first, JsonSerializer.Serialize(Plan(asked)));
        Assert.Equal(first, JsonSerializer.Serialize(Abroad.Do(() => Plan(asked))));
    });

    // The schedule

    [Fact]
    public void Starts_no_step_before_those_it_waits_for() => ForEvery.Case(asked =>
    {
        PlanDocument plan = Plan(asked);

        Assert.All(plan.Steps, (step, place) =>
        {
            Assert.Equal(place + 1, step.Number);
            Assert.Equal(step.After.Order(), step.After);
            Assert.All(step.After, number => Assert.True(number < step.Number && plan.Steps[number - 1].Finish <= step.Start, $"step {step.Number} after {number}"));
        });
    });

    [Fact]
    public void Gives_every_technician_one_step_at_a_time() => ForEvery.Case(asked =>
    {
        PlanDocument plan = Plan(asked);
        foreach (IGrouping<int?, PlanStep> hand in plan.Steps.Where(step => step.Technician is not null).GroupBy(step => step.Technician))
        {
            Assert.InRange(hand.Key!.Value, 1, asked.Technicians);
            PlanStep[] inTurn = [.. hand.OrderBy(step => step.Start).ThenBy(step => step.Finish)];
            Assert.All(inTurn.Zip(inTurn.Skip(1)), pair => Assert.True(pair.First.Finish <= pair.Second.Start, $"steps {pair.First.Number} and {pair.Second.Number}"));
            Assert.All(inTurn, step => Assert.Equal(step.Minutes, step.Finish - step.Start, Tolerance));
        }
    });

    // Rounded to a tenth of an hour at most, as the hours are for people.
    [Fact]
    public void Adds_its_hours_up() => ForEvery.Case(asked =>
    {
        PlanDocument plan = Plan(asked);

        Assert.Equal(plan.Steps.Where(step => step.Technician is not null).Sum(step => step.Minutes) / 60, plan.Hours.Bench, 0.05 + Tolerance);
        Assert.Equal(plan.Steps.Select(step => step.Finish).DefaultIfEmpty(0).Max() / 60, plan.Hours.Elapsed, 0.05 + Tolerance);
    });

    [Fact]
    public void Ends_no_sooner_than_its_lower_bound() => ForEvery.Case(asked =>
    {
        PlanHours hours = Plan(asked).Hours;

        Assert.True(hours.LowerBoundElapsed <= hours.Elapsed + Tolerance, $"{hours.LowerBoundElapsed} h at least, {hours.Elapsed} h planned");
        Assert.True(hours.LowerBoundElapsed >= (hours.Bench / hours.Technicians) - 0.1, "no bound lies below the work shared out");
    });

    // What any schedule can reach is no less than its longest chain, and no less than its work shared out.
    [Fact]
    public void Has_a_lower_bound_that_no_number_of_hands_beats() => ForEvery.Case(
        asked =>
        {
            PlanHours crowd = Plan(asked with { Technicians = 1000 }).Hours;
            PlanHours few = Plan(asked).Hours;

            Assert.True(few.LowerBoundElapsed <= few.Elapsed + Tolerance);
            Assert.True(crowd.LowerBoundElapsed <= few.LowerBoundElapsed + 0.1, "fewer hands cannot have a lower bound");
        },
        runs: 300);

    [Fact]
    public void Takes_no_longer_with_one_technician_more() => ForEvery.Case(asked =>
        Assert.True(Plan(asked with { Technicians = asked.Technicians + 1 }).Hours.Elapsed <= Plan(asked).Hours.Elapsed));

    private static PlanDocument Plan(TestCase asked) => Planner.Plan(asked.ToRequest());

    private static string Lines(TestCase asked, Dictionary<Debris, ReferenceSpread> reference, PartId part) => string.Join(", ", asked.Asked
        .Select(debris => (debris, Reached: reference[debris].Parts.FirstOrDefault(reached => reached.Part == part)))
        .Where(line => line.Reached is not null)
        .Select(line => Line(line.debris.Name, line.Reached!.Grade, line.Reached.Reach.IsUnlimited ? null : line.Reached.Reach.Micrometres)));

    private static string Line(string debris, Grade grade, double? reach) => FormattableString.Invariant($"{debris} {grade} {reach}");
}
