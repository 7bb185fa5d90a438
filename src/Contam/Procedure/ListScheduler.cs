using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>
/// Gives jobs to technicians as they become free: of the jobs whose turn has come, the one of the highest rank first (the parallel
/// schedule generation scheme; Kolisch, "Serial and parallel resource-constrained project scheduling methods revisited", European Journal of
/// Operational Research 90, 1996). A job that needs no hands starts as soon as it can. Cost: (jobs + order) × log jobs.
/// </summary>
internal sealed class ListScheduler
{
    private readonly JobGraph graph;
    private readonly int[] rank;
    private readonly int[] waitsFor;
    private readonly PriorityQueue<int, int> ready = new();
    private readonly Queue<int> readyWithoutHands = new();
    private readonly PriorityQueue<(int Job, int Technician), (double Finish, int Job)> running = new();
    private readonly PriorityQueue<int, int> free = new();
    private readonly ImmutableArray<ScheduledJob>.Builder started;

    private ListScheduler(JobGraph graph, int technicians, int[] rank)
    {
        this.graph = graph;
        this.rank = rank;
        waitsFor = new int[graph.Jobs.Count];
        started = ImmutableArray.CreateBuilder<ScheduledJob>(waitsFor.Length);
        for (int technician = 1; technician <= technicians; technician++)
            free.Enqueue(technician, technician);
        for (int job = 0; job < waitsFor.Length; job++)
        {
            waitsFor[job] = graph.BeforeCount(job);
            if (waitsFor[job] == 0)
                MakeReady(job);
        }
    }

    /// <summary>A schedule of an order without circles.</summary>
    /// <param name="graph">The jobs.</param>
    /// <param name="technicians">At least 1.</param>
    /// <param name="rank">For each job its rank, each once; 0 is the highest.</param>
    public static Schedule Schedule(JobGraph graph, int technicians, int[] rank)
    {
        var scheduler = new ListScheduler(graph, technicians, rank);
        double now = 0;
        while (scheduler.StartWhatCanStart(now) || scheduler.running.Count > 0)
        {
            if (scheduler.FinishNext() is { } finish)
                now = finish;
        }

        return new Schedule(scheduler.started.ToImmutable(), technicians);
    }

    private bool StartWhatCanStart(double now)
    {
        bool hasStarted = false;
        while (true)
        {
            if (readyWithoutHands.TryDequeue(out int waiting))
            {
                Start(waiting, now, technician: 0);
            }
            else if (ready.Count > 0 && free.TryDequeue(out int technician, out _))
            {
                Start(ready.Dequeue(), now, technician);
                // What takes no time may make a more urgent job ready at this very moment.
                while (running.TryPeek(out _, out (double Finish, int Job) next) && next.Finish <= now)
                    FinishNext();
            }
            else
            {
                return hasStarted;
            }

            hasStarted = true;
        }
    }

    private void Start(int job, double now, int technician)
    {
        double finish = now + graph.Jobs[job].Minutes;
        started.Add(new ScheduledJob(job, now, finish, technician));
        running.Enqueue((job, technician), (finish, job));
    }

    private double? FinishNext()
    {
        if (!running.TryDequeue(out (int Job, int Technician) done, out (double Finish, int Job) at))
            return null;
        if (done.Technician > 0)
            free.Enqueue(done.Technician, done.Technician);
        foreach (int next in graph.After(done.Job))
        {
            if (--waitsFor[next] == 0)
                MakeReady(next);
        }

        return at.Finish;
    }

    private void MakeReady(int job)
    {
        if (graph.Jobs[job].NeedsHands)
            ready.Enqueue(job, rank[job]);
        else
            readyWithoutHands.Enqueue(job);
    }
}
