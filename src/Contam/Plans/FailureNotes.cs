using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Procedure;
using Contam.Treatment;

namespace Contam.Plans;

/// <summary>
/// Where a person's word about a failure is taken although the family says otherwise: debris that the family does not say the part sheds, a size below the
/// family's figure with what it spares, and failures of which none shed anything.
/// </summary>
public static class FailureNotes
{
    /// <summary>The sentences, failure by failure in the order of the family. Cost: a spread of each debris for every size below the family's.</summary>
    public static ImmutableArray<string> Of(PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        ImmutableArray<PartFailure> failures = request.Failures.InOrderOf(request.Family);
        ImmutableArray<Debris> asked = [.. request.Debris.Distinct()];
        return
        [
            .. failures.SelectMany(failure => Unsaid(request.Family[failure.Part], failure, asked)),
            .. failures.SelectMany(failure => Smaller(request, failures, failure, asked)),
            .. Silent(request, failures),
        ];
    }

    private static IEnumerable<string> Unsaid(Part part, PartFailure failure, ImmutableArray<Debris> asked)
    {
        Debris[] unsaid = [.. asked.Where(debris => failure.Sheds(debris) && part.ShedOf(debris) is null)];
        if (unsaid.Length > 0)
            yield return $"The family does not say that {Named(part)} sheds {Joined(unsaid)}; it is taken to have shed {(unsaid.Length == 1 ? "it" : "them")}{(unsaid.Any(debris => debris.HasSize) && failure.UpTo is null ? ", of any size" : "")}.";
    }

    private static IEnumerable<string> Smaller(PlanRequest request, ImmutableArray<PartFailure> failures, PartFailure failure, ImmutableArray<Debris> asked)
    {
        Part part = request.Family[failure.Part];
        if (failure.UpTo is not { } size)
            yield break;
        Debris[] smaller = [.. asked.Where(debris => debris.HasSize && failure.Sheds(debris) && part.ShedOf(debris) is { } shed && size < shed.UpTo)];
        if (smaller.Length == 0)
            yield break;
        string[] spared = [.. Sentences.FoldedNames(Spared(request, failures, failure))];
        string spares = spared.Length == 0 ? "That spares nothing."
            : string.Create(CultureInfo.InvariantCulture, $"On the strength of it less is done at: {string.Join(", ", spared)}. If larger pieces may be missing, leave the size out.");
        yield return $"{Capital(Named(part))} is taken to have shed {Joined(smaller)} of up to {Size(size)}, as was seen; the family says {string.Join(" and ", smaller.Select(debris => part.ShedOf(debris)!.UpTo).Distinct().Select(UpTo))}. {spares}";
    }

    /// <summary>Parts for which less is done than if the family's figure held, in the order of the family.</summary>
    private static IEnumerable<Part> Spared(PlanRequest request, ImmutableArray<PartFailure> failures, PartFailure failure)
    {
        var now = Treatments(request).ToDictionary(one => one.Part.Id);
        foreach (PartTreatment by in Treatments(request with { Failures = failures.Replace(failure, failure with { UpTo = null }) }))
        {
            if (!now.TryGetValue(by.Part.Id, out PartTreatment? kept) || by.Treatments.Except(kept.Treatments).Any())
                yield return by.Part;
        }
    }

    private static ImmutableArray<PartTreatment> Treatments(PlanRequest request) =>
        Treating.Decide(request.Family, Planner.SpreadsOf(request), request.Failed, new RuleBook(request.Standard));

    private static IEnumerable<string> Silent(PlanRequest request, ImmutableArray<PartFailure> failures)
    {
        if (failures.Length > 0 && failures.All(failure => failure.ShedNothing) && !request.Findings.Any(finding => finding.Found && request.Debris.Contains(finding.Debris)))
            yield return "Nothing that failed shed anything and nothing was found, so that nothing is a source of debris: what failed is made good, and no part is cleaned.";
    }

    private static string Named(Part part) => $"the {Sentences.InSentence(part.Name)}";

    private static string Joined(IEnumerable<Debris> debris) => string.Join(" and ", debris.Select(one => one.Name));

    private static string UpTo(ParticleSize size) => size.IsUnlimited ? "any size" : $"up to {Size(size)}";

    private static string Size(ParticleSize size) => string.Create(CultureInfo.InvariantCulture, $"{size.Micrometres:0.##} µm");

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
