using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.Properties.Spread;

/// <summary>A part that is reached, by the reference.</summary>
internal sealed record ReferencePart(PartId Part, Grade Grade, ParticleSize Reach);

/// <summary>
/// How far debris goes, straight from the definitions and slowly: for every size that could matter, what does the graph library's own
/// search reach over joints and parts that let that size on? Shares no code with the spread.
/// </summary>
internal sealed class ReferenceSpread
{
    private readonly SpreadQuestion question;
    private readonly ReferenceWorld counted;
    private readonly HashSet<PartId> uncleared;
    private readonly HashSet<PartId> passingFewerThanTwo;

    private ReferenceSpread(SpreadQuestion question)
    {
        this.question = question;
        counted = new ReferenceWorld(question, countCleanFindings: true);
        var uncounted = new ReferenceWorld(question, countCleanFindings: false);
        PartId[] sources = [.. counted.Sources.Select(source => source.Part)];
        HashSet<PartId> listed = counted.Reached(sources, ParticleSize.Zero);
        uncleared = counted.Reached(sources, ParticleSize.Zero, pastAccepted: false);
        passingFewerThanTwo = question.Family.Parts.Any(part => part.ClearedBy == ClearedBy.TwoLooks) ? PassingFewerThanTwo(sources) : [];
        Dictionary<PartId, ParticleSize> reachCounted = Reach(counted);
        Dictionary<PartId, ParticleSize> reachUncounted = Reach(uncounted);
        HashSet<PartId> exposedCounted = Exposed(counted);
        HashSet<PartId> exposedUncounted = Exposed(uncounted);
        Parts =
        [
            .. InFamilyOrder(listed).Select(part => !IsSpared(part)
                ? new ReferencePart(part, exposedUncounted.Contains(part) ? Grade.Exposed : Grade.Guarded, reachUncounted[part])
                : new ReferencePart(part, IsCleared(part) ? Grade.Cleared : exposedCounted.Contains(part) ? Grade.Exposed : Grade.Guarded, reachCounted[part])),
        ];
        PartId[] conditions = [.. question.Family.Joints.Select(joint => joint.OnlyIfFailed).OfType<PartId>().Distinct()];
        ReachedIfOneFails = conditions.ToDictionary(part => part, part => InFamilyOrder(ReachedIfFailed(part).Except(listed)));
        ReachedIfAllFailed = InFamilyOrder(ReachedIfFailed(conditions).Except(listed));
    }

    /// <summary>Every part reached, in family order.</summary>
    internal ImmutableArray<ReferencePart> Parts { get; }

    /// <summary>How many parts have no path from a source.</summary>
    internal int ClearCount => question.Family.Parts.Length - Parts.Length;

    /// <summary>For each part that a conditional joint waits for: what is reached beyond the list if it has failed, in family order.</summary>
    internal IReadOnlyDictionary<PartId, ImmutableArray<PartId>> ReachedIfOneFails { get; }

    /// <summary>What is reached beyond the list if all of them have failed.</summary>
    internal ImmutableArray<PartId> ReachedIfAllFailed { get; }

    internal static ReferenceSpread Of(SpreadQuestion question) => new(question);

    /// <summary>Whether only its being critical keeps this part from being cleared.</summary>
    internal bool WouldBeCleared(PartId part) => question.Family[part].IsCritical && !IsSpared(part) && IsCleared(part);

    /// <summary>What is reached if these parts have failed, without becoming sources.</summary>
    internal HashSet<PartId> ReachedIfFailed(params PartId[] parts) =>
        counted.Reached(counted.Sources.Select(source => source.Part), ParticleSize.Zero, alsoFailed: parts);

    /// <summary>Whether clean findings count for this part.</summary>
    internal bool IsSpared(PartId part) => question.Family[part].ClearedBy switch
    {
        ClearedBy.OneLook => true,
        ClearedBy.TwoLooks => !passingFewerThanTwo.Contains(part),
        _ => false,
    };

    // What is still reached when all clean findings but one stop the debris, whichever that one is; a part that was found clean itself must not be behind another.
    private HashSet<PartId> PassingFewerThanTwo(PartId[] sources)
    {
        PartId[] accepted = [.. question.Family.Parts.Select(part => part.Id).Where(counted.IsAccepted)];
        IEnumerable<PartId> pastOne = accepted.SelectMany(one => counted.Reached(sources, ParticleSize.Zero, pastAccepted: false, butPast: one)).Where(part => !counted.IsAccepted(part));
        return [.. uncleared, .. pastOne];
    }

    private bool IsCleared(PartId part) => counted.IsAccepted(part) || !uncleared.Contains(part);

    // The widest of the sizes at which some source that sheds as much reaches the part.
    private static Dictionary<PartId, ParticleSize> Reach(ReferenceWorld world)
    {
        var reach = new Dictionary<PartId, ParticleSize>();
        foreach (ParticleSize level in world.Levels.Order())
        {
            foreach (PartId part in world.Reached(world.Sources.Where(source => source.Size >= level).Select(source => source.Part), level))
                reach[part] = level;
        }

        return reach;
    }

    // Where some source's full size arrives.
    private static HashSet<PartId> Exposed(ReferenceWorld world) =>
    [
        .. world.Sources.GroupBy(source => source.Size)
            .SelectMany(group => world.Reached(group.Select(source => source.Part), group.Key)),
    ];

    private ImmutableArray<PartId> InFamilyOrder(IEnumerable<PartId> parts) => [.. parts.OrderBy(question.Family.IndexOf)];
}
