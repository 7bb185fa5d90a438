using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;

namespace Contam.Properties.Engine;

/// <summary>What the order of a bench keeps to, over random systems with all that metal adds to them.</summary>
public class The_bench_order
{
    [Fact]
    public void Plays_and_is_verified_however_parts_sit() => ForEvery.Case(asked =>
    {
        TestCase mounted = Mounted.Of(asked);
        PlanDocument plan = Planner.Plan(mounted.ToRequest());

        Assert.Equal([], StepSimulator.Play(mounted.Family, plan).Faults.Select(fault => fault.ToString()));
        Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(plan, mounted.Family, mounted.Catalogue.Debris).Claims.Select(claim => claim.Where));
    });

    [Fact]
    public void Is_verified_by_the_free_schedule_too() => ForEvery.Case(
        asked =>
        {
            TestCase mounted = Mounted.Of(asked);
            PlanDocument plan = Planner.Plan(mounted.ToRequest() with { Sequence = PlanSequence.Schedule });

            Assert.Equal([null, null, null, null, null], PlanVerifier.Verify(plan, mounted.Family, mounted.Catalogue.Debris).Claims.Select(claim => claim.Where));
            Assert.True(plan.Hours.ElapsedFree <= Planner.Plan(mounted.ToRequest()).Hours.Elapsed + 0.01);
        },
        runs: 300);

    [Fact]
    public void Has_every_phase_once() => ForEvery.Case(asked =>
    {
        TestCase mounted = Mounted.Of(asked);
        Phase[] phases = [.. Planner.Plan(mounted.ToRequest()).Steps.Select(step => step.Phase)];

        Assert.Equal(phases.Order(), phases);
    });

    [Fact]
    public void Looks_at_a_part_before_anything_is_cleaned() => ForEvery.Case(asked =>
    {
        TestCase mounted = Mounted.Of(asked);
        PlanDocument plan = Planner.Plan(mounted.ToRequest());
        int cleaning = plan.Steps.Where(step => step.Action is StepAction.Clean or StepAction.Flush).Select(step => step.Number).DefaultIfEmpty(int.MaxValue).Min();

        Assert.All(plan.Steps.Where(step => step.About == LookAbout.Debris), step => Assert.True(step.Number < cleaning, $"step {step.Number} looks after step {cleaning} cleans"));
        Assert.All(
            plan.Parts.Where(part => part.Treatment.Contains(TreatmentKind.Inspect)),
            part => Assert.Contains(plan.Steps, step => step.About == LookAbout.Debris && (step.Part == part.Id || step.Parts.Contains(part.Id))));
    });

    // A part goes back before one that came off later only where that one waits: for something that goes on with it or after it, or that is not there yet.
    [Fact]
    public void Puts_back_last_off_first_on_where_nothing_forbids_it() => ForEvery.Case(asked => LastOff(Here(Mounted.Of(asked))));

    internal static void LastOff(TestCase mounted)
    {
        PlanDocument plan = Planner.Plan(mounted.ToRequest());
        Dictionary<string, int> offAt = plan.Steps.Where(step => step.Action == StepAction.Remove).SelectMany(step => PartsOf(step).Select(part => (part, step.Number))).ToDictionary();
        PlanStep[] refits = [.. plan.Steps.Where(step => step.Action == StepAction.Refit)];
        foreach (PlanStep then in refits)
        {
            int waitsFor = Before(plan, then).Where(number => plan.Steps[number - 1].Phase == Phase.Refit).DefaultIfEmpty(0).Max();
            Assert.All(
                refits.Where(first => first.Number < then.Number && first.Number > waitsFor),
                first => Assert.True(
                    WithItsLike(refits, first, mounted.Family).Max(part => offAt[part]) >= PartsOf(then).Min(part => offAt[part]),
                    $"step {first.Number} goes back before step {then.Number}, which came off later and waits for step {waitsFor} at the latest"));
        }
    }

    // Like parts go back together, over several lines where one would be too long.
    private static IEnumerable<string> WithItsLike(PlanStep[] refits, PlanStep step, Family family)
    {
        string kind = KindOf(step);
        return refits
            .Where(other => KindOf(other) == kind && refits.Where(between => (between.Number - other.Number) * (between.Number - step.Number) < 0).All(between => KindOf(between) == kind))
            .SelectMany(PartsOf);

        string KindOf(PlanStep one) => family[new PartId(PartsOf(one).First())].Kind.Name;
    }

    // Nothing is away or on its way.
    internal static TestCase Here(TestCase asked) => asked with
    {
        Family = SystemBuilder.Build(asked.Family.Parts.Select(part => part with { Lead = null, SendOut = null }), asked.Family.Joints, asked.Family.States),
    };

    private static IEnumerable<int> Before(PlanDocument plan, PlanStep step) =>
        step.After.Concat(step.After.SelectMany(number => plan.Steps[number - 1].Action is StepAction.Note or StepAction.Replace or StepAction.Test ? Before(plan, plan.Steps[number - 1]) : []));

    private static IEnumerable<string> PartsOf(PlanStep step) => step.Part is { } part ? [part] : step.Parts;
}
