using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether nothing that the debris can reach is left out or called milder than it is. For every open joint from u to v the plan must say that v is
/// reached by all that u is reached by and the joint lets on; together with <see cref="GroundedCheck"/> that makes every claimed reach the widest way there is.
/// </summary>
internal static class ClosedCheck
{
    /// <summary>The first thing left out or called too mild, or <c>null</c>. Linear in plan and family.</summary>
    internal static string? FirstFault(PlanReading reading) =>
        reading.Debris.Select(claims => FirstFault(reading, claims)).FirstOrDefault(fault => fault is not null)
        ?? Listing(reading)
        ?? ConditionalCheck.FirstFault(reading);

    private static string? FirstFault(PlanReading reading, DebrisClaims claims) =>
        LeftOut(reading, claims, claims.Line)
        ?? LeftOut(reading, claims, claims.Counted)
        ?? LeftOut(reading, claims, claims.Uncounted)
        ?? TooNarrow(reading, claims, claims.Counted, claims.CountedWorld)
        ?? TooNarrow(reading, claims, claims.Uncounted, claims.UncountedWorld)
        ?? Disagreement(reading, claims)
        ?? GradeCheck.TooMild(reading, claims);

    private static string? LeftOut(PlanReading reading, DebrisClaims claims, ReachClaim?[] said)
    {
        bool[] reached = claims.CountedWorld.Reached();
        foreach ((int part, _) in claims.CountedWorld.Sources)
        {
            if (said[part] is null)
                return $"{Name(reading, part)}, where the {claims.Debris.Name} comes from, is left out: it would go on shedding";
        }

        for (int part = 0; part < reached.Length; part++)
        {
            if (!reached[part] || said[part] is not null)
                continue;
            int before = FirstListedUpstream(reading, said, part);
            if (before >= 0)
                return $"{Name(reading, part)} is left out, though {Name(reading, before)} leads into it: {claims.Debris.Name} would stay in it";
        }

        return null;
    }

    private static int FirstListedUpstream(PlanReading reading, ReachClaim?[] said, int part)
    {
        foreach (int joint in reading.Joints.Entering(part))
        {
            if (said[reading.Joints.From(joint)] is not null)
                return reading.Joints.From(joint);
        }

        return -1;
    }

    private static string? TooNarrow(PlanReading reading, DebrisClaims claims, ReachClaim?[] said, DebrisWorld world)
    {
        string debris = claims.Debris.Name;
        foreach ((int part, ParticleSize size) in world.Sources)
        {
            if (said[part]!.Value.Reach < size)
                return $"{Name(reading, part)} sheds {debris} of {Words.Of(size)}, but is said to be reached by {Words.Of(said[part]!.Value.Reach)} only: what it sheds would be taken too lightly";
        }

        for (int joint = 0; joint < reading.Joints.Joints.Length; joint++)
        {
            int from = reading.Joints.From(joint);
            int to = reading.Joints.To(joint);
            if (said[from] is not { } before || said[to] is not { } after)
                continue;
            ParticleSize arrives = ParticleSize.Min(before.Reach, world.LetsOn(joint));
            if (after.Reach < arrives)
                return $"{Name(reading, to)} is said to be reached by {debris} of {Words.Of(after.Reach)}, but {Name(reading, from)} lets {Words.Of(arrives)} into it: it would be taken too lightly";
        }

        return null;
    }

    private static string? Disagreement(PlanReading reading, DebrisClaims claims)
    {
        for (int part = 0; part < claims.Line.Length; part++)
        {
            if (claims.Line[part] != claims.EvidenceFor(reading.Family, part)[part])
                return $"what the plan lists for {Name(reading, part)} is not what its evidence for {claims.Debris.Name} says: one of the two would be worked by and the other relied on";
        }

        return null;
    }

    private static string? Listing(PlanReading reading)
    {
        HashSet<string> failed = [.. reading.Plan.Failed.OrEmpty().Select(failure => failure.Part)];
        foreach (string part in reading.Plan.Failed.OrEmpty().Select(failure => failure.Part))
        {
            if (reading.Listed[reading.Family.IndexOf(new PartId(part))] is null)
                return $"{part} has failed and is left out: it would stay as it is";
        }

        foreach (PlanPart listed in reading.Plan.Parts.OrEmpty())
        {
            if (listed.Exposure.OrEmpty().IsEmpty && !failed.Contains(listed.Id))
                return $"nothing is said of what reaches {listed.Id}: it would not be known how to treat it";
        }

        int clear = reading.Family.Parts.Length - reading.Plan.Parts.OrEmpty().Length;
        return clear == reading.Plan.Clear ? null
            : string.Create(System.Globalization.CultureInfo.InvariantCulture,
                $"{reading.Plan.Clear} parts are called clear, but it is {clear}: a part has been lost count of");
    }

    private static string Name(PlanReading reading, int part) => reading.Family.Parts[part].Id.Value;
}
