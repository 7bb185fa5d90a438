using System.Collections.Immutable;
using Contam.Drills;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Spread;
using Contam.StopLines;
using Contam.Why;

namespace Contam.Properties.Drills;

/// <summary>
/// Judges the choices of an exercise with the answers that the other commands give: why, the spread, the stop line and the step simulator. What the exercise
/// itself says of a choice is not looked at.
/// </summary>
internal sealed class DrillJudge(DrillRequest request)
{
    private readonly PlanDocument plan = Planner.Plan(new PlanRequest(request.Family, request.Standard, request.Failures, request.Debris) { TakesFirstSchedule = true });

    private Family Family => request.Family;

    /// <summary>The places of the choices that are right.</summary>
    public int[] RightOnes(DrillQuestion question) => [.. Enumerable.Range(0, question.Choices.Length).Where(place => IsRight(question, question.Choices[place]))];

    private bool IsRight(DrillQuestion question, DrillChoice choice) => choice switch
    {
        NextChoice next => IsReachedNext(next),
        FilterChoice { Part: { } part } => IsTrusted(part, question.Debris!),
        FilterChoice => question.Choices.OfType<FilterChoice>().All(other => other.Part is not { } part || !IsTrusted(part, question.Debris!)),
        OffChoice off => ComesOffFirst(off.Part, question.About!.Value),
        LookChoice looks => TakesLeast(looks),
        LeftAloneChoice left => IsLeftAlone(left.Part, question),
        OrderChoice order => Dirties(order),
        _ => throw new InvalidOperationException(choice.GetType().Name),
    };

    private bool IsReachedNext(NextChoice next)
    {
        Explanation[] why = [.. request.Debris.Select(debris => Explaining.Of(new SpreadQuestion(Family, request.Failures, debris), next.Part, request.Standard))];
        Assert.Equal(why.Any(one => one.NotReached is null), next.Hops is not null);
        Assert.Equal(next.Hops is { } hops ? hops + 1 : 0, next.Path.Length);
        return next.Hops is > 0 && why.Any(one => one.IsJoinedToSource);
    }

    // A part is put behind it: what comes of pieces of any size that are set free just before it?
    private bool IsTrusted(PartId filter, Debris debris)
    {
        var kind = new Kind("probe", new SourceSpan("probe", 1, 1));
        var before = new Part(new PartId("probe-before"), kind, kind.Place);
        var behind = new Part(new PartId("probe-behind"), kind, kind.Place);
        int joints = Family.Joints.Length;
        var probed = new Family(
            Family.Id,
            [.. Family.Parts, before, behind],
            Family.Circuits,
            [.. Family.Joints, new Joint(joints, before.Id, filter, "probe", kind.Place), new Joint(joints + 1, filter, behind.Id, "probe", kind.Place)]) { States = Family.States };
        ImmutableArray<PartId> failed = [before.Id, .. request.Failed.Where(part => part == filter)];
        DebrisSpread spread = Spreading.Of(new SpreadQuestion(probed, [.. failed], debris) { Findings = [.. failed.Select(part => new Finding(part, debris, Found: true))] });
        return Family[filter].HoldOf(debris) is not null && !spread.Find(behind.Id)!.Reach.IsUnlimited;
    }

    // What is in the way of what: all of it off but this one part, the part asked about cannot come off; and this one part can be the first to.
    private bool ComesOffFirst(PartId part, PartId asked)
    {
        var before = new List<PartId>();
        Gather(asked);
        PartId[] others = [.. before.Where(other => other != part)];
        return part != asked && IsRefused([.. others, asked]) && !IsRefused([.. before, asked]) && !IsRefused([part]);

        void Gather(PartId one)
        {
            IEnumerable<PartId> carrier = Family[one].RidesOn is { } rides ? [rides] : [];
            foreach (PartId access in Family[one].Access.Concat(Family.Parts.Where(other => other.StandsOn.Contains(one)).Select(other => other.Id)).Concat(carrier))
            {
                Gather(access);
                if (!before.Contains(access))
                    before.Add(access);
            }
        }
    }

