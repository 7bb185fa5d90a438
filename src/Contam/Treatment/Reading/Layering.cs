using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading.Sheets;

namespace Contam.Treatment.Reading;

/// <summary>Lays one standard over another.</summary>
public static class Layering
{
    /// <summary>
    /// What holds when a shop's standard is laid over a more general one.
    /// Kinds and debris of one name, and rules and shares that are for the same, are those of the upper; so are its title and whatever else it says once.
    /// Minutes by kind are the upper's where it says any, task by task. Of cautions and texts, all the lower's that are for the same as one of
    /// the upper's go; the rest stay, before the upper's. Methods and steps of the frame that are named the same and for the same are the upper's, each in its place. What is only in the lower keeps its place; what is only in the upper comes behind.
    /// </summary>
    /// <param name="upper">The one whose word counts.</param>
    /// <param name="lower">The one beneath.</param>
    public static ShopStandard Over(this ShopStandard upper, ShopStandard lower)
    {
        ArgumentNullException.ThrowIfNull(upper);
        ArgumentNullException.ThrowIfNull(lower);
        return new ShopStandard
        {
            Id = upper.Id,
            Title = upper.Title.Length > 0 ? upper.Title : lower.Title,
            Sha256 = SourceText.HashOf($"{upper.Sha256}\n{lower.Sha256}\n"),
            CleanFindings = upper.CleanFindings ?? lower.CleanFindings,
            Kinds = ByKey(upper.Kinds, lower.Kinds, kind => kind.Name),
            Debris = ByKey(upper.Debris, lower.Debris, debris => debris.Name),
            Rules = ByKey(upper.Rules, lower.Rules, rule => rule.For),
            PassesOn = ByKey(upper.PassesOn, lower.PassesOn, share => share.For),
            Times = TimesOver(upper.Times, lower.Times),
            Cautions = ByTarget(upper.Cautions, lower.Cautions, caution => caution.For),
            Texts = ByTarget(upper.Texts, lower.Texts, text => text.For),
            Methods = ByKey(upper.Methods, lower.Methods, method => (method.Id, method.For)),
            Frame = ByKey(upper.Frame, lower.Frame, step => (step.Section, step.Step, step.For)),
            GasTestAtMost = upper.GasTestAtMost ?? lower.GasTestAtMost,
            WorkingDay = upper.WorkingDay ?? lower.WorkingDay,
            FirstRunningHours = upper.FirstRunningHours ?? lower.FirstRunningHours,
        };
    }

    /// <summary>The kinds and debris that family files may name under a standard: metal, rubber and water, then what it describes.</summary>
    public static Catalogue CatalogueOf(this ShopStandard standard)
    {
        ArgumentNullException.ThrowIfNull(standard);
        return new Catalogue(standard.Kinds, [Debris.Metal, Debris.Rubber, Debris.Water, .. standard.Debris])
        {
            Methods = [.. standard.Methods.Select(method => method.Id).Distinct(StringComparer.Ordinal)],
        };
    }

    private static ImmutableArray<T> ByKey<T, TKey>(ImmutableArray<T> upper, ImmutableArray<T> lower, Func<T, TKey> keyOf)
        where TKey : notnull
    {
        var upperOf = upper.ToDictionary(keyOf);
        var lowerKeys = lower.Select(keyOf).ToHashSet();
        return
        [
            .. lower.Select(entry => upperOf.GetValueOrDefault(keyOf(entry), entry)),
            .. upper.Where(entry => !lowerKeys.Contains(keyOf(entry))),
        ];
    }

    private static ImmutableArray<T> ByTarget<T>(ImmutableArray<T> upper, ImmutableArray<T> lower, Func<T, BearsOn> targetOf)
    {
        var replaced = upper.Select(targetOf).ToHashSet();
        return [.. lower.Where(entry => !replaced.Contains(targetOf(entry))), .. upper];
    }

    private static ImmutableArray<(string Kind, TaskMinutes Minutes)> TimesOver(
        ImmutableArray<(string Kind, TaskMinutes Minutes)> upper, ImmutableArray<(string Kind, TaskMinutes Minutes)> lower)
    {
        var lowerOf = lower.ToDictionary(times => times.Kind, times => times.Minutes, StringComparer.Ordinal);
        return ByKey([.. upper.Select(times => (times.Kind, times.Minutes.Over(lowerOf.GetValueOrDefault(times.Kind, TaskMinutes.None))))], lower, times => times.Kind);
    }
}
