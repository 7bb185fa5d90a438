using System.Collections.Immutable;
using Contam.Families;
using Contam.Properties.Spread;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.Engine;

/// <summary>
/// What a part is treated by, read from the words on the standard: the most specific rule that says something for its grade; a failed part by what is said
/// for the failed one; a guarded part that is critical, or reached by what its clearance minds, as an exposed one; all debris together; replace in place of flush and clean.
/// </summary>
internal static class ReferenceTreatment
{
    internal static ImmutableArray<TreatmentKind> Of(TestCase asked, Part part, IReadOnlyDictionary<Debris, ReferenceSpread> spreads)
    {
        HashSet<TreatmentKind> all = [];
        foreach (Debris debris in asked.Asked)
        {
            if (spreads[debris].Parts.FirstOrDefault(reached => reached.Part == part.Id) is { } reached && (reached.Grade != Grade.Cleared || asked.Failed.Contains(part.Id)))
                all.UnionWith(For(asked, part, debris, reached));
        }

        // A failed part that nothing comes to: the rules of a debris that there is none of say nothing.
        if (asked.Failed.Contains(part.Id) && asked.Asked.All(debris => spreads[debris].Parts.All(reached => reached.Part != part.Id)))
            all.UnionWith(FirstSaid(asked, part, debris: null, rule => rule.Failed) ?? [TreatmentKind.Replace]);
        if (all.Contains(TreatmentKind.Replace))
            all.ExceptWith([TreatmentKind.Flush, TreatmentKind.Clean]);
        return [.. all.Order()];
    }

    private static ImmutableArray<TreatmentKind> For(TestCase asked, Part part, Debris debris, ReferencePart reached)
    {
        if (asked.Failed.Contains(part.Id))
            return FirstSaid(asked, part, debris, rule => rule.Failed) ?? [TreatmentKind.Replace];
        bool isHarmed = part.IsCritical || (part.Clearance is { } clearance && reached.Reach >= clearance);
        return reached.Grade == Grade.Exposed || isHarmed
            ? FirstSaid(asked, part, debris, rule => rule.Exposed) ?? [TreatmentKind.Inspect, TreatmentKind.Clean]
            : FirstSaid(asked, part, debris, rule => rule.Guarded) ?? [TreatmentKind.Inspect];
    }

    private static ImmutableArray<TreatmentKind>? FirstSaid(TestCase asked, Part part, Debris? debris, Func<Rule, ImmutableArray<TreatmentKind>?> says) =>
        asked.Standard.Rules
            .Where(rule => says(rule) is not null)
            .Where(rule => (rule.For.Part is null || rule.For.Part == part.Id.Value)
                && (rule.For.Kind is null || rule.For.Kind == part.Kind.Name)
                && (rule.For.Debris is null || rule.For.Debris == debris?.Name))
            .OrderBy(rule => rule.For switch
            {
                { Part: not null } => 0,
                { Kind: not null, Debris: not null } => 1,
                { Kind: not null } => 2,
                _ => 3,
            })
            .Select(says)
            .FirstOrDefault();
}
