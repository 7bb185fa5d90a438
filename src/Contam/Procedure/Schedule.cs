using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>When a job is worked and by whom. Times are working minutes from the beginning.</summary>
/// <param name="Job">Its number in the graph.</param>
/// <param name="Start">Start.</param>
/// <param name="Finish">Finish.</param>
/// <param name="Technician">Who, from 1; 0 where no hands are needed.</param>
internal readonly record struct ScheduledJob(int Job, double Start, double Finish, int Technician);

/// <summary>A schedule: the jobs in the order in which they start.</summary>
/// <param name="Jobs">By start; of jobs that start together, one that another waits for comes first.</param>
/// <param name="Technicians">How many technicians there are.</param>
internal sealed record Schedule(ImmutableArray<ScheduledJob> Jobs, int Technicians)
{
    /// <summary>When the last job is finished.</summary>
    public double Elapsed => Jobs.Length == 0 ? 0 : Jobs.Max(job => job.Finish);
}
