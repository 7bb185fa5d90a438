using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Treatment;

/// <summary>Whether a clean finding may clear what lies beyond it.</summary>
public enum CleanFindings
{
    /// <summary>It may.</summary>
    Accept,

    /// <summary>It never may.</summary>
    Never,
}

/// <summary>What a rule is for. Each that is not <c>null</c> must fit; at least one is given.</summary>
/// <param name="Part">The id of one part.</param>
/// <param name="Kind">The name of a kind.</param>
/// <param name="Debris">The name of a sort of debris.</param>
public sealed record RuleFor(string? Part, string? Kind, string? Debris)
{
    /// <summary>Everything that a rule for this part and debris could be for, the most specific first: part, kind with debris, kind, debris.</summary>
    internal static IEnumerable<RuleFor> MostSpecificFirst(Part part, Debris debris)
    {
        (string id, string kind) = (part.Id.Value, part.Kind.Name);
        yield return new RuleFor(id, kind, debris.Name);
        yield return new RuleFor(id, null, debris.Name);
        yield return new RuleFor(id, kind, null);
        yield return new RuleFor(id, null, null);
        yield return new RuleFor(null, kind, debris.Name);
        yield return new RuleFor(null, kind, null);
        yield return new RuleFor(null, null, debris.Name);
    }

    /// <summary>Everything that a rule for this part could be for that names no debris, the most specific first.</summary>
    internal static IEnumerable<RuleFor> WhateverTheDebris(Part part)
    {
        (string id, string kind) = (part.Id.Value, part.Kind.Name);
        yield return new RuleFor(id, kind, null);
        yield return new RuleFor(id, null, null);
        yield return new RuleFor(null, kind, null);
    }
}

/// <summary>Which treatments a part gets. A grade for which the rule says nothing is left to the next rule that fits.</summary>
/// <param name="For">What it is for.</param>
/// <param name="Exposed">Treatments of an exposed part, or <c>null</c> for nothing said.</param>
/// <param name="Guarded">Treatments of a guarded part, or <c>null</c> for nothing said.</param>
/// <param name="Failed">Treatments of the failed part itself, or <c>null</c> for nothing said.</param>
/// <param name="Because">The reason, in words; empty for not said.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Rule(
    RuleFor For,
    ImmutableArray<TreatmentKind>? Exposed,
    ImmutableArray<TreatmentKind>? Guarded,
    ImmutableArray<TreatmentKind>? Failed,
    string Because,
    SourceSpan Place);

/// <summary>How often debris that came to a part goes further.</summary>
/// <param name="For">What it is for.</param>
/// <param name="Share">Above 0 and at most 1.</param>
/// <param name="Place">Where it is written.</param>
public sealed record PassesOn(RuleFor For, double Share, SourceSpan Place);

/// <summary>
/// A shop's own rules: which treatment a kind of part gets for which debris, times, cautions, texts, and the kinds and debris it knows.
/// Immutable; everything in file order.
/// </summary>
public sealed class ShopStandard
{
    /// <summary>Kebab-case id.</summary>
    public required string Id { get; init; }

    /// <summary>Its title, for people; empty for not said.</summary>
    public string Title { get; init; } = "";

    /// <summary>SHA-256 of what was read, in lower-case hexadecimal; of a layered standard that of the list of its layers' hashes.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>Whether clean findings clear; <c>null</c> for not said (then accepted).</summary>
    public CleanFindings? CleanFindings { get; init; }

    /// <summary>Kinds that it describes.</summary>
    public ImmutableArray<Kind> Kinds { get; init; } = [];

    /// <summary>Sorts of debris that it describes, beside metal, rubber and water.</summary>
    public ImmutableArray<Debris> Debris { get; init; } = [];

    /// <summary>Its rules.</summary>
    public ImmutableArray<Rule> Rules { get; init; } = [];

    /// <summary>How often debris passes on.</summary>
    public ImmutableArray<PassesOn> PassesOn { get; init; } = [];

    /// <summary>Minutes by kind, which take the place of the kind's own.</summary>
    public ImmutableArray<(string Kind, TaskMinutes Minutes)> Times { get; init; } = [];

    /// <summary>Its cautions.</summary>
    public ImmutableArray<CautionRule> Cautions { get; init; } = [];

    /// <summary>How it words steps.</summary>
    public ImmutableArray<StepWording> Texts { get; init; } = [];

    /// <summary>Ways of working that many steps share.</summary>
    public ImmutableArray<Method> Methods { get; init; } = [];

    /// <summary>The steps before and after the work on the parts, and the sentences that stand with a step.</summary>
    public ImmutableArray<FrameStep> Frame { get; init; } = [];

    /// <summary>The highest pressure of gas that a test may use; <c>null</c> for not said (then 0.7 bar).</summary>
    public Families.Quantities.Pressure? GasTestAtMost { get; init; }

    /// <summary>The length of a working day; <c>null</c> for not said (then 8 h).</summary>
    public TimeSpan? WorkingDay { get; init; }

    /// <summary>Running hours after which filters are changed and places looked at again; <c>null</c> for not said (then 5 h).</summary>
    public TimeSpan? FirstRunningHours { get; init; }
}
