using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>What is done with one part, apart from the order.</summary>
/// <param name="Part">The part.</param>
/// <param name="Treatments">Its treatments; empty for a part that is only in the way.</param>
/// <param name="ComesOff">Whether it is taken off, ever; else it is treated where it stands.</param>
/// <param name="GoesOut">Whether its treatments are done at an outside workshop.</param>
internal sealed record WorkItem(Part Part, ImmutableArray<TreatmentKind> Treatments, bool ComesOff, bool GoesOut)
{
    /// <summary>When each treatment is done, by <see cref="TreatmentKind"/>; what is not said, always.</summary>
    public ImmutableArray<LookCondition?> When { get; init; } = [];

    /// <summary>When it comes off, where it does: for a reason of its own whenever more is done at it than can be done where it stands.</summary>
    public LookCondition Off { get; init; } = LookCondition.Always;

    /// <summary>The number of the deciding look that is made here, or <c>null</c>.</summary>
    public int? DecidingLook { get; init; }

    public bool IsOnlyInTheWay => Treatments.IsEmpty;

    /// <summary>Whether it comes new inside of a part that is renewed whole, so that nothing is done with it by itself.</summary>
    public bool ComesInside { get; init; }

    /// <summary>Whether something moves debris out of it, rather than only looking or measuring.</summary>
    public bool IsCleaned => Treatments.Any(one => one is TreatmentKind.Flush or TreatmentKind.Clean or TreatmentKind.Replace);

    /// <summary>When something moves debris out of it; only for a part where something does.</summary>
    public LookCondition Cleaned => Any(one => one is TreatmentKind.Flush or TreatmentKind.Clean or TreatmentKind.Replace)!;

    /// <summary>When it is treated at all; <c>null</c> for a part that is only in the way.</summary>
    public LookCondition? Treated => Any(_ => true);

    /// <summary>When more is done than a look; <c>null</c> where that never is.</summary>
    public LookCondition? Worked => Any(one => one != TreatmentKind.Inspect);

    /// <summary>
    /// Whether the look for debris is made where the part stands, though it may come off: it does not come off whenever the look is made, or that is only
    /// known by the look.
    /// </summary>
    public bool IsLookedAtInPlace => Has(TreatmentKind.Inspect) && !Part.LookTakesOff && (!ComesOff || (DecidingLook is null ? !Off.Covers(WhenDone(TreatmentKind.Inspect)) : !Off.IsAlways));

    /// <summary>What must be off for this work: for a part that stays and is only looked at, what is in the way of the look.</summary>
    public ImmutableArray<PartId> Access => !ComesOff && Treatments is [TreatmentKind.Inspect] && Part.Inspect?.Access is { } forTheLook ? forTheLook : Part.Access;

    /// <summary>What must be off for a look at it where it stands; empty where it is not looked at, or is looked at as it comes off.</summary>
    public ImmutableArray<PartId> LookAccess => Has(TreatmentKind.Inspect) ? Part.Inspect?.Access ?? Part.Access : [];

    /// <summary>Whether it is only tried where it stands, so that the test stands in for a look.</summary>
    public bool IsOnlyTriedInPlace => !ComesOff && Treatments is [TreatmentKind.Test];

    /// <summary>What must be off for any of this work, and when; for a part that stays, for a look at it too.</summary>
    public IEnumerable<(PartId Part, LookCondition When)> AllAccess
    {
        get
        {
            if (ComesInside)
                yield break;
            if (ComesOff || (Worked ?? Treated) is not null)
            {
                foreach (PartId part in Access)
                    yield return (part, ComesOff ? Off : Worked ?? Treated!);
            }

            if (ComesOff && !IsLookedAtInPlace)
                yield break;
            foreach (PartId part in LookAccess)
                yield return (part, WhenDone(TreatmentKind.Inspect));
        }
    }

    public bool Has(TreatmentKind treatment) => Treatments.Contains(treatment);

    /// <summary>When a treatment that it gets is done.</summary>
    public LookCondition WhenDone(TreatmentKind treatment) => (When.IsDefaultOrEmpty ? null : When[(int)treatment]) ?? LookCondition.Always;

    /// <summary>The same, and renewed then.</summary>
    public WorkItem Renewed(LookCondition when)
    {
        LookCondition?[] conditions = When.IsDefaultOrEmpty ? [.. Enum.GetValues<TreatmentKind>().Select(one => Has(one) ? LookCondition.Always : null)] : [.. When];
        int replace = (int)TreatmentKind.Replace;
        conditions[replace] = conditions[replace]?.Or(when) ?? when;
        return this with { Treatments = RuleBook.Join(Treatments.Append(TreatmentKind.Replace)), When = [.. conditions] };
    }

    /// <summary>When any of these treatments is done; <c>null</c> where it gets none of them.</summary>
    public LookCondition? Any(Func<TreatmentKind, bool> isMeant) =>
        Treatments.Where(isMeant).Select(WhenDone).Aggregate((LookCondition?)null, (any, one) => any?.Or(one) ?? one);
}
