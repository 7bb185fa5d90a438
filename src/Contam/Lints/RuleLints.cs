using Contam.Families;
using Contam.Problems;
using Contam.Treatment;

namespace Contam.Lints;

/// <summary>What may be forgotten in how the standard treats what debris can reach.</summary>
internal static class RuleLints
{
    public static void Look(Family family, ShopStandard standard, FlowMap map, LintSink sink)
    {
        var rules = new RuleBook(standard);
        var measured = family.Limits.Select(limit => limit.Part).ToHashSet();
        // Every joint counts, also one that waits for a failure: a rule is needed before it is used.
        (Debris Debris, bool[] Reaches)[] spreads =
        [
            .. standard.DebrisOf(family).Select(debris => (debris, map.ReachedFrom(part => part.ShedOf(debris) is not null, _ => true))),
        ];
        for (int i = 0; i < family.Parts.Length; i++)
        {
            Part part = family.Parts[i];
            Debris[] reaching = [.. spreads.Where(spread => spread.Reaches[i]).Select(spread => spread.Debris)];
            string[] withoutRule = [.. reaching.Where(debris => IsFallback(rules, part, debris)).Select(debris => debris.Name)];
            if (withoutRule.Length > 0)
                sink.At(LintCodes.NoRule, part, name => LintProblems.NoRule(part.Place, name, part.Kind.Name, withoutRule));
            if (!part.IsCritical || measured.Contains(part.Id) || part.Inspect is { Shows: Shows.Good })
                continue;
            string[] unproved = [.. reaching.Where(debris => !ProvesIt(rules, part, debris)).Select(debris => debris.Name)];
            if (unproved.Length > 0)
                sink.At(LintCodes.CriticalWithoutTest, part, name => LintProblems.CriticalWithoutTest(part.Place, name, unproved));
        }
    }

    private static IEnumerable<Debris> DebrisOf(this ShopStandard standard, Family family)
    {
        var shed = family.Parts.SelectMany(part => part.Sheds).Select(one => one.Debris).ToHashSet();
        return new[] { Debris.Metal, Debris.Rubber, Debris.Water }.Concat(standard.Debris).DistinctBy(debris => debris.Name, StringComparer.Ordinal).Where(shed.Contains);
    }

    private static bool IsFallback(RuleBook rules, Part part, Debris debris) =>
        rules.Choose(part, debris, Situation.Exposed).Rule is null || rules.Choose(part, debris, Situation.Guarded).Rule is null;

    // A critical part gets the exposed treatment however the debris reaches it.
    private static bool ProvesIt(RuleBook rules, Part part, Debris debris) =>
        rules.Choose(part, debris, Situation.Exposed).Treatments.Any(treatment => treatment is TreatmentKind.Test or TreatmentKind.Replace);
}
