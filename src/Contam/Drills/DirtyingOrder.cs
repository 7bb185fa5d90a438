using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;

namespace Contam.Drills;

/// <summary>
/// Asks which of three orders of a few steps dirties a cleaned part, all other steps in their places. The steps are those at two or three parts along a
/// joint; each order is played, step by step, by the simulator that judges plans. Two play without a fault; in the third the first thing that goes wrong is
/// that debris comes from one of these parts onto another that is clean.
/// </summary>
internal static class DirtyingOrder
{
    private const int MostSteps = 5;
    private const int LeastSteps = 3;
    private const int MostOrders = 24;
    private const int MostPlays = 480;

    public static Posed Pose(DrillRequest request, PlanDocument plan)
    {
        Family family = request.Family;
        var dice = new DrillDice(request.Seed, DrillKind.DirtyingOrder);
        HashSet<PartId> dirty = [.. plan.Parts.Where(part => !part.Treatment.IsEmpty).Select(part => new PartId(part.Id))];
        (PartId From, PartId To)[] joints = [.. family.Joints.Where(joint => joint.From != joint.To && dirty.Contains(joint.From) && dirty.Contains(joint.To)).Select(joint => (joint.From, joint.To)).Distinct()];
        var known = new HashSet<string>(StringComparer.Ordinal);
        int plays = 0;
        // More steps make the harder question, so pairs alone come last.
        foreach ((PartId from, PartId to, PartId? third) in Groups(joints, dice))
        {
            int[] places = PlacesOf(plan, third is { } more ? [from, to, more] : [from, to]);
            if (places.Length is < LeastSteps or > MostSteps || !known.Add(string.Join(' ', places)))
                continue;
            if (plays > MostPlays)
                break;
            plays += MostOrders;
            if (Try(family, plan, places, dice) is { } choices)
                return Posed.As(new DrillQuestion(DrillKind.DirtyingOrder, [.. dice.Shuffled<DrillChoice>(choices)]));
        }

        return Posed.Not(DrillKind.DirtyingOrder, DrillSilence.NoOrderDirties);
    }

    /// <summary>The plan with these steps in another order, one after another by one pair of hands, no step waiting for another by its number.</summary>
    internal static PlanDocument Reordered(PlanDocument plan, ImmutableArray<int> places, ImmutableArray<int> order)
    {
        int[] steps = [.. Enumerable.Range(0, plan.Steps.Length)];
        for (int i = 0; i < places.Length; i++)
            steps[places[i]] = order[i];
        double clock = 0;
        var inTurn = ImmutableArray.CreateBuilder<PlanStep>(steps.Length);
        foreach (int step in steps)
        {
            PlanStep next = plan.Steps[step];
            inTurn.Add(next with { Number = inTurn.Count + 1, After = [], Start = clock, Finish = clock + next.Minutes });
            clock += next.Minutes;
        }

        return plan with { Steps = inTurn.MoveToImmutable() };
    }

    private static IEnumerable<(PartId From, PartId To, PartId? Third)> Groups((PartId From, PartId To)[] joints, DrillDice dice)
    {
        ILookup<PartId, PartId> onward = joints.ToLookup(joint => joint.From, joint => joint.To);
        (PartId From, PartId To)[] pairs = dice.Shuffled(joints);
        foreach ((PartId from, PartId to) in pairs)
        {
            foreach (PartId third in onward[to].Where(part => part != from && part != to))
                yield return (from, to, third);
        }

        foreach ((PartId from, PartId to) in pairs)
            yield return (from, to, null);
    }

    private static int[] PlacesOf(PlanDocument plan, PartId[] parts) =>
    [
        .. Enumerable.Range(0, plan.Steps.Length).Where(place =>
            plan.Steps[place] is { Phase: Phase.CleanOut or Phase.Test or Phase.Refit, Action: StepAction.Flush or StepAction.Clean or StepAction.Replace or StepAction.Refit } step
            && PlayedStep.PartsOf(step).Any() && OrderChoice.PartsOf(step).All(parts.Contains)),
    ];

    private static ImmutableArray<OrderChoice>? Try(Family family, PlanDocument plan, int[] places, DrillDice dice)
    {
        List<OrderChoice> good = [], bad = [];
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (int[] order in Orders(places, dice))
        {
            PlanDocument changed = Reordered(plan, [.. places], [.. order]);
            ImmutableArray<PlanStep> steps = [.. places.Select(place => changed.Steps[place])];
            if (!told.Add(string.Join('\n', steps.Select(step => string.Create(CultureInfo.InvariantCulture, $"{(int)step.Action} {string.Join(' ', PlayedStep.PartsOf(step))}")))))
                continue;
            Fault? fault = StepSimulator.Play(family, changed).Faults.FirstOrDefault();
            if (fault is null)
                good.Add(new OrderChoice(steps, null));
            else if (Shows(fault, steps))
                bad.Add(new OrderChoice(steps, fault) { Path = [new PartId(fault.DirtiedFrom!), new PartId(fault.Part!)] });
        }

        return good.Count < 2 || bad.Count == 0 ? null : [dice.Pick(bad), .. dice.Shuffled(good).Take(2)];
    }

    // What goes wrong must be seen in the steps that are shown: one of them does it, from one of their parts to another.
    private static bool Shows(Fault fault, ImmutableArray<PlanStep> steps) =>
        fault is { DirtiedFrom: { } from, Part: { } part }
        && steps.Any(step => step.Number == fault.Step)
        && steps.SelectMany(PlayedStep.PartsOf).Contains(from, StringComparer.Ordinal)
        && steps.SelectMany(PlayedStep.PartsOf).Contains(part, StringComparer.Ordinal);

    // The plan's own order first, then others: all that there are of up to four steps, some of five.
    private static IEnumerable<int[]> Orders(int[] places, DrillDice dice)
    {
        yield return places;
        foreach (int[] order in dice.Shuffled(Permutations(places).Skip(1)).Take(MostOrders - 1))
            yield return order;
    }

    private static IEnumerable<int[]> Permutations(int[] places)
    {
        if (places.Length <= 1)
            return [places];
        return places.SelectMany((first, at) => Permutations([.. places[..at], .. places[(at + 1)..]]).Select(rest => (int[])[first, .. rest]));
    }
}
