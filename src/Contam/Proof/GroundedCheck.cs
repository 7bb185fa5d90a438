using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>Whether every listed part has a way from a source that can be followed hop by hop and is as wide as claimed.</summary>
internal static class GroundedCheck
{
    /// <summary>The first claim without ground, or <c>null</c>. Linear in plan and family.</summary>
    internal static string? FirstFault(PlanReading reading) =>
        reading.Debris.Select(claims => FirstFault(reading, claims)).FirstOrDefault(fault => fault is not null)
        ?? reading.Plan.Parts.OrEmpty().Select(listed => WrongPath(reading, listed)).FirstOrDefault(fault => fault is not null);

    private static string? FirstFault(PlanReading reading, DebrisClaims claims) =>
        Ungrounded(reading, claims, claims.Counted, claims.CountedWorld)
        ?? (ReferenceEquals(claims.Counted, claims.Uncounted) && !claims.CountedWorld.HasAccepted
            ? null
            : Ungrounded(reading, claims, claims.Uncounted, claims.UncountedWorld))
        ?? GradeCheck.TooHarsh(reading, claims);

    private static string? Ungrounded(PlanReading reading, DebrisClaims claims, ReachClaim?[] said, DebrisWorld world)
    {
        for (int part = 0; part < said.Length; part++)
        {
            if (said[part] is { } claim && WrongHop(reading, claims, said, world, part, claim) is { } fault)
                return fault;
        }

        return Circle(reading, claims, said);
    }

    private static string? WrongHop(PlanReading reading, DebrisClaims claims, ReachClaim?[] said, DebrisWorld world, int part, ReachClaim claim)
    {
        string debris = claims.Debris.Name;
        string name = Name(reading, part);
        if (claim.Via == ReachClaim.NoPart)
        {
            if (world.ShedBy(part) is not { } shed)
                return $"{debris} is said to come from {name}, which neither failed nor had any found in it: its true source would be missed";
            if (claim.From != part)
                return $"{name} is called a source of {debris} that comes from elsewhere: its true source would be missed";
            return claim.Reach == shed ? null
                : $"{name} sheds {debris} of {Words.Of(shed)}, not of {Words.Of(claim.Reach)}: what comes of it would be judged wrongly";
        }

        if (claim.Via == ReachClaim.UnknownPart || said[claim.Via] is not { } before)
            return $"the {debris} in {name} is said to come through a part that it does not reach: the way to it cannot be followed";
        ParticleSize? widest = WidestJoint(reading, world, claim.Via, part);
        if (widest is not { } letsOn)
            return $"the {debris} in {name} is said to come through {Name(reading, claim.Via)}, but nothing leads from there into it: the way to it cannot be followed";
        ParticleSize arrives = ParticleSize.Min(before.Reach, letsOn);
        if (claim.Reach > arrives)
            return $"{name} is said to be reached by {debris} of {Words.Of(claim.Reach)} through {Name(reading, claim.Via)}, but that lets only {Words.Of(arrives)} on: the way that it came by would be missed";
        return claim.From == before.From ? null
            : $"the {debris} in {name} is said to come from another source than that in {Name(reading, claim.Via)}, through which it comes: its true source would be missed";
    }

    private static ParticleSize? WidestJoint(PlanReading reading, DebrisWorld world, int from, int to)
    {
        ParticleSize? widest = null;
        foreach (int joint in reading.Joints.Entering(to))
        {
            if (reading.Joints.From(joint) == from && (widest is not { } other || world.LetsOn(joint) > other))
                widest = world.LetsOn(joint);
        }

        return widest;
    }

    // Every part is followed back until a source or a part that was followed before; each is followed once.
    private static string? Circle(PlanReading reading, DebrisClaims claims, ReachClaim?[] said)
    {
        int[] followedFrom = new int[said.Length];
        for (int start = 0; start < said.Length; start++)
        {
            int part = start;
            while (part >= 0 && said[part] is { } claim && followedFrom[part] == 0)
            {
                followedFrom[part] = start + 1;
                part = claim.Via;
            }

            if (part >= 0 && said[part] is not null && followedFrom[part] == start + 1)
                return $"the way of {claims.Debris.Name} to {Name(reading, part)} goes round in a circle and comes from nowhere: its true source would be missed";
        }

        return null;
    }

    private static string? WrongPath(PlanReading reading, PlanPart listed)
    {
        ImmutableArray<string> path = listed.Path.OrEmpty();
        if (listed.Exposure.OrEmpty() is not [PlanExposure first, ..])
            return null;
        DebrisClaims claims = reading.Debris.First(claims => claims.Debris.Name == first.Debris);
        int part = reading.Family.IndexOf(new PartId(listed.Id));
        ReachClaim?[] evidence = part < 0 ? claims.Counted : claims.EvidenceFor(reading.Family, part);
        int place = path.Length - 1;
        for (; place >= 0 && part >= 0 && path[place] == Name(reading, part); place--)
            part = evidence[part]?.Via ?? ReachClaim.NoPart;
        return place < 0 && part < 0 ? null
            : $"the path shown for {listed.Id} is not the way that its hops tell: who followed it would look in the wrong places";
    }

    private static string Name(PlanReading reading, int part) => reading.Family.Parts[part].Id.Value;
}
