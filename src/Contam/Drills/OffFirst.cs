using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Drills;

/// <summary>
/// Asks what must come off first before a part can come off: just one choice is in its way, stands on it or carries it, or does so of what does, with nothing before itself.
/// </summary>
internal static class OffFirst
{
    private const int MostWrong = 3;
    private const int LeastWrong = 2;

    public static Posed Pose(DrillRequest request, PlanDocument plan)
    {
        Family family = request.Family;
        var dice = new DrillDice(request.Seed, DrillKind.OffFirst);
        var first = new OffBefore(family);
        PartId[] off = [.. plan.Steps.Where(step => step.Action == StepAction.Remove).SelectMany(OrderChoice.PartsOf).Distinct()];
        PartId[] behind = [.. off.Where(part => RightOnes(part).Any())];
        if (behind.Length == 0)
            return Posed.Not(DrillKind.OffFirst, DrillSilence.NothingInTheWay);
        Dictionary<PartId, int> depth = behind.ToDictionary(part => part, part => DepthOf(first, part));
        int deepest = depth.Values.Max();
        PartId asked = dice.Pick(behind.Where(part => depth[part] >= deepest - 1).ToArray());
        HashSet<PartId> inTheWay = AllInTheWayOf(first, asked);

        IEnumerable<PartId> RightOnes(PartId part)
        {
            HashSet<PartId> before = AllInTheWayOf(first, part);
            return family.Parts.Select(one => one.Id).Where(one => before.Contains(one) && first.Of(one).IsEmpty && HoldsUp(family, one, before.Append(part)));
        }

        OffChoice Of(PartId part) => new(part, inTheWay.Contains(part)) { Behind = first.Of(part), ComesAfter = AllInTheWayOf(first, part).Contains(asked) };

        OffChoice right = Of(dice.Pick(RightOnes(asked).ToArray()));
        HashSet<PartId> joined = [.. family.Joints.Where(joint => joint.From == asked || joint.To == asked).SelectMany(joint => new[] { joint.From, joint.To }), asked];
        OffChoice[] wrong = [.. family.Parts.Where(part => part.Id == asked || joined.Contains(part.Id) || inTheWay.Contains(part.Id) || off.Contains(part.Id)).Select(part => Of(part.Id)).Where(choice => !choice.IsRight)];
        OffChoice[] drawn =
        [
            .. Mixed.Of(
                dice,
                MostWrong,
                [.. wrong.Where(choice => choice.IsInTheWay)],
                [.. wrong.Where(choice => choice.ComesAfter)],
                [.. wrong.Where(choice => joined.Contains(choice.Part) && choice.Part != asked)],
                wrong),
        ];
        if (drawn.Length < LeastWrong)
            return Posed.Not(DrillKind.OffFirst, DrillSilence.TooFewParts);
        HashSet<PartId> told = [asked, .. inTheWay, .. drawn.Select(choice => choice.Part)];
        return Posed.As(new DrillQuestion(DrillKind.OffFirst, [.. dice.Shuffled<DrillChoice>([right with { Path = WayBack(first, asked, right.Part) }, .. drawn])])
        {
            About = asked,
            InTheWay = [.. family.Parts.Where(part => told.Contains(part.Id) && !first.Of(part.Id).IsEmpty).Select(part => new InTheWay(part.Id, first.Of(part.Id)))],
        });
    }

    // What has nothing before itself and holds something up for certain: what is in the way of a part that comes off with its carrier may still be on then.
    private static bool HoldsUp(Family family, PartId first, IEnumerable<PartId> behind) => family[first].Assembly is null && behind.Any(part =>
        family[part].RidesOn == first || family[first].StandsOn.Contains(part) || (family[part] is { RidesOn: null, Assembly: null } && family[part].Access.Contains(first)));

    private static HashSet<PartId> AllInTheWayOf(OffBefore first, PartId part)
    {
        var all = new HashSet<PartId>();
        var waiting = new Queue<PartId>([part]);
        while (waiting.TryDequeue(out PartId next))
        {
            foreach (PartId access in first.Of(next))
            {
                if (all.Add(access))
                    waiting.Enqueue(access);
            }
        }

        return all;
    }

    private static int DepthOf(OffBefore first, PartId part)
    {
        int depth = 0;
        for (HashSet<PartId> layer = [.. first.Of(part)]; layer.Count > 0; layer = [.. layer.SelectMany(one => first.Of(one))])
            depth++;
        return depth;
    }

    // From what comes off first to the part asked about, each in the way of the next; of ways as short the one that the file names first.
    private static ImmutableArray<PartId> WayBack(OffBefore before, PartId asked, PartId first)
    {
        var blocks = new Dictionary<PartId, PartId>();
        var waiting = new Queue<PartId>([asked]);
        while (waiting.TryDequeue(out PartId next))
        {
            foreach (PartId access in before.Of(next))
            {
                if (blocks.TryAdd(access, next))
                    waiting.Enqueue(access);
            }
        }

        var way = new List<PartId> { first };
        while (way[^1] != asked)
            way.Add(blocks[way[^1]]);
        return [.. way];
    }
}
