using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs;

/// <summary>A job as it was read. Only a <see cref="JobBook"/> makes one, and only a book adds to it.</summary>
public sealed class JobRecord
{
    internal JobRecord(JobSummary summary, ImmutableArray<JobEntry> entries, ImmutableArray<EntryBody> bodies, JobState state)
    {
        Summary = summary;
        Entries = entries;
        Bodies = bodies;
        State = state;
    }

    /// <summary>Its row in the list; says which entry was the last.</summary>
    public JobSummary Summary { get; }

    /// <summary>Its id.</summary>
    public string Id => Summary.Id;

    /// <summary>The plan that holds now.</summary>
    public PlanDocument Plan => State.Plan;

    /// <summary>Whether the engine may be run.</summary>
    public bool IsReleased => State.IsReleased;

    /// <summary>Who is in charge of it, and signs where nobody else does.</summary>
    public string Technician => State.Opened.Technician;

    /// <summary>Its steps, by number.</summary>
    public ImmutableArray<WorkStep> Steps => State.Steps.All;

    /// <summary>How many steps that are not done need not be, by what looks showed.</summary>
    public int Struck => State.Steps.All.Count(step => !State.IsDone(step) && State.IsStruck(step));

    /// <summary>Whether something was seen that no plan has been made with yet.</summary>
    public bool HasUnplannedFinds => State.Unanswered.Any();

    /// <summary>What finds say against clean looks of the plan that holds, a sentence each.</summary>
    public ImmutableArray<string> Disproved =>
        [.. Plan.Looks.Where(look => State.StandingOf(look.Id) is LookStanding.Void or LookStanding.Settled).Select(look => Reports.LookWords.Sentence(State, look))];

    /// <summary>Its entries, in order.</summary>
    internal ImmutableArray<JobEntry> Entries { get; }

    /// <summary>What they say, in the same order.</summary>
    internal ImmutableArray<EntryBody> Bodies { get; }

    /// <summary>How it stands.</summary>
    internal JobState State { get; }
}
