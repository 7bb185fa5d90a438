using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;

namespace Contam.Jobs.Stores;

/// <summary>What is added to a job in one transaction: all of it, or nothing.</summary>
/// <param name="Entries">The entries, linked to the head that they were made for.</param>
/// <param name="Summary">The job's summary after them.</param>
internal sealed record JobAddition(ImmutableArray<JobEntry> Entries, JobSummary Summary)
{
    /// <summary>Texts that the entries name by their hash. One that is kept already is not kept twice.</summary>
    public ImmutableArray<string> Texts { get; init; } = [];
}

/// <summary>An entry of some job.</summary>
/// <param name="Job">The job, as its summary has it.</param>
/// <param name="Entry">The entry.</param>
internal sealed record EntryOfJob(JobSummary Job, JobEntry Entry);

/// <summary>
/// Where jobs are kept. Entries are only ever added, each change in one transaction; two who add at once do so one after the other.
/// Members throw <see cref="ShopException"/> where the place does not allow what is asked.
/// </summary>
internal interface IJobStore : IDisposable
{
    /// <summary>The place in words, for messages; without a password.</summary>
    string Place { get; }

    /// <summary>Keeps a new job. Answers <c>false</c>, and keeps nothing, where there is one of this id.</summary>
    bool Create(JobAddition first);

    /// <summary>
    /// Adds to a job. <paramref name="decide"/> is given the job's summary as it stands while nobody else can write, and answers what to add, or
    /// <c>null</c> for nothing, for instance where the head is not the one that was expected. It may read from the store what is there until then.
    /// </summary>
    /// <returns>What was added, or <c>null</c>.</returns>
    JobAddition? Append(string job, Func<JobSummary, JobAddition?> decide);

    /// <summary>The summary of a job, or <c>null</c>.</summary>
    JobSummary? Find(string job);

    /// <summary>Every job, the one last written to first; then by id.</summary>
    ImmutableArray<JobSummary> List();

    /// <summary>The entries of a job in order. What cannot be read is left out and said in <paramref name="damage"/>; else that is <c>null</c>.</summary>
    /// <param name="job">The job.</param>
    /// <param name="damage">What cannot be read, as a clause.</param>
    /// <param name="after">Only entries after this one; 0 for all.</param>
    ImmutableArray<JobEntry> Entries(string job, out string? damage, long after = 0);

    /// <summary>A kept text, or <c>null</c>.</summary>
    string? Text(string sha256);

    /// <summary>Every entry of one of these kinds, by job id, then in order.</summary>
    IEnumerable<EntryOfJob> EntriesOfKind(params ImmutableArray<string> kinds);

    /// <summary>What the place itself finds wrong with it, beyond what the entries say of themselves; empty for nothing.</summary>
    ImmutableArray<string> CheckPlace();

    /// <summary>The triggers that guard entries and the list of opened jobs, by name in ordinal order; those that are there and at work.</summary>
    ImmutableArray<string> Triggers();
}
