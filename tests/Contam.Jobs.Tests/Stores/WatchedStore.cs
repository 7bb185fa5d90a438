using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Jobs.Tests.Stores;

/// <summary>A store at which something happens whenever it is asked.</summary>
internal sealed class WatchedStore(IJobStore store) : IJobStore
{
    /// <summary>What happens before entries are read.</summary>
    public Action BeforeEntries { get; init; } = () => { };

    /// <summary>What happens before a text is read.</summary>
    public Action BeforeText { get; init; } = () => { };

    /// <summary>What happens before something is added.</summary>
    public Action BeforeAppend { get; init; } = () => { };

    public string Place => store.Place;

    public bool Create(JobAddition first) => store.Create(first);

    public JobAddition? Append(string job, Func<JobSummary, JobAddition?> decide)
    {
        BeforeAppend();
        return store.Append(job, decide);
    }

    public JobSummary? Find(string job) => store.Find(job);

    public ImmutableArray<JobSummary> List() => store.List();

    public ImmutableArray<JobEntry> Entries(string job, out string? damage, long after = 0)
    {
        BeforeEntries();
        return store.Entries(job, out damage, after);
    }

    public string? Text(string sha256)
    {
        BeforeText();
        return store.Text(sha256);
    }

    public IEnumerable<EntryOfJob> EntriesOfKind(params ImmutableArray<string> kinds) => store.EntriesOfKind(kinds);

    public ImmutableArray<string> CheckPlace() => store.CheckPlace();

    public ImmutableArray<string> Triggers() => store.Triggers();

    public void Dispose() => store.Dispose();
}
