using Contam.Families;
using Contam.Spread;

namespace Contam.Properties.Spread;

/// <summary>How far debris goes, by walking every path there is without a part twice. For a handful of parts; the judge of the reference.</summary>
internal static class EveryPath
{
    /// <summary>For each part that is reached: grade and reach.</summary>
    internal static Dictionary<PartId, (Grade Grade, ParticleSize Reach)> Of(SpreadQuestion question)
    {
        var counted = new ReferenceWorld(question, countCleanFindings: true);
        var uncounted = new ReferenceWorld(question, countCleanFindings: false);
        Dictionary<PartId, List<Walk>> walksCounted = Walks(question, counted);
        Dictionary<PartId, List<Walk>> walksUncounted = Walks(question, uncounted);
        return walksCounted.ToDictionary(entry => entry.Key, entry =>
        {
            PartId part = entry.Key;
            int needed = question.Family[part].ClearedBy switch { ClearedBy.OneLook => 1, ClearedBy.TwoLooks => 2, _ => int.MaxValue };
            bool isCleared = entry.Value.TrueForAll(walk => walk.Parts.Count(counted.IsAccepted) >= needed);
            List<Walk> walks = isCleared || needed == 1 ? entry.Value : walksUncounted[part];
            Grade grade = isCleared
                ? Grade.Cleared
                : walks.Any(walk => walk.Arrives == walk.Shed) ? Grade.Exposed : Grade.Guarded;
            return (grade, walks.Max(walk => walk.Arrives));
        });
    }

    private static Dictionary<PartId, List<Walk>> Walks(SpreadQuestion question, ReferenceWorld world)
    {
        var walksTo = new Dictionary<PartId, List<Walk>>();
        foreach ((PartId source, ParticleSize size) in world.Sources)
            Extend(new Walk([source], size, size));
        return walksTo;

        void Extend(Walk walk)
        {
            PartId end = walk.Parts[^1];
            if (!walksTo.TryGetValue(end, out List<Walk>? walks))
                walksTo[end] = walks = [];
            walks.Add(walk);
            foreach (Joint joint in question.Family.Joints.Where(joint => joint.From == end && world.IsOpen(joint, []) && !walk.Parts.Contains(joint.To)))
            {
                ParticleSize leaves = walk.Parts.Length == 1 ? walk.Arrives : ParticleSize.Min(walk.Arrives, world.LetsOn(question.Family[end]));
                Extend(walk with { Parts = [.. walk.Parts, joint.To], Arrives = ParticleSize.Min(leaves, world.LetsOn(joint)) });
            }
        }
    }

    private sealed record Walk(PartId[] Parts, ParticleSize Shed, ParticleSize Arrives)
    {
        internal IEnumerable<PartId> Between => Parts.Skip(1).SkipLast(1);
    }
}
