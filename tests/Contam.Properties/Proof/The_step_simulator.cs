using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Properties.Spread;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Proof;

/// <summary>The simulator against itself without its short cut, on steps in no order that anybody would choose.</summary>
public class The_step_simulator
{
    [Fact]
    public void Finds_the_same_first_fault_whether_or_not_it_remembers_what_a_flush_has_passed()
    {
        int clean = 0;
        int carried = 0;
        ForEvery.Case(
            asked =>
            {
                Random random = ForEvery.ChanceFor(asked);
                for (int i = 0; i < 5; i++)
                {
                    PlanDocument plan = AnySteps(asked, random);
                    Fault? first = new StepPlay(asked.Family, plan, remembers: false).Play().Faults.FirstOrDefault();

                    Assert.Equal(first, StepSimulator.Play(asked.Family, plan).Faults.FirstOrDefault());
                    clean += first is null ? 1 : 0;
                    carried += first?.What.Contains("dirtied again", StringComparison.Ordinal) == true ? 1 : 0;
                }
            },
            runs: 3000,
            mostParts: 9);

        int enough = ForEvery.Runs(3000) / 15;
        Assert.True(clean >= enough && carried >= enough, $"{clean} without fault, {carried} with something dirtied again");
    }

    // Every part that is reached is flushed once or twice, mostly where it is, in an order that is often nearly right.
    private static PlanDocument AnySteps(TestCase asked, Random random)
    {
        string[] reached = [.. ReferenceSpread.Of(asked.Question(asked.Asked[0])).Parts.Select(part => part.Part.Value)];
        Dictionary<string, bool> isCleared = reached.ToDictionary(part => part, _ => random.Next(6) == 0);
        List<PlanStep> steps = [];
        foreach (string part in random.Next(3) == 0 ? random.Shuffled(reached) : reached)
        {
            bool comesOff = random.Next(3) == 0;
            if (comesOff)
                steps.Insert(random.Next(2) == 0 ? 0 : random.Next(steps.Count + 1), Step(StepAction.Remove, part));
            for (int i = random.Next(1, 3); i > 0 && !isCleared[part]; i--)
                steps.Add(Step(StepAction.Flush, part) with { Blank = [.. reached.Where(_ => random.Next(3) == 0)] });
            if (comesOff)
                steps.Add(Step(StepAction.Refit, part));
        }

        return new PlanDocument
        {
            Family = new PlanFamily("", "", ""),
            Standard = new PlanStandard("", ""),
            Hours = new PlanHours(0, 0, 1, 0, 0),
            Failed = [.. asked.Failed.Select(part => new PlanFailure(part.Value, ["metal"], null))],
            Parts = [.. reached.Select(part => Listed(part, isCleared[part], random))],
            Steps = [.. steps.Select((step, place) => step with { Number = place + 1, Start = place, Finish = place + 1, Seals = asked.Family[new PartId(step.Part!)].Seals })],
        };
    }

    private static PlanPart Listed(string part, bool isCleared, Random random) => new()
    {
        Id = part,
        Name = part,
        Kind = "part",
        Treatment = isCleared ? [] : [random.Next(5) == 0 ? TreatmentKind.Inspect : TreatmentKind.Flush],
        Exposure = [new PlanExposure("metal", isCleared ? Grade.Cleared : Grade.Exposed, null, part, null)],
    };

    private static PlanStep Step(StepAction action, string part) => new()
    {
        Action = action,
        Part = part,
        Phase = action == StepAction.Remove ? Phase.Strip : action == StepAction.Refit ? Phase.Refit : Phase.CleanOut,
        Minutes = 1,
        Technician = 1,
    };
}
