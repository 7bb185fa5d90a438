using System.Collections.Immutable;
using Contam.Families;

namespace Contam.StopLines;

/// <summary>
/// Finds the stop line.
/// <para>
/// Definition: a choice of looks, each where a clean finding would be accepted. It costs the minutes of the looks and of the treatment, as it is today, of every part that would still be
/// treated if all of them were clean: a failed part, one where debris was found, a critical one, and one to which some debris that is asked about has a way past no look and no accepted clean
/// finding. The stop line costs least; of choices that cost the same it has fewest looks, and of those it is the nearest to the failure: fewest parts stay open. A critical part that is found clean
/// itself is treated all the same, but what lies beyond it is spared. Several debris: one look is for all of them, and a part is left alone only when it is spared of each; else all of its treatment is counted.
/// </para>
/// <para>
/// Method: a cheapest cut. Every part is split in two with the look between, a joint holds any amount, and each part asks for its treatment (see <see cref="StopLineNetwork"/>). With several debris
/// and a place on record as clean of one and not of another, ways of different debris may join in the network to ways that neither takes; the line is then sound but perhaps not the least, and says so.
/// What is cleared is in every case searched anew along the ways that the spread goes.
/// </para>
/// <para>
/// Finds on record: no look is made where a clean finding could be void, or could make others void, because debris went past there to a place where it was found
/// (see <c>Contradictions.DoubtfulPlaces</c> of the spread). For a find that several ways lead to, one of the widest is kept free of looks; another choice may be
/// better, so that the line then says that it is perhaps not the least.
/// </para>
/// <para>
/// A part that stays keeps the minutes of its treatment today; a later plan may ask less of it, where the way by which full-size debris came is cut.
/// Minutes are counted as <see cref="StopLineLook"/> and <see cref="StopLinePart"/> say, so that what is saved is rather too little than too much.
/// </para>
/// <para>Cost: that of the cut, and of what is in the way of each look.</para>
/// </summary>
public static class StopLineFinder
{
    /// <summary>Finds the line. The same question always gives the same line.</summary>
    /// <exception cref="ArgumentException">No debris is asked about, or nothing has failed and none of it was found.</exception>
    /// <exception cref="KeyNotFoundException">A failed part or a finding names a part that the family does not have.</exception>
    public static StopLine Of(StopLineQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        Check(question);
        var today = StopLineToday.Of(question);
        var costs = StopLineCosts.Of(question, today);
        var network = StopLineNetwork.Of(today, costs);
        SortedSet<int> looks = network.CheapestLooks();
        bool[] stillOpen = today.OpenPast(looks);
        bool IsSpared(int vertex) => !today.IsTreatedAnyway(vertex) && !stillOpen[vertex];

        int[] treated = [.. today.Treatments.Where(one => !one.Treatments.IsEmpty).Select(one => today.Family.IndexOf(one.Part.Id))];
        int[] clears = [.. treated.Where(IsSpared)];
        var shares = StopLineShares.Of(today, looks, stillOpen);
        ILookup<int, int> sparedBy = clears.ToLookup(shares.OnlyLook);
        int[] distance = today.Distances();
        ImmutableArray<PartId> failed = question.Failed;
        ImmutableArray<PartId> doubtful = Ids(today.DoubtfulPlaces);
        return new StopLine
        {
            Looks = [.. looks.OrderBy(vertex => distance[vertex]).Select(vertex =>
                new StopLineLook(IdOf(vertex), StopLineCosts.Minutes(costs.Look(vertex)), Ids(costs.InTheWayOf(vertex)), Ids(sparedBy[vertex])))],
            Clears = Ids(clears),
            ClearsTogether = Ids(clears.Where(one => shares.OnlyLook(one) < 0)),
            ClearedAlready = [.. today.Treatments.Where(one => one.Treatments.IsEmpty).Select(one => one.Part.Id)],
            Treat = [.. treated.Where(vertex => !IsSpared(vertex)).Select(vertex => new StopLinePart(IdOf(vertex), ReasonOf(vertex), StopLineCosts.Minutes(costs.Treatment[vertex])))],
            Minutes = new StopLineMinutes(
                StopLineCosts.Minutes(looks.Sum(costs.Look)),
                StopLineCosts.Minutes(treated.Where(vertex => !IsSpared(vertex)).Sum(vertex => costs.Treatment[vertex])),
                StopLineCosts.Minutes(treated.Sum(vertex => costs.Treatment[vertex]))),
            IsLeast = today.RecordIsTheSameForAll && doubtful.IsEmpty,
            Doubtful = doubtful,
            Contradictions = today.Contradictions,
            Silence = looks.Count > 0 ? StopLineSilence.None : WhySilent(question, today, treated),
        };

        PartId IdOf(int vertex) => today.Family.Parts[vertex].Id;

        ImmutableArray<PartId> Ids(IEnumerable<int> vertices) => [.. vertices.Select(IdOf)];

        StopLineReason ReasonOf(int vertex) =>
            failed.Contains(IdOf(vertex)) ? StopLineReason.Failed
            : today.IsSource[vertex] ? StopLineReason.Found
            : today.Family.Parts[vertex].IsCritical ? StopLineReason.Critical
            : StopLineReason.BeforeTheLine;
    }

    private static StopLineSilence WhySilent(StopLineQuestion question, StopLineToday today, int[] treated)
    {
        if (question.Standard.CleanFindings == Treatment.CleanFindings.Never)
            return StopLineSilence.StandardForbids;
        if (treated.All(today.IsTreatedAnyway))
            return StopLineSilence.NothingToSpare;
        return Enumerable.Range(0, today.CanLook.Length).Any(vertex => today.CanLook[vertex] && today.IsOpen(vertex)) ? StopLineSilence.NothingSaved
            : today.DoubtfulPlaces.Any() ? StopLineSilence.FindsSpeakAgainst
            : StopLineSilence.NowhereToLook;
    }

    private static void Check(StopLineQuestion question)
    {
        if (question.Debris.IsDefaultOrEmpty)
            throw new ArgumentException("a stop line needs at least one debris", nameof(question));
        foreach (PartId failed in question.Failed)
            _ = question.Family[failed];
        foreach (Finding finding in question.Findings)
            _ = question.Family[finding.Part];
        if (question.Failures.IsDefaultOrEmpty && !question.Findings.Any(finding => finding.Found && question.Debris.Contains(finding.Debris)))
            throw new ArgumentException("a stop line needs a failed part, or a place where the debris was found", nameof(question));
    }
}
