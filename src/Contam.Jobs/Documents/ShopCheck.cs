using System.Collections.Immutable;
using System.Text.Json;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs.Documents;

/// <summary>What a check of a shop's record came to.</summary>
/// <param name="Wrong">Everything that is wrong, a sentence without a full stop each, job by job; empty where all is as it was written.</param>
/// <param name="Jobs">How many jobs it saw.</param>
/// <param name="Entries">How many entries.</param>
/// <param name="Triggers">How many of the triggers that guard them.</param>
public sealed record ShopCheckResult(ImmutableArray<string> Wrong, int Jobs, int Entries, int Triggers);

/// <summary>Whether a shop's record is whole, and no job in it was released although something was missing: the place itself, every chain of hashes, every kept text, and every row of the list against its entries.</summary>
public static class ShopCheck
{
    /// <summary>Goes through the whole record. Nothing is changed.</summary>
    public static ShopCheckResult Of(JobBook book)
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
            return new ShopCheckResult(wrong.ToImmutable(), 0, 0, 0);
        }

        ILookup<string, long>? seen = SeenByKind(book);
        int entries = 0;
        foreach (JobSummary job in jobs.OrderBy(job => job.Id, StringComparer.Ordinal))
        {
            if (WrongWith(book, job, seen?[job.Id], ref entries) is { } what)
                wrong.Add($"job {job.Id}: {what}");
        }

        return new ShopCheckResult(wrong.ToImmutable(), jobs.Length, entries, TriggersIn(book));
    }

    private static int TriggersIn(JobBook book)
    {
        try
        {
            return book.Store.Triggers().Length;
        }
        catch (ShopException broken) when (broken.Fault == ShopFault.Damaged)
        {
            return 0;
        }
    }

    /// <summary>The entries that a history would read, by job; <c>null</c> where they cannot be read, which is said of their job.</summary>
    private static ILookup<string, long>? SeenByKind(JobBook book)
    {
        try
        {
            return book.Store.EntriesOfKind("opened", "looked", "decided").ToLookup(one => one.Job.Id, one => one.Entry.Sequence, StringComparer.Ordinal);
        }
        catch (ShopException broken) when (broken.Fault == ShopFault.Damaged)
        {
            return null;
        }
    }

    private static string? WrongWith(JobBook book, JobSummary job, IEnumerable<long>? seen, ref int read)
    {
        ImmutableArray<JobEntry> entries = book.Store.Entries(job.Id, out string? damage);
        read += entries.Length;
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
            if (seen is not null && !seen.SequenceEqual(entries.Where((_, index) => bodies[index] is Opened or Looked or Decided).Select(entry => entry.Sequence)))
                return "the kind of an entry is not the one that its text names";
            foreach (KeptFile file in opened.Family.Concat(opened.Standard))
                book.Text(file.Sha256);
            foreach (Released released in bodies.OfType<Released>())
                book.Text(released.Sheet);
            JobSummary due = JobSummary.Of(job.Id, JobFold.Fold(bodies, sha256 => PlanJson.Read(book.Text(sha256))), entries[^1], bodies[^1]);
            if (JobReplay.FirstRelease(job.Id, bodies, book.Text, book.SystemOf(opened)) is { } unreleasable)
                return unreleasable;
            return due == job ? null : "its row in the list does not say what its entries come to: an entry is missing at the end, or the row was changed";
        }
        catch (Exception fault) when (fault is ShopException or JsonException or ArgumentException or InvalidCastException)
        {
            return fault.Message;
        }
    }
}
