using Contam.Families;
using Contam.Spread;

namespace Contam.Properties.Spread;

/// <summary>
/// Which clean places the finds disprove, from the definition and slowly: for every find and every size the graph library's own search, and for small
/// systems every way there is. Shares no code with the spread.
/// </summary>
internal sealed class ReferenceContradictions
{
    private readonly SpreadQuestion question;
    private readonly ReferenceWorld unseen;
    private readonly HashSet<PartId> clean;
    private readonly HashSet<PartId> walked;

    internal ReferenceContradictions(SpreadQuestion question)
    {
        this.question = question;
        // As if nothing had been seen: the failed parts are the sources, and a part where debris was found holds what it is rated to hold.
        unseen = new ReferenceWorld(question with { Findings = [] }, countCleanFindings: false);
        Finds = [.. question.Findings.Where(finding => finding.Found && finding.Debris == question.Debris)];
        clean =
        [
            .. question.Findings.Where(finding => !finding.Found && finding.Debris == question.Debris).Select(finding => finding.Part)
                .Where(part => question.Family[part].Inspect?.Shows == Shows.Good && !question.Failed.Contains(part)),
        ];
        walked = ReachedBy(ParticleSize.Zero, shut: null);
        Void = [.. clean.Where(place => Finds.Any(find => Disproves(find, place)))];
    }

    internal IReadOnlyList<Finding> Finds { get; }

    /// <summary>Every clean place that some find disproves.</summary>
    internal HashSet<PartId> Void { get; }

    /// <summary>Whether a find disproves a clean place.</summary>
    internal bool Disproves(Finding find, PartId place) => IsUnexplained(find) && IsOnAWalkTo(find, place);

    /// <summary>Whether walks from a failed part lead to a find and none of them explains it.</summary>
    internal bool IsUnexplained(Finding find)
    {
        if (!walked.Contains(find.Part))
            return false;
        ParticleSize widest = unseen.Levels.Where(level => ReachedBy(level, shut: null).Contains(find.Part)).Max();
        return !ReachedBy(widest, clean).Contains(find.Part)
            && !(SizeOf(find) is { } size && ReachedBy(size, clean).Contains(find.Part));
    }

    /// <summary>Whether a part is on some walk from a failed part to a find.</summary>
    internal bool IsOnAWalkTo(Finding find, PartId part) => walked.Contains(part) && unseen.Reached([part], ParticleSize.Zero).Contains(find.Part);

    internal FindOrigin OriginOf(Finding find) =>
        question.Failed.IsEmpty ? FindOrigin.Failure
        : !walked.Contains(find.Part) ? FindOrigin.OwnSource
        : SizeOf(find) is { } size && !ReachedBy(size, shut: null).Contains(find.Part) ? FindOrigin.FurtherSource
        : FindOrigin.Failure;

    /// <summary>The void places by walking every way without a part twice. For a handful of parts.</summary>
    internal HashSet<PartId> VoidByEveryWay()
    {
        List<Way> ways = [];
        foreach ((PartId source, ParticleSize shed) in unseen.Sources)
            Extend(new Way([source], shed), ways);
        ILookup<PartId, Way> waysTo = ways.ToLookup(way => way.Parts[^1]);
        var disproved = new HashSet<PartId>();
        foreach (Finding find in Finds.Where(find => waysTo.Contains(find.Part)))
        {
            ParticleSize most = waysTo[find.Part].Max(way => way.Arrives);
            if (waysTo[find.Part].Any(way => !way.Parts.Skip(1).SkipLast(1).Any(clean.Contains) && (way.Arrives >= most || SizeOf(find) is { } size && way.Arrives >= size)))
                continue;
            disproved.UnionWith(clean.Where(place => waysTo.Contains(place) && WaysFrom(place).Any(way => way.Parts[^1] == find.Part)));
        }

        return disproved;
    }

    private List<Way> WaysFrom(PartId part)
    {
        List<Way> ways = [];
        Extend(new Way([part], ParticleSize.Unlimited), ways);
        return ways;
    }

    private void Extend(Way way, List<Way> ways)
    {
        ways.Add(way);
        PartId end = way.Parts[^1];
        foreach (Joint joint in question.Family.Joints.Where(joint => joint.From == end && unseen.IsOpen(joint, []) && !way.Parts.Contains(joint.To)))
            Extend(new Way([.. way.Parts, joint.To], ParticleSize.Min(way.Arrives, ParticleSize.Min(unseen.LetsOn(question.Family[end]), unseen.LetsOn(joint)))), ways);
    }

    private HashSet<PartId> ReachedBy(ParticleSize size, HashSet<PartId>? shut) =>
        unseen.Reached(unseen.Sources.Where(source => source.Size >= size).Select(source => source.Part), size, shut: shut);

    private ParticleSize? SizeOf(Finding find) => question.Debris.HasSize && find.Size is { IsUnlimited: false } size ? size : null;

    private sealed record Way(PartId[] Parts, ParticleSize Arrives);
}
