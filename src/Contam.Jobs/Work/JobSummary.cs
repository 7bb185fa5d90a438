using System.Globalization;
using Contam.Jobs.Entries;
using Contam.Plans;

namespace Contam.Jobs.Work;

/// <summary>What a list of jobs shows of one. Kept beside the entries and written with them, so that a list need not fold anything.</summary>
public sealed record JobSummary
{
    /// <summary>The job's id: the beginning of its first entry's hash.</summary>
    public required string Id { get; init; }

    /// <summary>The sequence of its last entry.</summary>
    public required long Sequence { get; init; }

    /// <summary>The hash of its last entry.</summary>
    public required string Hash { get; init; }

    /// <summary>Whose engine it is.</summary>
    public required string Customer { get; init; }

    /// <summary>Which engine.</summary>
    public required string Engine { get; init; }

    /// <summary>The family's id.</summary>
    public required string Family { get; init; }

    /// <summary>Ids of the failed parts, parted by commas; may be empty.</summary>
    public required string Failed { get; init; }

    /// <summary>The debris, parted by commas.</summary>
    public required string Debris { get; init; }

    /// <summary><c>open</c> or <c>released</c>.</summary>
    public required string State { get; init; }

    /// <summary>How many steps are done.</summary>
    public required int Done { get; init; }

    /// <summary>How many steps there are, without those that looks have struck.</summary>
    public required int Steps { get; init; }

    /// <summary>How many looks no plan has been made with yet.</summary>
    public required int Unanswered { get; init; }

    /// <summary>When it was opened, as the first entry has it.</summary>
    public required string Opened { get; init; }

    /// <summary>When the last entry was written, as that entry has it.</summary>
    public required string Last { get; init; }

    /// <summary>The summary of a job after an entry.</summary>
    internal static JobSummary Of(string id, JobState state, JobEntry last, EntryBody lastBody)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(last);
        ArgumentNullException.ThrowIfNull(lastBody);
        return new JobSummary
        {
            Id = id,
            Sequence = last.Sequence,
            Hash = last.Hash,
            Customer = state.Opened.Customer,
            Engine = state.Opened.Engine,
            Family = state.Plan.Family.Id,
            Failed = string.Join(',', state.Plan.FailedParts()),
            Debris = string.Join(',', state.Plan.Debris),
            State = state.IsReleased ? "released" : "open",
            Done = state.Steps.All.Count(state.IsDone),
            Steps = state.Steps.All.Count(step => state.IsDone(step) || !state.IsStruck(step)),
            Unanswered = state.Unanswered.Count(),
            Opened = Written(state.Opened.At),
            Last = Written(lastBody.At),
        };
    }

    /// <summary>The same job one entry on, where that entry changes nothing but the record: a note, a photo.</summary>
    internal JobSummary After(JobEntry last, DateTimeOffset at) => this with { Sequence = last.Sequence, Hash = last.Hash, Last = Written(at) };

    /// <summary>A time as the summary has it; the beginning of all times where it is none.</summary>
    internal static DateTimeOffset TimeOf(string written) =>
        DateTimeOffset.TryParse(written, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset time) ? time : DateTimeOffset.MinValue;

    private static string Written(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
}
