using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>A plan with its ids found in a family, ready to be checked. Reading stops at the first thing that makes no sense.</summary>
internal sealed class PlanReading
{
    private PlanReading(PlanDocument plan, Family family)
    {
        Plan = plan;
        Family = family;
        Listed = new PlanPart?[family.Parts.Length];
        Joints = new OpenJoints(family, plan.Failed.OrEmpty().Select(failure => new PartId(failure.Part)).ToHashSet());
    }

    /// <summary>The plan.</summary>
    internal PlanDocument Plan { get; }

    /// <summary>The family it is held against.</summary>
    internal Family Family { get; }

    /// <summary>The joints that something can pass, given what the plan says has failed.</summary>
    internal OpenJoints Joints { get; }

    /// <summary>For each part of the family what the plan lists of it; <c>null</c> where it is not listed.</summary>
    internal PlanPart?[] Listed { get; }

    /// <summary>What is claimed of each debris, in the order of the plan. Complete exactly where <see cref="Problem"/> is <c>null</c>.</summary>
    internal List<DebrisClaims> Debris { get; } = [];

    /// <summary>Why the plan cannot be checked, or <c>null</c>.</summary>
    internal string? Problem { get; private set; }

    /// <summary>Reads. Linear in plan and family.</summary>
    internal static PlanReading Read(PlanDocument plan, Family family, IEnumerable<Debris> known)
    {
        var reading = new PlanReading(plan, family);
        reading.Problem = reading.ReadParts() ?? reading.ReadQuestion() ?? reading.ReadDebris(known);
        return reading;
    }

    private string? ReadParts()
    {
        foreach (PlanPart listed in Plan.Parts.OrEmpty())
        {
            int part = Family.IndexOf(new PartId(listed.Id));
            if (part < 0)
                return $"the plan lists {listed.Id}, which this engine does not have: the work would be done for another engine";
            if (Listed[part] is not null)
                return $"the plan lists {listed.Id} twice: it would not be known which of the two to work by";
            Listed[part] = listed;
            foreach (PlanExposure line in listed.Exposure.OrEmpty())
            {
                if (!Plan.Debris.OrEmpty().Contains(line.Debris))
                    return $"{listed.Id} has a line for {line.Debris}, which the plan is not about: nobody has followed that debris";
            }
        }

        return null;
    }

    private string? ReadQuestion()
    {
        foreach (string id in Plan.Failed.OrEmpty().Select(failure => failure.Part).Concat(Plan.Findings.OrEmpty().Select(finding => finding.Part)))
        {
            if (Family.IndexOf(new PartId(id)) < 0)
                return $"the plan is made for {id}, which this engine does not have: the work would be done for another engine";
        }

        if (Plan.Failed.OrEmpty().Select(WrongFailure).FirstOrDefault(problem => problem is not null) is { } wrong)
            return wrong;
        HashSet<string> failed = [.. Plan.Failed.OrEmpty().Select(failure => failure.Part)];
        HashSet<(string, string)> found = [.. Plan.Findings.OrEmpty().Where(finding => finding.Found).Select(finding => (finding.Part, finding.Debris))];
        return Plan.Findings.OrEmpty().Select(finding => WrongAcceptance(finding, failed, found)).FirstOrDefault(problem => problem is not null);
    }

    private string? WrongFailure(PlanFailure failure) =>
        failure.Debris.OrEmpty().FirstOrDefault(debris => !Plan.Debris.OrEmpty().Contains(debris)) is { } unasked
            ? $"{failure.Part} is said to have shed {unasked}, which the plan is not about: nobody has followed that debris"
        : failure.UpToUm is not (null or (> 0 and < double.PositiveInfinity))
            ? $"{failure.Part} is said to have shed debris of a size that is none: it would not be known what holds it back"
        : null;

