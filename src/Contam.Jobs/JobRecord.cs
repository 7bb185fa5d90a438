using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;

namespace Contam.Jobs;

/// <summary>A job as it was read: its entries and what they come to.</summary>
/// <param name="Summary">Its row in the list; says which entry was the last.</param>
/// <param name="Entries">Its entries, in order.</param>
/// <param name="Bodies">What they say, in the same order.</param>
/// <param name="State">How it stands.</param>
public sealed record JobRecord(JobSummary Summary, ImmutableArray<JobEntry> Entries, ImmutableArray<EntryBody> Bodies, JobState State)
{
    /// <summary>Its id.</summary>
    public string Id => Summary.Id;
}
