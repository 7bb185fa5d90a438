using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Treatment;

/// <summary>What a part's treatment is asked for.</summary>
public enum Situation
{
    /// <summary>The debris can get here at full size.</summary>
    Exposed,

    /// <summary>It can get here only past a barrier.</summary>
    Guarded,

    /// <summary>It is the failed part itself.</summary>
    Failed,
}

/// <summary>The treatments of a part for one debris, and where they come from.</summary>
/// <param name="Treatments">At least one; in the order of <see cref="TreatmentKind"/>, each once.</param>
/// <param name="Rule">The rule that gave them, or <c>null</c> where no rule fits and the fallback holds.</param>
public sealed record TreatmentChoice(ImmutableArray<TreatmentKind> Treatments, Rule? Rule);

/// <summary>
/// Finds the rule of a standard for a part: the most specific that fits and says something for the situation — part with debris, part, kind with debris,
/// kind, debris — else the fallback (exposed: clean and inspect; guarded: inspect; failed: replace).
/// </summary>
public sealed class RuleBook
{
    private static readonly ImmutableArray<TreatmentKind> FallbackExposed = [TreatmentKind.Inspect, TreatmentKind.Clean];
    private static readonly ImmutableArray<TreatmentKind> FallbackGuarded = [TreatmentKind.Inspect];
    private static readonly ImmutableArray<TreatmentKind> FallbackFailed = [TreatmentKind.Replace];

    private readonly Dictionary<RuleFor, Rule> ruleFor = [];

    /// <summary>The rules of this standard, its layers already joined. Where two rules are for the same, the first holds; the reader refuses such a standard.</summary>
    public RuleBook(ShopStandard standard)
    {
        ArgumentNullException.ThrowIfNull(standard);
        foreach (Rule rule in standard.Rules)
            ruleFor.TryAdd(rule.For, rule);
    }

    /// <summary>The treatment of this part for this debris.</summary>
    public TreatmentChoice Choose(Part part, Debris debris, Situation situation)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(debris);
        return Choose(RuleFor.MostSpecificFirst(part, debris), situation);
    }

    /// <summary>The treatment of a failed part that shed nothing and that no debris comes to: by the rules that name no debris.</summary>
    public TreatmentChoice ChooseForFailed(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Choose(RuleFor.WhateverTheDebris(part), Situation.Failed);
    }

    private TreatmentChoice Choose(IEnumerable<RuleFor> selectors, Situation situation)
    {
        foreach (RuleFor selector in selectors)
        {
            if (ruleFor.TryGetValue(selector, out Rule? rule) && SaidBy(rule, situation) is { IsEmpty: false } said)
                return new TreatmentChoice(InOrder(said), rule);
        }

        return new TreatmentChoice(Fallback(situation), Rule: null);
    }

    /// <summary>Treatments for several debris in one: each once, in order; <c>replace</c> absorbs flush and clean.</summary>
    public static ImmutableArray<TreatmentKind> Join(IEnumerable<TreatmentKind> treatments)
    {
        ArgumentNullException.ThrowIfNull(treatments);
        ImmutableArray<TreatmentKind> all = InOrder(treatments);
        return all.Contains(TreatmentKind.Replace) ? [.. all.Where(one => one is not (TreatmentKind.Flush or TreatmentKind.Clean))] : all;
    }

    private static ImmutableArray<TreatmentKind> InOrder(IEnumerable<TreatmentKind> treatments) => [.. treatments.Distinct().Order()];

    private static ImmutableArray<TreatmentKind> Fallback(Situation situation) => situation switch
    {
        Situation.Exposed => FallbackExposed,
        Situation.Guarded => FallbackGuarded,
        _ => FallbackFailed,
    };

    private static ImmutableArray<TreatmentKind>? SaidBy(Rule rule, Situation situation) => situation switch
    {
        Situation.Exposed => rule.Exposed,
        Situation.Guarded => rule.Guarded,
        _ => rule.Failed,
    };
}