    private string? WrongAcceptance(PlanFinding finding, HashSet<string> failed, HashSet<(string Part, string Debris)> found)
    {
        if (!finding.Accepted)
            return null;
        string? because =
            finding.Found ? "something was found"
            : Family[new PartId(finding.Part)].Inspect?.Shows != Shows.Good ? "a look there does not show debris well enough"
            : failed.Contains(finding.Part) ? "the part has failed"
            : found.Contains((finding.Part, finding.Debris)) ? $"{finding.Debris} was found there too"
            : null;
        return because is null ? null : $"the clean finding at {finding.Part} may not count, as {because}: what lies beyond it would be left as it is";
    }

    private string? ReadDebris(IEnumerable<Debris> known)
    {
        Debris[] mentioned =
        [
            Families.Debris.Metal, Families.Debris.Rubber, Families.Debris.Water, .. known,
            .. Family.Parts.SelectMany(part => part.Sheds.Select(shed => shed.Debris).Concat(part.Holds.Select(hold => hold.Debris))),
        ];
        foreach (string name in Plan.Debris.OrEmpty().Distinct(StringComparer.Ordinal))
        {
            if (Array.Find(mentioned, debris => debris.Name == name) is not { } debris)
                return $"nobody says whether {name} is hard or has a size, so it cannot be followed: verify with the standard that the plan was made by";
            if (ReadClaims(debris) is { } problem)
                return problem;
        }

        return null;
    }

    private string? ReadClaims(Debris debris)
    {
        if (Disproof.FirstFault(this, debris) is { } fault)
            return fault;
        var grades = new Grade?[Family.Parts.Length];
        var lines = new List<PlanReach>();
        foreach (PlanPart listed in Plan.Parts.OrEmpty())
        {
            foreach (PlanExposure line in listed.Exposure.OrEmpty().Where(line => line.Debris == debris.Name))
            {
                grades[Family.IndexOf(new PartId(listed.Id))] = line.Grade;
                lines.Add(new PlanReach(listed.Id, line.ReachUm, line.From, line.Via));
            }
        }

        ReachClaim?[]? own = Claims(lines, debris, out string? problem);
        PlanEvidence[] evidence = [.. (Plan.Evidence?.OrEmpty() ?? []).Where(evidence => evidence.Debris == debris.Name)];
        ReachClaim?[]? counted = own;
        ReachClaim?[]? uncounted = own;
        if (evidence.Length > 0 && problem is null)
        {
            if (evidence.Length != 2 || evidence[0].CleanFindings == evidence[1].CleanFindings)
                return $"the evidence for {debris.Name} does not stand once with the clean findings and once without: it cannot be told what they were taken to clear";
            counted = Claims(evidence.First(entry => entry.CleanFindings).Parts.OrEmpty(), debris, out problem);
            uncounted = problem is null ? Claims(evidence.First(entry => !entry.CleanFindings).Parts.OrEmpty(), debris, out problem) : null;
        }

        if (problem is null)
        {
            var passages = new DebrisPassages(Family, Joints, debris);
            Debris.Add(new DebrisClaims
            {
                Debris = debris,
                Passages = passages,
                Grades = grades,
                Line = own!,
                Counted = counted!,
                Uncounted = uncounted!,
                CountedWorld = DebrisWorld.Of(passages, Plan, countCleanFindings: true),
                UncountedWorld = DebrisWorld.Of(passages, Plan, countCleanFindings: false),
            });
        }

        return problem;
    }

    private ReachClaim?[]? Claims(IEnumerable<PlanReach> lines, Debris debris, out string? problem)
    {
        var claims = new ReachClaim?[Family.Parts.Length];
        foreach (PlanReach line in lines)
        {
            int part = Family.IndexOf(new PartId(line.Part));
            ReachClaim? claim = ReachClaim.Of(line, Family);
            problem = part < 0 ? $"the evidence names {line.Part}, which this engine does not have: the work would be done for another engine"
                : claims[part] is not null ? $"{line.Part} has two lines for {debris.Name}: it would not be known which of the two to work by"
                : claim is null ? $"{line.Part} is said to be reached by {debris.Name} of a size that is none: it would not be known how to treat it"
                : null;
            if (problem is not null)
                return null;
            claims[part] = claim;
        }

        problem = null;
        return claims;
    }
}
