using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>Whether the family was reviewed, in a sentence or two; the same in text, Markdown and on the sheet.</summary>
internal static class ReviewWords
{
    private const int MostChanges = 6;

    /// <summary>What is said; <c>null</c> where the plan says nothing of reviews.</summary>
    public static string? Of(PlanDocument plan)
    {
        if (plan.Review is not { } review)
            return null;
        if (review.By is not { } by)
            return "Nobody has signed that this family was held against the machine: contam review makes the sheet for it.";
        string reviewed = $"Family reviewed by {by} on {review.On}{(review.Note is { } note ? $" ({note})" : "")}";
        if (review.IsCurrent)
            return $"{reviewed}; unchanged since.";
        if (review.Changes.IsEmpty)
            return $"{reviewed}; since then no part and no joint has changed, only words or order of the files.";
        int left = review.Changes.Length - MostChanges;
        return $"{reviewed}. Changed since, and not reviewed: {string.Join("; ", review.Changes.Take(MostChanges))}{(left > 0 ? string.Create(CultureInfo.InvariantCulture, $"; and {left} more changes") : "")}.";
    }
}
