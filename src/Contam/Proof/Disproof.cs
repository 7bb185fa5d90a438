using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Which clean findings of one debris are void, and what its finds say of a source, straight from the definition. A walk is from a failed part over open
/// joints; it carries a size where the failed part sheds as much and all joints of it, with the parts that they leave, let as much on; a part where debris
/// was found holds what it is rated to hold. A clean place is a part with a clean finding that has not failed and whose look shows debris well. A find is
/// explained when a walk past no clean place carries its size, or the largest size that any walk carries there. A clean place on a walk to a find that is
/// not explained, and to which some walk leads, is void.
/// </summary>
/// <remarks>Slow: for every size that occurs all walks of it are followed, and for every find all ways back.</remarks>
internal sealed class Disproof
{
    private readonly PlanReading reading;
    private readonly Debris debris;
    private readonly ImmutableArray<PlanFinding> findings;
    private readonly HashSet<int> cleanPlaces;
    private readonly DebrisWorld failuresAlone;
    private readonly bool[] walked;
    private readonly List<(ParticleSize Size, bool[] ByAnyWalk, bool[] PastNoCleanPlace)> carried;

    private Disproof(PlanReading reading, Debris debris)
    {
        this.reading = reading;
        this.debris = debris;
        findings = [.. reading.Plan.Findings.OrEmpty().Where(finding => finding.Debris == debris.Name)];
        var failures = new FailedParts(reading.Family, reading.Plan);
        failuresAlone = new DebrisWorld(new DebrisPassages(reading.Family, reading.Joints, debris), failures, [], []);
        cleanPlaces =
        [
            .. findings.Where(finding => !finding.Found).Select(IndexOf)
                .Where(part => !failures.Parts.Contains(part) && reading.Family.Parts[part].Inspect?.Shows == Shows.Good),
        ];
        walked = failuresAlone.Carried(ParticleSize.Zero, _ => true);
        IEnumerable<ParticleSize> sizes = failuresAlone.Sources.Select(source => source.Size)
            .Concat(Enumerable.Range(0, reading.Joints.Joints.Length).Select(failuresAlone.LetsOn))
            .Append(ParticleSize.Zero);
        carried = [.. sizes.Distinct().OrderDescending().Select(size => (size, failuresAlone.Carried(size, _ => true), failuresAlone.Carried(size, IsNoCleanPlace)))];
    }

    /// <summary>The first finding that the plan calls void and is not, or the other way round, or whose source it tells wrongly; <c>null</c> for none.</summary>
    internal static string? FirstFault(PlanReading reading, Debris debris)
    {
        if (reading.Plan.Findings.OrEmpty().All(finding => finding.Debris != debris.Name))
            return null;
        var disproof = new Disproof(reading, debris);
        return disproof.findings.Select(disproof.Fault).FirstOrDefault(fault => fault is not null);
    }

    private string? Fault(PlanFinding finding)
    {
        if (finding.Found)
        {
            return finding.Void ? $"the find of {debris.Name} at {finding.Part} is called void: what it soiled would be left as it is"
                : finding.Source != SourceOf(finding) ? $"the find of {debris.Name} at {finding.Part} is not said to speak for the source that it speaks for: a further source would be missed"
                : null;
        }

        ImmutableArray<PlanFinding> disprovers = [.. findings.Where(find => find.Found && Disproves(find, IndexOf(finding)))];
        if (disprovers.IsEmpty)
            return finding.Void ? $"the clean finding at {finding.Part} is called void, but no find disproves it: what it clears would be treated for nothing" : null;
        if (!finding.Void || finding.Accepted)
            return $"the clean finding at {finding.Part} may not count, as the {debris.Name} found at {disprovers[0].Part} came past it: what lies beyond it would be left as it is";
        return disprovers.Any(find => find.Part == finding.ContradictedBy) ? null
            : $"the find that disproves the clean finding at {finding.Part} is not named: nobody would know what to look at again";
    }

    private bool Disproves(PlanFinding find, int clean) =>
        cleanPlaces.Contains(clean) && walked[IndexOf(find)] && walked[clean] && !IsExplained(find) && LeadsTo(clean, IndexOf(find));

    private bool IsExplained(PlanFinding find)
    {
        int part = IndexOf(find);
        (_, _, bool[] widest) = carried.First(level => level.ByAnyWalk[part]);
        return widest[part] || SizeOf(find) is { } size && failuresAlone.Carried(size, IsNoCleanPlace)[part];
    }

    private string? SourceOf(PlanFinding find) =>
        reading.Plan.Failed.OrEmpty().IsEmpty ? null
        : !walked[IndexOf(find)] ? PlanFinding.OwnSource
        : SizeOf(find) is { } size && !failuresAlone.Carried(size, _ => true)[IndexOf(find)] ? PlanFinding.FurtherSource
        : null;

    private bool LeadsTo(int part, int find)
    {
        var leads = new HashSet<int> { find };
        var back = new Stack<int>(leads);
        while (back.TryPop(out int next))
        {
            foreach (int joint in reading.Joints.Entering(next))
            {
                if (leads.Add(reading.Joints.From(joint)))
                    back.Push(reading.Joints.From(joint));
            }
        }

        return leads.Contains(part);
    }

    private bool IsNoCleanPlace(int part) => !cleanPlaces.Contains(part);

    private ParticleSize? SizeOf(PlanFinding find) => debris.HasSize && find.SizeUm is { } size and >= 0 ? ParticleSize.FromMicrometres(size) : null;

    private int IndexOf(PlanFinding finding) => reading.Family.IndexOf(new PartId(finding.Part));
}
