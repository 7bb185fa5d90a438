using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Looks;

/// <summary>
/// Under which condition each part needs which treatment.
/// <para>
/// A treatment that several situations or debris ask for is done when any of them does; a condition that cannot be written as looks of which any, and looks of
/// which none, found debris is written wider. A renewed part is neither flushed nor cleaned: these are struck where it is renewed.
/// </para>
/// </summary>
internal sealed class PartConditions
{
    private readonly FixedLooks looks;
    private readonly Reckoning reckoning;
    private readonly RuleBook rules;
    private readonly HashSet<PartId> failed;

    private PartConditions(FixedLooks looks, Reckoning reckoning)
    {
        this.looks = looks;
        this.reckoning = reckoning;
        rules = new RuleBook(looks.Question.Standard);
        failed = [.. looks.Question.Failed];
    }

    /// <summary>Every part that debris reaches or could have reached, and every failed part, in the order of the family.</summary>
    public static ImmutableArray<PartLooks> Of(FixedLooks looks, Reckoning reckoning)
    {
        var conditions = new PartConditions(looks, reckoning);
        return [.. Enumerable.Range(0, looks.Family.Parts.Length).Where(vertex => looks.Ways.Any(ways => ways.IsReached[vertex]) || conditions.HasFailed(vertex)).Select(conditions.At)];
    }

    private bool HasFailed(int vertex) => failed.Contains(looks.Family.Parts[vertex].Id);

    private PartLooks At(int vertex)
    {
        Part part = looks.Family.Parts[vertex];
        Span<(int OnlyIf, int Unless)?> of = new (int, int)?[Enum.GetValues<TreatmentKind>().Length];
        var asks = ImmutableArray.CreateBuilder<GradeAsk>();
        for (int debris = 0; debris < looks.Ways.Length; debris++)
        {
            foreach ((Situation situation, int onlyIf, int unless) in Situations(debris, vertex))
            {
                TreatmentChoice choice = rules.Choose(part, looks.Ways[debris].Debris, situation);
                asks.Add(new GradeAsk(looks.Ways[debris].Debris, situation, choice, LookMask.ToCondition(onlyIf, unless)));
                foreach (TreatmentKind treatment in choice.Treatments)
                    of[(int)treatment] = of[(int)treatment] is { } known ? (LookMask.Or(known.OnlyIf, onlyIf), known.Unless & unless) : (onlyIf, unless);
            }
        }

        // A failed part that no debris is at is made good all the same; it asks for nothing on account of a debris.
        TreatmentChoice? madeGood = asks.Count == 0 && HasFailed(vertex) ? rules.ChooseForFailed(part) : null;
        foreach (TreatmentKind treatment in madeGood?.Treatments ?? [])
            of[(int)treatment] = (LookMask.Always, 0);

        if (of[(int)TreatmentKind.Replace] is { Unless: 0 } renewed)
        {
            of[(int)TreatmentKind.Flush] = Except(of[(int)TreatmentKind.Flush], renewed.OnlyIf);
            of[(int)TreatmentKind.Clean] = Except(of[(int)TreatmentKind.Clean], renewed.OnlyIf);
        }

        var treatments = ImmutableArray.CreateBuilder<ConditionalTreatment>();
        foreach (TreatmentKind treatment in Enum.GetValues<TreatmentKind>())
        {
            if (of[(int)treatment] is { } when)
                treatments.Add(new ConditionalTreatment(treatment, LookMask.ToCondition(when.OnlyIf, when.Unless)));
        }

        return new PartLooks(part, treatments.ToImmutable(), asks.ToImmutable()) { MadeGoodBy = madeGood?.Rule };
    }

    private IEnumerable<(Situation Situation, int OnlyIf, int Unless)> Situations(int debris, int vertex)
    {
        if (!looks.Ways[debris].IsReached[vertex])
            yield break;
        if (HasFailed(vertex))
        {
            yield return (Situation.Failed, LookMask.Always, 0);
            yield break;
        }

        if (reckoning.Exposed(debris, vertex) is not 0 and var exposed)
            yield return (Situation.Exposed, exposed, 0);
        if (reckoning.Guarded(debris, vertex) is (not 0, _) and var guarded)
            yield return (Situation.Guarded, guarded.OnlyIf, guarded.Unless);
    }

    /// <summary>A condition struck where any of these looks found debris; <c>null</c> where nothing is left of it.</summary>
    private static (int OnlyIf, int Unless)? Except((int OnlyIf, int Unless)? condition, int struckIf)
    {
        if (condition is not { } when || struckIf == LookMask.Always)
            return null;
        int onlyIf = when.OnlyIf & ~struckIf;
        return onlyIf == 0 ? null : (onlyIf, when.Unless | struckIf);
    }
}
