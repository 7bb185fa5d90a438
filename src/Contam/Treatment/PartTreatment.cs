using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.Treatment;

/// <summary>What one part gets, all debris joined.</summary>
/// <param name="Part">The part.</param>
/// <param name="Treatments">In the order of <see cref="TreatmentKind"/>; empty exactly where the part is cleared of everything that could have come here.</param>
/// <param name="Rule">The rule that gave the treatment, the first where several did; <c>null</c> for the fallback and for a cleared part.</param>
public sealed record PartTreatment(Part Part, ImmutableArray<TreatmentKind> Treatments, Rule? Rule);

/// <summary>
/// Decides the treatment of every listed part.
/// A guarded part whose reach is at or above its clearance, or that is critical, is treated as an exposed one.
/// What a look uses up is renewed; one part of a set renewed renews every treated part of it; what is inside a part that is renewed whole is renewed with it.
/// </summary>
public static class Treating
{
    /// <summary>The treatments for these spreads, one a debris; in the order of the family.</summary>
    public static ImmutableArray<PartTreatment> Decide(Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, RuleBook rules)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(rules);
        var isFailed = failed.ToHashSet();
        var result = ImmutableArray.CreateBuilder<PartTreatment>();
        foreach (Part part in family.Parts)
        {
            if (DecideFor(part, spreads, isFailed, rules) is { } treatment)
                result.Add(treatment);
        }

        return WithWhatIsRenewedTogether(family, result);
    }

    private static ImmutableArray<PartTreatment> WithWhatIsRenewedTogether(Family family, IReadOnlyList<PartTreatment> treated)
    {
        var together = new RenewedTogether(family, treated.Where(one => one.Treatments.Contains(TreatmentKind.Replace)).Select(one => one.Part.Id));
        return
        [
            .. treated.Select(one => one.Treatments.IsEmpty || !together.IsRenewed(one.Part) ? one
                : one with { Treatments = together.ComesInside(one.Part) ? [TreatmentKind.Replace] : RuleBook.Join(one.Treatments.Append(TreatmentKind.Replace)) }),
        ];
    }

    /// <summary>The treatment of one part for these spreads, or <c>null</c> where none lists it and it has not failed.</summary>
    internal static PartTreatment? DecideFor(Part part, ImmutableArray<DebrisSpread> spreads, IReadOnlySet<PartId> isFailed, RuleBook rules)
    {
        var choices = new List<TreatmentChoice>();
        bool isListed = false;
        foreach (DebrisSpread spread in spreads)
        {
            if (spread.Find(part.Id) is not { } reached)
                continue;
            isListed = true;
            if (SituationOf(part, reached, isFailed) is { } situation)
                choices.Add(rules.Choose(part, spread.Debris, situation));
        }

        // A part that failed is made good even where no debris is at it, its own or another's.
        if (!isListed && isFailed.Contains(part.Id))
        {
            isListed = true;
            choices.Add(rules.ChooseForFailed(part));
        }

        return isListed ? new PartTreatment(part, WithLookUsedUp(part, RuleBook.Join(choices.SelectMany(choice => choice.Treatments))), DecisiveRule(choices)) : null;
    }

    private static ImmutableArray<TreatmentKind> WithLookUsedUp(Part part, ImmutableArray<TreatmentKind> treatments) =>
        part.LookUsesUp && treatments.Contains(TreatmentKind.Inspect) ? RuleBook.Join(treatments.Append(TreatmentKind.Replace)) : treatments;

    private static Situation? SituationOf(Part part, ReachedPart reached, IReadOnlySet<PartId> isFailed)
    {
        if (isFailed.Contains(part.Id))
            return Situation.Failed;
        return reached.Grade switch
        {
            Grade.Exposed => Situation.Exposed,
            Grade.Guarded when part.IsCritical || part.Clearance is { } clearance && reached.Reach >= clearance => Situation.Exposed,
            Grade.Guarded => Situation.Guarded,
            _ => null,
        };
    }

    private static Rule? DecisiveRule(List<TreatmentChoice> choices) =>
        // Where one debris asks for a new part, that rule is the reason a person wants to read.
        (choices.FirstOrDefault(choice => choice.Treatments.Contains(TreatmentKind.Replace)) ?? choices.FirstOrDefault())?.Rule;
}
