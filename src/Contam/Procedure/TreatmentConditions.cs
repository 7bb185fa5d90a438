using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Which treatments every part gets, and when: those asked for, the deciding looks, a new part for what a look uses up, and what is renewed with what.
/// <para>
/// One part of a set renewed renews the set. What is renewed whole is renewed with all that is inside of it; where one of these is treated when the whole would
/// stay, the whole is renewed then too, so that nothing inside is treated by itself. What is renewed is neither flushed nor cleaned. Conditions only grow, so
/// the turns end.
/// </para>
/// </summary>
internal sealed class TreatmentConditions
{
    private static readonly int Kinds = Enum.GetValues<TreatmentKind>().Length;

    private readonly Family family;
    private readonly LookCondition?[]?[] of;
    private readonly Queue<int> changed = new();

    private TreatmentConditions(Family family)
    {
        this.family = family;
        of = new LookCondition?[]?[family.Parts.Length];
    }

    /// <summary>For every part by its place in the family its conditions, by <see cref="TreatmentKind"/>, <c>null</c> for what it does not get; <c>null</c> for a part that gets nothing.</summary>
    public static LookCondition?[]?[] Of(ProcedureRequest request) =>
        Of(request.Family, request.Treatments, (part, kind) => request.When.GetValueOrDefault((part, kind), LookCondition.Always), request.Looks);

    /// <summary>As above, with every treatment done whatever is seen.</summary>
    public static LookCondition?[]?[] Of(Family family, ImmutableArray<PartTreatment> treatments) => Of(family, treatments, (_, _) => LookCondition.Always, []);

    private static LookCondition?[]?[] Of(Family family, ImmutableArray<PartTreatment> treatments, Func<PartId, TreatmentKind, LookCondition> when, ImmutableArray<PlannedLook> looks)
    {
        var conditions = new TreatmentConditions(family);
        foreach (PartTreatment treated in treatments)
        {
            foreach (TreatmentKind kind in treated.Treatments)
                conditions.Add(family.IndexOf(treated.Part.Id), kind, when(treated.Part.Id, kind));
        }

        foreach (PlannedLook look in looks)
        {
            foreach (Part place in look.Places)
                conditions.Add(family.IndexOf(place.Id), TreatmentKind.Inspect, look.Due);
        }

        conditions.Settle();
        foreach (LookCondition?[]? one in conditions.of)
            StrikeWhereRenewed(one);
        return conditions.of;
    }

    private void Add(int part, TreatmentKind kind, LookCondition when)
    {
        LookCondition?[] own = of[part] ??= new LookCondition?[Kinds];
        LookCondition grown = own[(int)kind]?.Or(when) ?? when;
        if (grown.Equals(own[(int)kind]))
            return;
        own[(int)kind] = grown;
        changed.Enqueue(part);
    }

    private void Settle()
    {
        ILookup<PartId, int> inside = Enumerable.Range(0, of.Length).Where(index => family.Parts[index].Assembly is not null).ToLookup(index => family.Parts[index].Assembly!.Value);
        while (changed.TryDequeue(out int index))
        {
            Part part = family.Parts[index];
            if (part.LookUsesUp && of[index]![(int)TreatmentKind.Inspect] is { } look)
                Add(index, TreatmentKind.Replace, look);
            if (part.Assembly is { } whole && of[family.IndexOf(whole)]?[(int)TreatmentKind.Replace] is not null)
                Add(family.IndexOf(whole), TreatmentKind.Replace, Any(of[index]!)!);
            if (of[index]![(int)TreatmentKind.Replace] is not { } renewed)
                continue;
            foreach (PartId other in part.Together)
                Add(family.IndexOf(other), TreatmentKind.Replace, renewed);
            foreach (int other in inside[part.Id])
            {
                if (of[other] is { } own && Any(own) is { } when)
                    Add(index, TreatmentKind.Replace, when);
                Add(other, TreatmentKind.Replace, of[index]![(int)TreatmentKind.Replace]!);
            }
        }
    }

    private static void StrikeWhereRenewed(LookCondition?[]? own)
    {
        if (own?[(int)TreatmentKind.Replace] is not { Unless.IsEmpty: true } renewed)
            return;
        foreach (TreatmentKind milder in new[] { TreatmentKind.Flush, TreatmentKind.Clean })
        {
            if (own[(int)milder] is not { } when)
                continue;
            ImmutableArray<int> left = [.. when.OnlyIf.Except(renewed.OnlyIf)];
            own[(int)milder] = renewed.OnlyIf.IsEmpty || (left.IsEmpty && !when.OnlyIf.IsEmpty) ? null : new LookCondition { OnlyIf = left, Unless = when.Unless.AddRange(renewed.OnlyIf) };
        }
    }

    /// <summary>When any of these is done; <c>null</c> for none.</summary>
    private static LookCondition? Any(LookCondition?[] own) => own.OfType<LookCondition>().Aggregate((LookCondition?)null, (any, one) => any?.Or(one) ?? one);
}
