namespace Contam.Procedure;

/// <summary>When jobs start and finish if they are placed one after the other, each as early as what it waits for and the hands allow.</summary>
internal sealed class BenchClock(JobGraph graph, int technicians)
{
    private readonly double[] finish = new double[graph.Jobs.Count];
    private readonly HandsInUse hands = new(technicians);

    /// <summary>Until when hands are at work so far.</summary>
    public double BusyUntil { get; private set; }

    /// <summary>Places a job; all that it waits for must have been placed.</summary>
    public void Place(int job)
    {
        Job one = graph.Jobs[job];
        double start = Earliest(job);
        if (one.NeedsHands)
            start = hands.Take(start, one.Minutes);
        finish[job] = start + one.Minutes;
        if (one.NeedsHands)
            BusyUntil = Math.Max(BusyUntil, finish[job]);
    }

    /// <summary>When all that a job waits for and that has been placed is finished.</summary>
    public double Earliest(int job)
    {
        double earliest = 0;
        foreach (int first in graph.Before(job))
            earliest = Math.Max(earliest, finish[first]);
        return earliest;
    }
}
