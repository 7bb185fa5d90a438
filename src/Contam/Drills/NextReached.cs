using Contam.Families;
using Contam.Spread;

namespace Contam.Drills;

/// <summary>
/// Asks what the debris reaches next: just one choice lies one open joint from a failed part that shed it. The others lie upstream, behind a joint that is shut,
/// further on, or on the same circuits and out of reach.
/// </summary>
internal static class NextReached
{
    private const int MostWrong = 3;
    private const int LeastWrong = 2;

    public static Posed Pose(DrillRequest request, ShortestWays ways)
    {
        var dice = new DrillDice(request.Seed, DrillKind.NextReached);
        var failed = request.Failed.ToHashSet();
        HashSet<PartId> sources = [.. request.SourcesOf()];
        NextChoice[] all = [.. request.Family.Parts.Where(part => !sources.Contains(part.Id)).Select(part => Of(request.Family, failed, sources, ways, part.Id))];
        NextChoice[] right = [.. all.Where(choice => choice.IsRight)];
        if (right.Length == 0)
            return Posed.Not(DrillKind.NextReached, DrillSilence.NothingBeyond);
        NextChoice[] wrong = [.. Mixed.Of(dice, MostWrong, Sorts(request.Family, sources, [.. all.Where(choice => !choice.IsRight)]))];
        if (wrong.Length < LeastWrong)
            return Posed.Not(DrillKind.NextReached, DrillSilence.TooFewParts);
        return Posed.As(new DrillQuestion(DrillKind.NextReached, [.. dice.Shuffled<DrillChoice>([dice.Pick(right), .. wrong])]));
    }

    private static NextChoice Of(Family family, HashSet<PartId> failed, HashSet<PartId> sources, ShortestWays ways, PartId part) => new(part, ways.HopsTo(part))
    {
        Path = ways.PathTo(part),
        IsUpstream = family.Joints.Any(joint => joint.From == part && sources.Contains(joint.To) && SpreadGraph.IsOpen(family, joint, failed)),
        Closed = family.Joints.FirstOrDefault(joint => joint.To == part && sources.Contains(joint.From) && !SpreadGraph.IsOpen(family, joint, failed)),
    };

    // The nearer the mistake, the earlier the sort.
    private static NextChoice[][] Sorts(Family family, HashSet<PartId> sources, NextChoice[] wrong)
    {
        var circuits = family.Joints.Where(joint => sources.Contains(joint.From) || sources.Contains(joint.To)).Select(joint => joint.Circuit).ToHashSet(StringComparer.Ordinal);
        var near = family.Joints.Where(joint => circuits.Contains(joint.Circuit)).SelectMany(joint => new[] { joint.From, joint.To }).ToHashSet();
        return
        [
            [.. wrong.Where(choice => choice.IsUpstream)],
            [.. wrong.Where(choice => choice.Closed is not null)],
            [.. wrong.Where(choice => choice.Hops == 2)],
            [.. wrong.Where(choice => choice.Hops > 2)],
            [.. wrong.Where(choice => choice.Hops is null && near.Contains(choice.Part))],
            wrong,
        ];
    }
}
