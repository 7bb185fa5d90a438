using System.Collections.Immutable;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Plans;

/// <summary>Makes the request for a plan where nobody has named a failed part: the suspects count as failed.</summary>
public static class FailedFromFindings
{
    /// <summary>
    /// The request with every suspect of the debris that were found, each as having shed what it is suspected of, that <see cref="SuspectAnswer.CountedAsFailed"/> names; <c>null</c> where no find is
    /// accounted for by any suspect.
    /// </summary>
    /// <param name="request">Without failed parts. A find behind a barrier needs nothing more: a part where debris was found is a source of its own in the spread, and holds nothing.</param>
    /// <param name="share">The least share that counts, above 0 and at most 1.</param>
    public static PlanRequest? Take(PlanRequest request, double share)
    {
        ArgumentNullException.ThrowIfNull(request);
        var failed = new Dictionary<PartId, List<Debris>>();
        var suspects = ImmutableArray.CreateBuilder<PlanSuspect>();
        var notCounted = ImmutableArray.CreateBuilder<PlanNotCounted>();
        foreach (Debris debris in request.Debris.Distinct().Where(debris => request.Findings.Any(finding => finding.Found && finding.Debris == debris)))
        {
            SuspectAnswer answer = Suspecting.Of(new SuspectQuestion(request.Family, debris, request.Standard) { Findings = request.Findings });
            if (!answer.ExplainsAnything)
                continue;
            HashSet<PartId> counted = [.. answer.CountedAsFailed(share)];
            foreach (PartId part in counted)
            {
                if (!failed.TryGetValue(part, out List<Debris>? shed))
                    failed[part] = shed = [];
                shed.Add(debris);
            }

            suspects.AddRange(answer.Suspects.Where(suspect => counted.Contains(suspect.Part)).Select(suspect => new PlanSuspect(suspect.Part.Value, debris.Name, Rounded(suspect.Share))));
            Suspect[] rest = [.. answer.Suspects.Where(suspect => !counted.Contains(suspect.Part))];
            if (rest.Length > 0)
                notCounted.Add(new PlanNotCounted(debris.Name, rest.Length, Rounded(rest.Sum(suspect => suspect.Share))));
        }

        return failed.Count == 0
            ? null
            : request with { Failures = [.. failed.Keys.OrderBy(request.Family.IndexOf).Select(part => new PartFailure(part) { Debris = [.. failed[part]] })], FromFindings = new PlanFromFindings(share, suspects.ToImmutable(), notCounted.ToImmutable()) };
    }

    private static double Rounded(double share) => Math.Round(share, 9);
}