    private bool IsRefused(PartId[] off)
    {
        PlanDocument played = plan with
        {
            Parts = [],
            Steps = [.. off.Select((part, index) => new PlanStep { Number = index + 1, Phase = Phase.Strip, Action = StepAction.Remove, Part = part.Value, Minutes = 1, Start = index, Finish = index + 1, Technician = 1 })],
        };
        return StepSimulator.Play(Family, played).Faults.Any(fault => fault.Step is not null);
    }

    // The looks are recorded as clean findings, and what is not cleared then is added up.
    private bool TakesLeast(LookChoice choice)
    {
        var question = new StopLineQuestion(Family, request.Standard, request.Failures, request.Debris);
        StopLine line = StopLineFinder.Of(question);
        StopLine after = StopLineFinder.Of(question with { Findings = [.. choice.Looks.SelectMany(part => request.Debris.Select(debris => new Finding(part, debris, Found: false)))] });
        // A stop line counts what asks for two clean places as treated, though one look of several may spare it.
        HashSet<PartId> spared = [.. after.ClearedAlready.Where(part => Family[part].ClearedBy != ClearedBy.TwoLooks)];
        double takes = MinutesOf(question).Where(part => !spared.Contains(part.Key)).Sum(part => part.Value) + LookMinutesOf(choice.Looks);
        Assert.Equal(takes, choice.Takes, 0.01);
        Assert.Equal(spared.Count, choice.Spares);
        return takes <= line.Minutes.Looks + line.Minutes.Treatment + 0.01;
    }

    // Where no look shows anything well everything stays, and each part tells its minutes.
    private static Dictionary<PartId, double> MinutesOf(StopLineQuestion question) =>
        StopLineFinder.Of(question with { Family = question.Family.WithParts([.. question.Family.Parts.Select(part => part with { Inspect = part.Inspect is { } look ? look with { Shows = Shows.Poor } : null })]) }).Treat.ToDictionary(part => part.Part, part => part.Minutes);

    private double LookMinutesOf(ImmutableArray<PartId> looks) => ChosenLooks.Of(new StopLineQuestion(Family, request.Standard, request.Failures, request.Debris)) is { } chosen ? looks.Sum(chosen.MinutesOf) : 0;

    // The look is recorded as clean findings beforehand, and a plan without looks is made.
    private bool IsLeftAlone(PartId part, DrillQuestion question)
    {
        PlanLook clean = question.Looks.Single(look => look.Id == question.CleanLook);
        PlanDocument after = Planner.Plan(new PlanRequest(Family, request.Standard, request.Failures, request.Debris)
        {
            TakesFirstSchedule = true,
            Findings = [.. clean.Places.SelectMany(place => request.Debris.Select(debris => new Finding(new PartId(place), debris, Found: false)))],
        });
        return after.Parts.All(one => one.Id != part.Value || one.Treatment.IsEmpty);
    }

    private bool Dirties(OrderChoice order)
    {
        // The numbers of the steps say where they stand; which they are is told by what they do.
        int[] places = [.. order.Steps.Select(step => step.Number - 1)];
        Assert.Equal(places.Order(), places);
        var rest = new List<PlanStep>(places.Select(place => plan.Steps[place]));
        PlanStep[] steps = [.. plan.Steps];
        for (int i = 0; i < places.Length; i++)
        {
            PlanStep same = rest.First(step => step.Text == order.Steps[i].Text && step.Action == order.Steps[i].Action && step.Minutes == order.Steps[i].Minutes);
            rest.Remove(same);
            steps[places[i]] = same;
        }

        double clock = 0;
        for (int i = 0; i < steps.Length; i++)
        {
            steps[i] = steps[i] with { Number = i + 1, After = [], Start = clock, Finish = clock + steps[i].Minutes };
            clock = steps[i].Finish;
        }

        ImmutableArray<Fault> faults = StepSimulator.Play(Family, plan with { Steps = [.. steps] }).Faults;
        bool dirties = faults is [{ DirtiedFrom: not null }, ..];
        Assert.True(dirties || faults.IsEmpty, "an order goes wrong otherwise than by dirtying a part");
        return dirties;
    }
}
