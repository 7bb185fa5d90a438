namespace Contam.Procedure;

/// <summary>The jobs at one part, in the order in which they are worked; those that it does not need are <c>null</c>.</summary>
internal sealed class PartJobs
{
    public Job? Remove { get; init; }

    public Job? SendOut { get; init; }

    public Job? Clean { get; init; }

    /// <summary>Its own flush, or that of the loop it belongs to.</summary>
    public Job? Flush { get; init; }

    public Job? Inspect { get; init; }

    /// <summary>The new part is on its way.</summary>
    public Job? Arrival { get; init; }

    public Job? Replace { get; init; }

    public Job? Test { get; init; }

    public Job? Refit { get; init; }

    /// <summary>The first job that treats it.</summary>
    public Job? FirstTreatment => SendOut ?? Clean ?? Flush ?? Inspect ?? Replace ?? Test;

    /// <summary>The last job that treats it.</summary>
    public Job? LastTreatment => Test ?? Replace ?? Inspect ?? Flush ?? Clean;

    /// <summary>The job after which it counts as clean: its last cleaning, or, where it is only looked at or tested, the last of these.</summary>
    public Job? Done => Flush ?? Clean ?? Replace ?? LastTreatment;

    /// <summary>All of them in order.</summary>
    public IEnumerable<Job> InOrder => new[] { Remove, SendOut, Clean, Flush, Inspect, Replace, Test, Refit }.OfType<Job>();
}
