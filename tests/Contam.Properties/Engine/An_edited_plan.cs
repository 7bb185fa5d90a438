using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Engine;

/// <summary>Whatever somebody takes out of a plan, the verifier notices and says where.</summary>
public class An_edited_plan
{
    [Fact]
    public void Is_refused_with_the_place()
    {
        var tried = new Dictionary<string, int>(StringComparer.Ordinal);
        ForEvery.Case(asked =>
        {
            var edits = new Edits(asked, Planner.Plan(asked.ToRequest()), ForEvery.ChanceFor(asked));
            foreach (string sort in edits.Sorts)
                tried.TryAdd(sort, 0);
            foreach ((string sort, Edit edit) in edits.OneOfEach())
            {
                tried[sort]++;
                Verification verification = PlanVerifier.Verify(edit.Plan, asked.Family, asked.Catalogue.Debris);
                Assert.False(verification.Holds, edit.What);
                Assert.Contains(verification.Claims, claim => claim is { Holds: false, Where.Length: > 20 });
            }
        });

        Assert.True(tried.Values.Sum() >= 5 * ForEvery.Runs(ForEvery.Usual), $"only {tried.Values.Sum()} edits were tried");
        // Each sort of edit must have happened, else its refusal proves nothing.
        Assert.All(tried, sort => Assert.True(sort.Value >= ForEvery.Runs(ForEvery.Usual) / 200, $"{sort.Key} happened {sort.Value} times"));
    }

    // A document from whatever hand is answered, never with an exception.
    [Fact]
    public void Is_answered_whatever_it_is() => ForEvery.Case(asked =>
    {
        Random random = ForEvery.ChanceFor(asked);
        PlanDocument plan = Planner.Plan(asked.ToRequest() with { MostLooks = random.Next(2) * HowFar.MostLooks });
        for (int i = 0; i < 10; i++)
        {
            plan = Mangled(asked, plan, random);
            Verification verification = PlanVerifier.Verify(plan, asked.Family);
            StepSimulator.Play(asked.Family, plan);
            Assert.Equal(5, verification.Claims.Length);
        }
    });

    private static PlanDocument Mangled(TestCase asked, PlanDocument plan, Random random)
    {
        string Anything() => random.Next(4) == 0 ? "nothing" : random.Of(asked.Family.Parts).Id.Value;
        double Number() => random.Of([double.NaN, -1, 0, 1, 1e300, double.PositiveInfinity]);
        ImmutableArray<PlanPart> parts = plan.Parts.IsDefault ? [] : plan.Parts;
        ImmutableArray<PlanStep> steps = plan.Steps.IsDefault ? [] : plan.Steps;
        int part = parts.IsEmpty ? -1 : random.Next(parts.Length);
        int step = steps.IsEmpty ? -1 : random.Next(steps.Length);
        string[] Letters() => [.. Enumerable.Range(0, random.Next(3)).Select(_ => random.Of(["A", "B", "C", "Z", ""]))];
        ImmutableArray<PlanLook> looks = plan.Looks.IsDefault ? [] : plan.Looks;
        return random.Next(18) switch
        {
            0 when part >= 0 => plan with { Parts = parts.SetItem(part, parts[part] with { Exposure = default, Treatment = default, Path = default }) },
            1 when part >= 0 => plan with { Parts = parts.SetItem(part, parts[part] with { Id = Anything() }) },
            2 when part >= 0 => plan with { Parts = parts.SetItem(part, parts[part] with { Exposure = [new PlanExposure(random.Of(["metal", "water", "soot"]), (Grade)random.Next(5), Number(), Anything(), Anything())] }) },
            3 when step >= 0 => plan with { Steps = steps.SetItem(step, steps[step] with { After = default, Seals = default, Blank = default, Parts = default }) },
            4 when step >= 0 => plan with { Steps = steps.SetItem(step, steps[step] with { Start = Number(), Finish = Number(), Minutes = Number() }) },
            5 when step >= 0 => plan with { Steps = steps.SetItem(step, steps[step] with { Number = random.Next(-1, 5), After = [random.Next(-5, 500)], Technician = random.Next(-1, 4) }) },
            6 when step >= 0 => plan with { Steps = steps.SetItem(step, steps[step] with { Action = (StepAction)random.Next(14), Phase = (Phase)random.Next(9), Part = Anything(), Parts = [Anything(), Anything()], Blank = [Anything()] }) },
            7 when step >= 0 => plan with { Steps = steps.Add(steps[step]) },
            8 => plan with { Failed = [new PlanFailure(Anything(), random.Next(4) == 0 ? default : ["metal"], Number())] },
            9 => plan with { Debris = [random.Of(["metal", "water", "soot"])] },
            10 => plan with { Findings = [new PlanFinding { Part = Anything(), Debris = "metal", Found = random.Next(2) == 0, Accepted = random.Next(2) == 0 }] },
            11 => plan with { Conditional = [new PlanConditional(Anything(), default, [Anything()]), new PlanConditional(Anything(), [Anything()], default)] },
            12 => plan with { Evidence = [new PlanEvidence("metal", true, [new PlanReach(Anything(), Number(), Anything(), Anything())]), new PlanEvidence("metal", false, default)] },
            13 => plan with { Looks = looks.Add(new PlanLook { Id = random.Of(["A", "B", "Y"]), Places = [Anything()], Debris = [random.Of(["metal", "soot"])], Step = random.Next(-1, 40), OnlyIf = [.. Letters()] }) },
            14 when !looks.IsEmpty => plan with { Looks = looks.SetItem(0, looks[0] with { Places = default, Debris = default, OnlyIf = default }) },
            15 when step >= 0 => plan with { Steps = steps.SetItem(step, steps[step] with { OnlyIf = [.. Letters()], Unless = [.. Letters()] }) },
            16 when part >= 0 => plan with { Parts = parts.SetItem(part, parts[part] with { OnlyIf = [.. Letters()], Asks = [new PlanAsk("metal", (Grade)random.Next(5), [(TreatmentKind)random.Next(9)], new PlanRule("", 0, ""))] }) },
            _ => plan with { Looks = default, Steps = default, Parts = default, Failed = default, Findings = default, Debris = default, Conditional = default, Evidence = default(ImmutableArray<PlanEvidence>) },
        };
    }
}
