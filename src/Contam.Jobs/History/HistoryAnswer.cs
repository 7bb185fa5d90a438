using System.Collections.Immutable;
using Contam.Diagnosis;

namespace Contam.Jobs.History;

/// <summary>Looks that count, of one family, failure and debris.</summary>
/// <param name="Family">The family's id.</param>
/// <param name="Failed">What had failed; empty where that was never known.</param>
/// <param name="Debris">What was looked for.</param>
/// <param name="Count">How often it was found.</param>
public sealed record HistoryRow(string Family, ImmutableArray<string> Failed, string Debris, LookCount Count);

/// <summary>Looks that do not count, of one sort.</summary>
/// <param name="Worth">Why not.</param>
/// <param name="Count">How many, and how many of them were finds.</param>
public sealed record PassedOver(PastLookWorth Worth, LookCount Count);

/// <summary>How often debris was looked for and found at a part, over all jobs.</summary>
/// <param name="Part">The part.</param>
/// <param name="Rows">What counts, by family, debris and failure, in ordinal order.</param>
/// <param name="NotCounted">What does not, by sort.</param>
public sealed record HistoryAnswer(string Part, ImmutableArray<HistoryRow> Rows, ImmutableArray<PassedOver> NotCounted)
{
    /// <summary>All that counts.</summary>
    public LookCount All => Rows.Aggregate(default(LookCount), (sum, row) => sum + row.Count);

    /// <summary>The answer for one part.</summary>
    /// <param name="book">The shop's book.</param>
    /// <param name="part">The part.</param>
    /// <param name="family">The family's id, or <c>null</c> for every family.</param>
    /// <param name="debris">The debris, or <c>null</c> for all.</param>
    /// <param name="failed">A part that must be among the failed ones, or <c>null</c>.</param>
    public static HistoryAnswer Of(JobBook book, string part, string? family, string? debris, string? failed)
    {
        ImmutableArray<PastLook> looks = ShopHistory.Of(book, (job, seen) =>
            seen.Part == part && (family is null || job.Family == family) && (debris is null || seen.Debris == debris)).RemoveAll(look => failed is not null && !look.Failed.Contains(failed));
        return new HistoryAnswer(
            part,
            [
                .. looks.Where(look => look.Worth == PastLookWorth.Counts)
                    .GroupBy(look => (look.Job.Family, look.Seen.Debris, Failed: string.Join(',', look.Failed)))
                    .OrderBy(group => group.Key.Family, StringComparer.Ordinal).ThenBy(group => group.Key.Debris, StringComparer.Ordinal).ThenBy(group => group.Key.Failed, StringComparer.Ordinal)
                    .Select(group => new HistoryRow(group.Key.Family, group.First().Failed, group.Key.Debris, ShopHistory.CountOf(group))),
            ],
            [
                .. looks.Where(look => look.Worth != PastLookWorth.Counts).GroupBy(look => look.Worth).OrderBy(group => group.Key).Select(group => new PassedOver(group.Key, ShopHistory.CountOf(group))),
            ]);
    }
}
