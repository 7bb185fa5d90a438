using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Spread;

/// <summary>A finding with the answer to whether it may clear anything.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="IsAccepted">Whether it is a clean finding that counts.</param>
/// <param name="NotAcceptedBecause">Why a clean finding does not count; <c>null</c> where it does, and for a find.</param>
public sealed record JudgedFinding(Finding Finding, bool IsAccepted, string? NotAcceptedBecause);

/// <summary>
/// Which clean findings count. One is accepted when the shop's standard accepts such findings, the look at that part shows debris well, and the part is
/// neither failed nor a place where this debris was found.
/// </summary>
public static class CleanFindingJudge
{
    /// <summary>Every finding of the question's debris, judged, in the order given.</summary>
    public static ImmutableArray<JudgedFinding> Judge(SpreadQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var failed = question.Failed.ToHashSet();
        var found = question.Findings.Where(finding => finding.Found && finding.Debris == question.Debris).Select(finding => finding.Part).ToHashSet();
        return [.. question.Findings.Where(finding => finding.Debris == question.Debris).Select(JudgeOne)];

        JudgedFinding JudgeOne(Finding finding)
        {
            if (finding.Found)
                return new JudgedFinding(finding, IsAccepted: false, NotAcceptedBecause: null);
            string? because = WhyNot(question.Family[finding.Part]);
            return new JudgedFinding(finding, because is null, because);
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
