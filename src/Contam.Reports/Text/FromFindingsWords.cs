using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>How the failed parts of a plan were taken from what was found, in sentences; the same in text and Markdown.</summary>
internal static class FromFindingsWords
{
    public static IEnumerable<string> Sentences(PlanFromFindings from, Names names)
    {
        foreach (IGrouping<string, PlanSuspect> debris in from.Suspects.GroupBy(suspect => suspect.Debris, StringComparer.Ordinal))
        {
            var groups = RepeatFolding.Fold(debris, suspect => names.NumberOf(suspect.Part), suspect => names.RepeatOf(suspect.Part) + " " + SuspectWords.Percent(suspect.Share));
            IEnumerable<string> suspects = groups.Select(group => $"{names.Folded(group.Select(suspect => suspect.Part))} ({SuspectWords.Percent(group[0].Share)}{(group.Count > 1 ? " each" : "")})");
            yield return $"No failed part was named. These suspects of shedding {debris.Key} count as failed (--share {SuspectWords.Percent(from.Share)}): {string.Join(", ", suspects)}.";
        }

        foreach (PlanNotCounted rest in from.NotCounted)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"Not counted: {rest.Suspects} more {(rest.Suspects == 1 ? "suspect" : "suspects")} of shedding {rest.Debris}, {SuspectWords.Percent(rest.Share)} of the suspicion together. A lower --share counts more of them.");
        }
    }
}
