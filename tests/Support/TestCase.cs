using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Spread;
using Contam.Support.Notation;
using Contam.Treatment;

namespace Contam.Support;

/// <summary>
/// A system and everything that is asked of it: what failed, which debris, what was seen, by which standard.
/// Written in the notation of <see cref="CaseReader"/>, and so is its text.
/// </summary>
/// <param name="Family">The system.</param>
/// <param name="Failed">The failed parts; may be empty where something was found.</param>
/// <param name="Asked">The debris asked about, at least one.</param>
public sealed record TestCase(Family Family, ImmutableArray<PartId> Failed, ImmutableArray<Debris> Asked)
{
    /// <summary>What some of the failed parts are said to have shed. Of the others it is not said, so that they shed all that is asked about.</summary>
    public ImmutableArray<PartFailure> Own { get; init; } = [];

    /// <summary>The failures as a question takes them: what is said of debris that is not asked about is left out.</summary>
    public ImmutableArray<PartFailure> Failures =>
    [
        .. Failed.SelectMany(part => Own.Any(own => own.Part == part)
            ? Own.Where(own => own.Part == part).Select(own => own with { Debris = own.Debris is { } said ? [.. said.Where(Asked.Contains)] : null })
            : [new PartFailure(part)]),
    ];

    /// <summary>What was seen.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The shop standard.</summary>
    public ShopStandard Standard { get; init; } = PlainStandard;

    /// <summary>How many technicians work at once.</summary>
    public int Technicians { get; init; } = 1;

    /// <summary>A standard with no rules, so that the fallback holds everywhere.</summary>
    public static ShopStandard PlainStandard { get; } = new() { Id = "plain", Sha256 = "plain", Kinds = [.. ShopFloor.Kinds] };

    /// <summary>Whether the standard lets clean findings clear; a standard that does not say does.</summary>
    public bool AcceptsCleanFindings => Standard.CleanFindings != CleanFindings.Never;

    /// <summary>The kinds and debris that this case knows.</summary>
    public Catalogue Catalogue => ShopFloor.CatalogueWith(Standard.Debris);

    /// <summary>The question of how far one debris has gone.</summary>
    public SpreadQuestion Question(Debris debris) => new(Family, Failures, debris)
    {
        Findings = Findings,
        AcceptsCleanFindings = AcceptsCleanFindings,
    };

    /// <summary>The request for a plan.</summary>
    public PlanRequest ToRequest() => new(Family, Standard, Failures, Asked) { Findings = Findings, Technicians = Technicians };

    /// <summary>Whether there is anything to ask: some debris, and a part that failed or where it was found.</summary>
    public bool IsSensible =>
        Asked.Length > 0 && (Failed.Length > 0 || Findings.Any(finding => finding.Found && Asked.Contains(finding.Debris)));

    /// <summary>The case in the notation.</summary>
    public override string ToString() => CaseWriter.Write(this);
}
