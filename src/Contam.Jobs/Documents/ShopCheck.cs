using System.Collections.Immutable;
using System.Text.Json;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs.Documents;

/// <summary>Whether a shop's record is whole: the place itself, every chain of hashes, every kept text, and every row of the list against its entries.</summary>
public static class ShopCheck
{
    /// <summary>Everything that is wrong, a sentence without a full stop each, job by job; empty where all is as it was written.</summary>
    public static ImmutableArray<string> Of(JobBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var wrong = ImmutableArray.CreateBuilder<string>();
        wrong.AddRange(book.Store.CheckPlace());
        ImmutableArray<JobSummary> jobs;
        try
        {
            jobs = book.Store.List();
        }
        catch (ShopException broken) when (broken.Fault == ShopFault.Damaged)
        {
            wrong.Add("the list of jobs cannot be read");
            return wrong.ToImmutable();
        }

        ILookup<string, long>? seen = SeenByKind(book);
        foreach (JobSummary job in jobs.OrderBy(job => job.Id, StringComparer.Ordinal))
        {
            if (WrongWith(book, job, seen?[job.Id]) is { } what)
                wrong.Add($"job {job.Id}: {what}");
        }

        return wrong.ToImmutable();
    }

    /// <summary>The entries that a history would read, by job; <c>null</c> where they cannot be read, which is said of their job.</summary>
    private static ILookup<string, long>? SeenByKind(JobBook book)
    {
        try
        {
            return book.Store.EntriesOfKind("opened", "looked").ToLookup(one => one.Job.Id, one => one.Entry.Sequence, StringComparer.Ordinal);
        }
        catch (ShopException broken) when (broken.Fault == ShopFault.Damaged)
        {
            return null;
        }
    }

    private static string? WrongWith(JobBook book, JobSummary job, IEnumerable<long>? seen)
    {
        ImmutableArray<JobEntry> entries = book.Store.Entries(job.Id, out string? damage);
        if (damage is not null)
            return damage;
        if (EntryChain.FirstBreak(entries) is { } broken)
            return broken;
        if (entries.IsEmpty || entries[0].Hash[..8] != job.Id)
            return "its first entry is not the one that it was opened with";
        try
        {
            EntryBody[] bodies = [.. entries.Select(entry => EntryJson.Read(entry.Body))];
            var opened = (Opened)bodies[0];
            // The column is no part of the chain, and a history goes by it.
            if (seen is not null && !seen.SequenceEqual(entries.Where((_, index) => bodies[index] is Opened or Looked).Select(entry => entry.Sequence)))
                return "the kind of an entry is not the one that its text names";
            foreach (KeptFile file in opened.Family.Concat(opened.Standard))
                book.Text(file.Sha256);
            foreach (Released released in bodies.OfType<Released>())
                book.Text(released.Sheet);
            JobSummary due = JobSummary.Of(job.Id, JobFold.Fold(bodies, sha256 => PlanJson.Read(book.Text(sha256))), entries[^1], bodies[^1]);
            return due == job ? null : "its row in the list does not say what its entries come to: an entry is missing at the end, or the row was changed";
        }
        catch (Exception fault) when (fault is ShopException or JsonException or ArgumentException or InvalidCastException)
        {
            return fault.Message;
        }
    }
}
