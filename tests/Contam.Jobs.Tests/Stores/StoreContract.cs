using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;

namespace Contam.Jobs.Tests.Stores;

/// <summary>What every store promises, whatever it keeps jobs in.</summary>
public abstract class StoreContract : IDisposable
{
    public abstract void Dispose();

    /// <summary>A store of its own, empty at first; each call opens the same place once more.</summary>
    private protected abstract IJobStore Open();

    [Fact]
    public void Keeps_a_job_across_opening()
    {
        using (IJobStore store = Open())
            Assert.True(store.Create(First("a0000001")));
        using IJobStore again = Open();
        Assert.Equal("a0000001", Assert.Single(again.List()).Id);
        Assert.Equal(First("a0000001").Entries, again.Entries("a0000001", out string? damage));
        Assert.Equal("the plan's text", again.Text(EntryChain.Sha256("the plan's text")));
        Assert.Null(damage);
    }

    [Fact]
    public void Does_not_keep_a_job_twice()
    {
        using IJobStore store = Open();
        Assert.True(store.Create(First("a0000001")));
        Assert.False(store.Create(First("a0000001")));
        Assert.Single(store.Entries("a0000001", out _));
    }

    [Fact]
    public void Adds_all_of_a_change_or_nothing()
    {
        using IJobStore store = Open();
        store.Create(First("a0000001"));
        Assert.Throws<InvalidOperationException>(() => store.Append("a0000001", _ => throw new InvalidOperationException("changed my mind")));
        Assert.Throws<ArgumentException>(() => store.Append("a0000001", head => Next(head with { Hash = EntryChain.Beginning }, "does not follow")));
        Assert.Null(store.Append("a0000001", _ => null));
        Assert.Equal(First("a0000001").Summary, store.Find("a0000001"));
        Assert.NotNull(store.Append("a0000001", head => Next(head, "follows")));
        Assert.Equal(2, store.Entries("a0000001", out _).Length);
    }

    [Fact]
    public void Lets_two_write_one_after_the_other()
    {
        using IJobStore one = Open();
        using IJobStore other = Open();
        one.Create(First("a0000001"));
        for (int round = 0; round < 20; round++)
        {
            one.Append("a0000001", head => Next(head, "one"));
            other.Append("a0000001", head => Next(head, "other"));
        }

        ImmutableArray<JobEntry> entries = one.Entries("a0000001", out _);
        Assert.Equal(41, entries.Length);
        Assert.Null(EntryChain.FirstBreak(entries));
    }

    [Fact]
    public void Lists_the_job_last_written_to_first_whatever_its_offset()
    {
        using IJobStore store = Open();
        store.Create(First("a0000001", "2026-05-04T10:00:00+02:00"));
        store.Create(First("a0000002", "2026-05-04T09:30:00+00:00"));
        store.Create(First("a0000003", "2026-05-04T09:00:00+01:00"));
        Assert.Equal(["a0000002", "a0000001", "a0000003"], store.List().Select(job => job.Id));
    }

    [Fact]
    public void Finds_nothing_where_there_is_nothing()
    {
        using IJobStore store = Open();
        Assert.Null(store.Find("a0000001"));
        Assert.Null(store.Append("a0000001", head => Next(head, "nothing")));
        Assert.Null(store.Text("none"));
        Assert.Empty(store.List());
        Assert.Empty(store.Entries("a0000001", out _));
        Assert.Empty(store.CheckPlace());
    }

    [Fact]
    public void Gives_the_entries_of_a_kind()
    {
        using IJobStore store = Open();
        store.Create(First("a0000001"));
        store.Append("a0000001", head => Next(head, "a note"));
        EntryOfJob only = Assert.Single(store.EntriesOfKind("opened"));
        Assert.Equal(("a0000001", 1L), (only.Job.Id, only.Entry.Sequence));
    }

    internal static JobAddition First(string id, string last = "2026-05-04T09:00:00+00:00")
    {
        JobEntry entry = EntryChain.Link(0, EntryChain.Beginning, $$"""{"kind":"opened","of":"{{id}}"}""");
        return new JobAddition([entry], new JobSummary
        {
            Id = id, Sequence = 1, Hash = entry.Hash, Customer = "Quay 4 ' \" ; --", Engine = "port", Family = "gear", Failed = "pinion", Debris = "metal",
            State = "open", Done = 0, Steps = 95, Unanswered = 0, Opened = last, Last = last,
        })
        { Texts = ["the plan's text"] };
    }

    internal static JobAddition Next(JobSummary head, string note)
    {
        JobEntry entry = EntryChain.Link(head.Sequence, head.Hash, $$"""{"kind":"noted","text":"{{note}}"}""");
        return new JobAddition([entry], head with { Sequence = entry.Sequence, Hash = entry.Hash });
    }
}
