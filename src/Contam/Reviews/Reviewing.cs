using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Reviews;

/// <summary>Draws up what is to be reviewed in a family. Cost: that of <see cref="JointWeights"/>, and linear beside it.</summary>
public static class Reviewing
{
    /// <summary>So many lines of joints are checked first.</summary>
    public const int JointsFirst = 20;

    /// <summary>The review of a family. The same family gives the same review.</summary>
    public static FamilyReview Of(Family family)
    {
        ArgumentNullException.ThrowIfNull(family);
        var runs = new RunsIn(family);
        ImmutableArray<Joint> returns = Returns(family);
        return new FamilyReview(family)
        {
            Joints = JointWeights.Of(family) is { } weights ? First(weights) : null,
            Walls = Walls(family, runs),
            Meetings = [.. family.Parts.Select(part => new Meeting(part.Id, runs.Of(part.Id))).Where(meeting => meeting.Fluids.Length > 1)],
            Returns = returns,
            WithoutReturn = [.. family.Circuits.Where(circuit => !circuit.Parts.IsEmpty && !returns.Any(joint => joint.Circuit == circuit.Name))],
            Barriers = Barriers(family),
            Doubts = Doubts(family),
        };
    }

    private static ImmutableArray<WeighedJoints> First(ImmutableArray<JointWeight> weights) =>
    [
        .. weights.Where(weight => weight.Missed + weight.Lowered > 0)
            .GroupBy(weight => (weight.Joint.Place, weight.Joint.Circuit, weight.Plans, weight.Missed, weight.Lowered))
            .OrderByDescending(group => group.Key.Missed).ThenByDescending(group => group.Key.Lowered).ThenByDescending(group => group.Key.Plans).ThenBy(group => group.First().Joint.Id)
            .Take(JointsFirst)
            .Select(group => new WeighedJoints([.. group.Select(weight => weight.Joint)], group.First())),
    ];

    private static ImmutableArray<Wall> Walls(Family family, RunsIn runs)
    {
        ILookup<PartId, Joint> opens = family.Joints.Where(joint => joint.OnlyIfFailed is not null).ToLookup(joint => joint.OnlyIfFailed!.Value);
        return
        [
            .. family.Parts.Where(part => opens.Contains(part.Id)).Select(part => new Wall(
                part.Id,
                [.. opens[part.Id]],
                [.. opens[part.Id].SelectMany(joint => new[] { joint.From, joint.To }).Select(runs.Of).Where(fluids => !fluids.IsEmpty).DistinctBy(fluids => string.Join('\n', fluids))])),
        ];
    }

    private static ImmutableArray<Joint> Returns(Family family)
    {
        var all = family.Joints.Select(joint => (joint.Circuit, joint.From, joint.To)).ToHashSet();
        var placeOf = family.Circuits.SelectMany(circuit => circuit.Parts.Select((part, place) => (Key: (circuit.Name, part), place))).ToDictionary(one => one.Key, one => one.place);
        // A line that goes both ways leads back by itself, which says nothing.
        return
        [
            .. family.Joints.Where(joint => joint.OnlyIfFailed is null && joint.From != joint.To && !all.Contains((joint.Circuit, joint.To, joint.From))
                && (family[joint.To].Kind.IsReservoir || placeOf.GetValueOrDefault((joint.Circuit, joint.From), -1) > placeOf.GetValueOrDefault((joint.Circuit, joint.To), int.MaxValue))),
        ];
    }

    private static ImmutableArray<BarrierFigure> Barriers(Family family)
    {
        var comments = new SourceComments(family);
        var all = ImmutableArray.CreateBuilder<BarrierFigure>();
        foreach (Part part in family.Parts)
        {
            foreach (Hold hold in part.Holds)
            {
                SourceSpan place = hold.Place ?? part.Place;
                all.Add(new BarrierFigure(part.Id, null, hold.Debris, hold.Above, part.HasAbsoluteRating && !part.HasBypass, place, comments.At(place)));
            }

            if (part.Passage is { IsUnlimited: false } passage)
                all.Add(new BarrierFigure(part.Id, null, null, passage, IsReliedOn: true, part.Place, comments.At(part.Place)));
        }

        foreach (Joint joint in family.Joints.Where(joint => joint.Passage is { IsUnlimited: false }))
            all.Add(new BarrierFigure(null, joint, null, joint.Passage!.Value, IsReliedOn: true, joint.Place, comments.At(joint.Place)));
        return all.ToImmutable();
    }

    private static ImmutableArray<Doubt> Doubts(Family family)
    {
        var all = ImmutableArray.CreateBuilder<Doubt>();
        all.AddRange(new SourceComments(family).Saying("not known").Select(comment => new Doubt(DoubtKind.Comment, comment.Text, comment.Place)));
        foreach (Part part in family.Parts)
        {
            if (part.Kind.IsFilter && part.Holds.IsEmpty)
                all.Add(new Doubt(DoubtKind.HoldsNothing, part.Id.Value, part.Place));
            if (!part.Holds.IsEmpty && !part.RatingIsSaid)
                all.Add(new Doubt(DoubtKind.NoRating, part.Id.Value, part.Place));
            foreach (Shed shed in part.Sheds.Where(shed => shed.Debris.HasSize && shed.UpTo.IsUnlimited))
                all.Add(new Doubt(DoubtKind.AnySize, part.Id.Value, shed.Place ?? part.Place, shed.Debris));
            if (part.Sheds.IsEmpty)
                all.Add(new Doubt(DoubtKind.ShedsNothing, part.Id.Value, part.Place));
        }

        return all.ToImmutable();
    }

    /// <summary>What runs in each part although nothing has failed: fluids, and circuits that name none.</summary>
    private sealed class RunsIn
    {
        private readonly ImmutableArray<string> order;
        private readonly ILookup<PartId, string> fluids;

        public RunsIn(Family family)
        {
            var nameOf = family.Circuits.ToDictionary(circuit => circuit.Name, circuit => circuit.Fluid ?? circuit.Name, StringComparer.Ordinal);
            order = [.. family.Circuits.Select(circuit => nameOf[circuit.Name]).Distinct(StringComparer.Ordinal)];
            fluids = family.Joints.Where(joint => joint.OnlyIfFailed is null)
                .SelectMany(joint => new[] { (Part: joint.From, joint.Circuit), (Part: joint.To, joint.Circuit) })
                .Select(end => (end.Part, Fluid: nameOf.GetValueOrDefault(end.Circuit, end.Circuit)))
                .ToLookup(end => end.Part, end => end.Fluid);
        }

        public ImmutableArray<string> Of(PartId part) => [.. order.Where(fluids[part].Contains)];
    }
}
