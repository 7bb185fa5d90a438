using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Jobs.Tests.Walks;

/// <summary>A store in memory, for walks by the thousand. It can be put back to how it was.</summary>
internal sealed class MemoryStore : IJobStore
{
    private ImmutableDictionary<string, (JobSummary Summary, ImmutableArray<JobEntry> Entries)> jobs = ImmutableDictionary.Create<string, (JobSummary, ImmutableArray<JobEntry>)>(StringComparer.Ordinal);
    private readonly Dictionary<string, string> texts = new(StringComparer.Ordinal);

    public string Place => "memory";

    public ImmutableDictionary<string, (JobSummary Summary, ImmutableArray<JobEntry> Entries)> Kept
    {
        get => jobs;
        set => jobs = value;
    }

    public bool Create(JobAddition first)
    {
        if (jobs.ContainsKey(first.Summary.Id))
            return false;
        Keep(first.Texts);
        jobs = jobs.Add(first.Summary.Id, (first.Summary, first.Entries));
        return true;
    }

    public JobAddition? Append(string job, Func<JobSummary, JobAddition?> decide)
    {
        if (!jobs.TryGetValue(job, out (JobSummary Summary, ImmutableArray<JobEntry> Entries) kept) || decide(kept.Summary) is not { } addition)
            return null;
        Keep(addition.Texts);
        jobs = jobs.SetItem(job, (addition.Summary, kept.Entries.AddRange(addition.Entries)));
        return addition;
    }

    public JobSummary? Find(string job) => jobs.TryGetValue(job, out (JobSummary Summary, ImmutableArray<JobEntry> Entries) kept) ? kept.Summary : null;

    public ImmutableArray<JobSummary> List() => [.. jobs.Values.Select(job => job.Summary).OrderBy(job => job.Id, StringComparer.Ordinal)];

    public ImmutableArray<JobEntry> Entries(string job, out string? damage, long after = 0)
    {
        damage = null;
        return jobs.TryGetValue(job, out (JobSummary Summary, ImmutableArray<JobEntry> Entries) kept) ? kept.Entries[(int)after..] : [];
    }

    public string? Text(string sha256) => texts.GetValueOrDefault(sha256);

    public IEnumerable<EntryOfJob> EntriesOfKind(params ImmutableArray<string> kinds) =>
        List().SelectMany(job => jobs[job.Id].Entries.Where(entry => kinds.Contains(EntryJson.KindOf(entry.Body))).Select(entry => new EntryOfJob(job, entry)));

    public ImmutableArray<string> CheckPlace() => [];

    public ImmutableArray<string> Triggers() => Migrations.Triggers;

    public void Dispose()
    {
    }

    private void Keep(ImmutableArray<string> added)
    {
        foreach (string text in added)
            texts[EntryChain.Sha256(text)] = text;
    }
}

/// <summary>The process was killed.</summary>
internal sealed class KilledException : Exception;

/// <summary>A store that is killed at a change, when it is told to: before it is written, or after it is written and before anybody hears of it.</summary>
internal sealed class KilledStore(IJobStore store) : IJobStore
{
    /// <summary>What happens at the next change.</summary>
    public Kill Next { get; set; }

    public string Place => store.Place;

    public bool Create(JobAddition first) => store.Create(first);

    public JobAddition? Append(string job, Func<JobSummary, JobAddition?> decide)
    {
        Kill kill = Next;
        Next = Kill.None;
        JobAddition? written = store.Append(job, head => decide(head) is { } addition ? kill == Kill.Before ? throw new KilledException() : addition : null);
        return kill == Kill.After && written is not null ? throw new KilledException() : written;
    }

    public JobSummary? Find(string job) => store.Find(job);

    public ImmutableArray<JobSummary> List() => store.List();

    public ImmutableArray<JobEntry> Entries(string job, out string? damage, long after = 0) => store.Entries(job, out damage, after);

    public string? Text(string sha256) => store.Text(sha256);

    public IEnumerable<EntryOfJob> EntriesOfKind(params ImmutableArray<string> kinds) => store.EntriesOfKind(kinds);

    public ImmutableArray<string> CheckPlace() => store.CheckPlace();

    public ImmutableArray<string> Triggers() => store.Triggers();

    // The place outlives the one that was killed.
    public void Dispose()
    {
    }
}

/// <summary>When a process is killed.</summary>
internal enum Kill
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Before the change is written.</summary>
    Before,

    /// <summary>After it is written.</summary>
    After,
}
