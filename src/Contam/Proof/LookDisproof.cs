using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Which clean findings, of looks and of those on record, the finds of a history disprove for one debris, by the definition that <see cref="Disproof"/> gives. A look
/// that finds something finds the debris at every place of it that the debris has a way to, of a size that nobody says.
/// </summary>
/// <remarks>What does not hang on the outcomes is worked out once, and what a set of clean looks leaves open once for each size.</remarks>
internal sealed class LookDisproof
{
    private readonly DebrisPassages passages;
    private readonly DebrisWorld failuresAlone;
    private readonly HashSet<int> onRecord;
    private readonly List<(int Part, ParticleSize? Size)> foundBefore;
    private readonly int[] lookAt;
    private readonly bool[] walked;
    private readonly bool[] comesHere;
    private readonly ParticleSize[] widest;
    private readonly PlanLooks looks;
    private readonly Dictionary<(ParticleSize, int), bool[]> open = [];
    private readonly Dictionary<int, bool[]> leadingTo = [];

    internal LookDisproof(PlanReading reading, DebrisClaims claims, PlanLooks looks)
    {
        this.looks = looks;
        passages = claims.Passages;
        Family family = reading.Family;
        Debris = claims.Debris;
        var failures = new FailedParts(family, reading.Plan);
        failuresAlone = new DebrisWorld(passages, failures, [], []);
        PlanFinding[] findings = [.. reading.Plan.Findings.OrEmpty().Where(finding => finding.Debris == Debris.Name)];
        onRecord =
        [
            .. family.Places(findings.Where(finding => !finding.Found).Select(finding => finding.Part))
                .Where(part => !failures.Parts.Contains(part) && family.Parts[part].Inspect?.Shows == Shows.Good),
        ];
        foundBefore = [.. findings.Where(finding => finding.Found).Select(finding => (family.IndexOf(new PartId(finding.Part)), SizeOf(finding)))];
        lookAt = new int[family.Parts.Length];
        for (int look = 0; look < looks.All.Length; look++)
        {
            foreach (int place in looks.IsFor(look, Debris) ? looks.Places[look] : [])
                lookAt[place] = 1 << look;
        }

        comesHere = claims.UncountedWorld.Reached();
        walked = failuresAlone.Carried(ParticleSize.Zero, _ => true);
        widest = new ParticleSize[walked.Length];
        IEnumerable<ParticleSize> sizes = failuresAlone.Sources.Select(source => source.Size).Concat(Enumerable.Range(0, passages.Joints.Joints.Length).Select(failuresAlone.LetsOn));
        foreach (ParticleSize size in sizes.Distinct().Order())
        {
            bool[] carried = failuresAlone.Carried(size, _ => true);
            for (int part = 0; part < widest.Length; part++)
                widest[part] = carried[part] ? size : widest[part];
        }
    }

    internal Debris Debris { get; }

    /// <summary>The places of these looks where the debris is found.</summary>
    internal IEnumerable<int> FoundAt(int found) => At(found).Where(place => comesHere[place]);

    /// <summary>The places of these looks that are looked at for the debris.</summary>
    internal IEnumerable<int> At(int those) =>
        Enumerable.Range(0, looks.All.Length).Where(look => (those & (1 << look)) != 0 && looks.IsFor(look, Debris)).SelectMany(look => looks.Places[look]);

    /// <summary>The clean places that are disproved. Linear for every find that is not explained and every size that a set of clean looks was not asked for before.</summary>
    internal HashSet<int> Of(int clean, int found)
    {
        var disproved = new HashSet<int>();
        if (failuresAlone.Sources.IsEmpty || (onRecord.Count == 0 && !At(clean).Any()))
            return disproved;
        foreach ((int find, ParticleSize? size) in FoundAt(found).Select(place => (place, default(ParticleSize?))).Concat(foundBefore))
        {
            if (!walked[find] || IsOpen(widest[find], clean, find) || (size is { } seen && IsOpen(seen, clean, find)))
                continue;
            bool[] leads = LeadingTo(find);
            disproved.UnionWith(onRecord.Concat(At(clean)).Where(place => place != find && leads[place] && walked[place]));
        }

        return disproved;
    }

    private bool IsOpen(ParticleSize size, int clean, int part)
    {
        int mattering = At(clean).Aggregate(0, (bits, place) => bits | lookAt[place]);
        if (!open.TryGetValue((size, mattering), out bool[]? carried))
            open[(size, mattering)] = carried = failuresAlone.Carried(size, place => (lookAt[place] & mattering) == 0 && !onRecord.Contains(place));
        return carried[part];
    }

    private bool[] LeadingTo(int find)
    {
        if (leadingTo.TryGetValue(find, out bool[]? leads))
            return leads;
        leads = new bool[walked.Length];
        leads[find] = true;
        var back = new Stack<int>([find]);
        while (back.TryPop(out int next))
        {
            foreach (int joint in passages.Joints.Entering(next))
            {
                int from = passages.Joints.From(joint);
                if (leads[from])
                    continue;
                leads[from] = true;
                back.Push(from);
            }
        }

        return leadingTo[find] = leads;
    }

    private ParticleSize? SizeOf(PlanFinding finding) => Debris.HasSize && finding.SizeUm is { } size and >= 0 ? ParticleSize.FromMicrometres(size) : null;
}
