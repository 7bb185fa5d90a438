using System.Collections.Immutable;
using Contam.Families;
using Contam.Procedure;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Plans;

/// <summary>The parts of a plan, and what was seen at them.</summary>
internal static class PlanParts
{
    public static ImmutableArray<PlanPart> Of(ImmutableArray<DebrisSpread> spreads, ProcedureDraft draft, Bearing bearing, Branching? branching) =>
        [.. draft.Treatments.Select(treated => One(treated, spreads, bearing, draft, branching))];

    private static PlanPart One(PartTreatment treated, ImmutableArray<DebrisSpread> spreads, Bearing bearing, ProcedureDraft draft, Branching? branching)
    {
        Part part = treated.Part;
        DebrisSpread? first = spreads.FirstOrDefault(spread => spread.Find(part.Id) is not null);
        return new PlanPart
        {
            Id = part.Id.Value,
            Name = part.Name,
            Kind = part.Kind.Name,
            Circuits = [.. bearing.CircuitsOf(part).Select(circuit => circuit.Name)],
            Exposure = [.. spreads.Where(spread => spread.Find(part.Id) is not null).Select(spread => Exposure(spread, spread.Find(part.Id)!))],
            Treatment = treated.Treatments,
            Rule = treated.Treatments.IsEmpty ? null : RuleOf(treated.Rule, treated.Treatments),
            Path = first is null ? [] : [.. first.PathTo(part.Id).Select(id => id.Value)],
            OnlyIf = treated.Treatments.IsEmpty || !draft.TreatedWhen.TryGetValue(part.Id, out LookCondition? when) ? [] : Branching.Letters(when.OnlyIf),
            ClearedBy = part.ClearedBy switch
            {
                Families.ClearedBy.Nothing => "nothing",
                Families.ClearedBy.TwoLooks => "two-looks",
                _ => "one-look",
            },
            ClearanceUm = part.Clearance is { IsUnlimited: false } clearance ? clearance.Micrometres : null,
            Asks = [.. branching?.AsksOf(part).Select(ask => new PlanAsk(ask.Debris.Name, ask.Situation == Situation.Guarded ? Grade.Guarded : Grade.Exposed, ask.Choice.Treatments, RuleOf(ask.Choice.Rule, ask.Choice.Treatments))) ?? []],
        };
    }

    private static PlanExposure Exposure(DebrisSpread spread, ReachedPart reached) =>
        new(spread.Debris.Name, reached.Grade, Micrometres(reached.Reach), reached.From.Value, reached.Via?.Value);

    private static PlanRule RuleOf(Rule? rule, ImmutableArray<TreatmentKind> treatments)
    {
        if (rule is not null)
            return new PlanRule(rule.Place.File, rule.Place.Line, rule.Because);
        return new PlanRule("fallback", 0, treatments.Contains(TreatmentKind.Replace)
            ? "a failed part is replaced unless a rule says otherwise"
            : "no rule of the standard fits, so it is treated to be safe");
    }

    private static double? Micrometres(ParticleSize size) => size.IsUnlimited ? null : size.Micrometres;

    /// <summary>The findings, in the order given. One of a debris that was not asked about clears nothing here.</summary>
    public static ImmutableArray<PlanFinding> Findings(ImmutableArray<Finding> findings, ImmutableArray<DebrisSpread> spreads)
    {
        var judged = spreads.SelectMany(spread => spread.Findings).DistinctBy(one => one.Finding).ToDictionary(one => one.Finding);
        return
        [
            .. findings.Select(finding => new PlanFinding
            {
                Part = finding.Part.Value,
                Debris = finding.Debris.Name,
                Found = finding.Found,
                SizeUm = finding.Size is { IsUnlimited: false } size ? size.Micrometres : null,
                Accepted = judged.TryGetValue(finding, out JudgedFinding? one) && one.IsAccepted,
                NotAcceptedBecause = one is not null || finding.Found ? one?.NotAcceptedBecause : $"this plan is not about {finding.Debris.Name}",
                Void = one?.IsVoid == true,
                ContradictedBy = one?.ContradictedBy?.Value,
                Source = one?.Origin switch
                {
                    FindOrigin.OwnSource => PlanFinding.OwnSource,
                    FindOrigin.FurtherSource => PlanFinding.FurtherSource,
                    _ => null,
                },
                By = finding.By,
                When = finding.When,
            }),
        ];
    }

    /// <summary>
    /// What closed conditional joints would add, all debris together. A part that one debris reaches anyway is not added by another.
    /// </summary>
    public static ImmutableArray<PlanConditional> Conditional(Family family, ImmutableArray<DebrisSpread> spreads)
    {
        var entries = spreads.SelectMany(spread => spread.Conditional)
            .GroupBy(one => one.IfFailed.Value + " " + string.Join(' ', one.AlsoFailed.Select(id => id.Value)), StringComparer.Ordinal);
        return
        [
            .. entries.Select(group => new PlanConditional(
                group.First().IfFailed.Value,
                [.. group.SelectMany(one => one.Parts).Distinct().OrderBy(family.IndexOf).Select(id => id.Value)],
                [.. group.First().AlsoFailed.Select(id => id.Value)])),
        ];
    }

    /// <summary>Both readings of the clean findings, for each debris for which some are accepted; <c>null</c> where there is none.</summary>
    public static ImmutableArray<PlanEvidence>? Evidence(ImmutableArray<DebrisSpread> spreads)
    {
        var evidence = ImmutableArray.CreateBuilder<PlanEvidence>();
        foreach (DebrisSpread spread in spreads)
        {
            if (spread.CountingFindings is not { } counting || spread.IgnoringFindings is not { } ignoring)
                continue;
            evidence.Add(new PlanEvidence(spread.Debris.Name, CleanFindings: true, Reaches(counting)));
            evidence.Add(new PlanEvidence(spread.Debris.Name, CleanFindings: false, Reaches(ignoring)));
        }

        return evidence.Count == 0 ? null : evidence.ToImmutable();
    }

    private static ImmutableArray<PlanReach> Reaches(ImmutableArray<ReachedPart> parts) =>
        [.. parts.Select(reached => new PlanReach(reached.Part.Value, Micrometres(reached.Reach), reached.From.Value, reached.Via?.Value))];
}
