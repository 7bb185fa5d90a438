using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Spread;

/// <summary>A finding with the answer to whether it may clear anything.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="IsAccepted">Whether it is a clean finding that counts.</param>
/// <param name="NotAcceptedBecause">Why a clean finding does not count; <c>null</c> where it does, and for a find.</param>
public sealed record JudgedFinding(Finding Finding, bool IsAccepted, string? NotAcceptedBecause)
{
    /// <summary>For a clean finding that is void: where the find was made that disproves it. Else <c>null</c>.</summary>
    public PartId? ContradictedBy { get; init; }

    /// <summary>Whether it is a clean finding that a find disproves; see <see cref="Contradictions"/>.</summary>
    public bool IsVoid => ContradictedBy is not null;

    /// <summary>What a find says of where its debris comes from.</summary>
    public FindOrigin Origin { get; init; }
}

/// <summary>
/// Which clean findings count. One is accepted when the shop's standard accepts such findings, the look at that part shows debris well, the part is
/// neither failed nor a place where this debris was found, and no find elsewhere disproves it.
/// </summary>
public static class CleanFindingJudge
{
    /// <summary>Every finding of the question's debris, judged, in the order given.</summary>
    /// <param name="question">The question.</param>
    /// <param name="contradictions">What the finds disprove; <c>null</c> for nothing, or where that is left out.</param>
    internal static ImmutableArray<JudgedFinding> Judge(SpreadQuestion question, Contradictions? contradictions)
    {
        ArgumentNullException.ThrowIfNull(question);
        ILookup<Finding, FindOrigin>? originOf = contradictions?.All.ToLookup(one => one.Find, one => one.Origin);
        var failed = question.Failed.ToHashSet();
        var found = question.Findings.Where(finding => finding.Found && finding.Debris == question.Debris).Select(finding => finding.Part).ToHashSet();
        return [.. question.Findings.Where(finding => finding.Debris == question.Debris).Select(JudgeOne)];

        JudgedFinding JudgeOne(Finding finding)
        {
            if (finding.Found)
            {
                FindOrigin origin = originOf is null ? FindOrigin.Failure : originOf[finding].FirstOrDefault();
                return new JudgedFinding(finding, IsAccepted: false, NotAcceptedBecause: null) { Origin = origin };
            }

            PartId? disproof = contradictions?.DisproofOf(question.Family.IndexOf(finding.Part))?.Part;
            string? because = WhyNot(question.Family[finding.Part]) ?? (disproof is { } place
                ? $"{question.Debris.Name} was found at {place}, and cannot have come there from a failed part if every look on its way was right"
                : null);
            return new JudgedFinding(finding, because is null, because) { ContradictedBy = disproof };
        }

        string? WhyNot(Part part)
        {
            if (failed.Contains(part.Id))
                return "it is the failed part";
            if (found.Contains(part.Id))
                return $"{question.Debris.Name} was found there";
            if (!question.AcceptsCleanFindings)
                return "the shop's standard never lets a clean finding clear";
            if (part.Inspect is null)
                return "the family names no way to look there";
            if (part.Inspect.Shows != Shows.Good)
                return $"a look there shows debris {(part.Inspect.Shows == Shows.Fair ? "only fairly well" : "poorly")}";
            return null;
        }
    }
}
