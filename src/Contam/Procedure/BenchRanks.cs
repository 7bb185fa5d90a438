using Contam.Families;

namespace Contam.Procedure;

/// <summary>What decides in the order of a bench where nothing must come first: a fixed rank for every job, and when each part came off.</summary>
internal sealed class BenchRanks
{
    private readonly JobGraph graph;
    private readonly int[] rankOf;
    private readonly int[] jobOf;
    private readonly Dictionary<PartId, int> offAt = [];

    /// <param name="graph">The jobs.</param>
    /// <param name="placeOf">For each job its place: circuit and flow order, then file order.</param>
    public BenchRanks(JobGraph graph, int[] placeOf)
    {
        this.graph = graph;
        var comesOff = graph.Jobs.Where(job => job.Action == StepAction.Remove).SelectMany(job => job.At).Select(part => part.Id).ToHashSet();
        jobOf =
        [
            .. graph.Jobs
                .OrderBy(job => job.Phase)
                .ThenBy(job => Group(job, comesOff))
                .ThenBy(job => IsDecidingLook(job) ? LookRules.Rank(job.At[0]) : 0)
                .ThenBy(job => placeOf[job.Id])
                .ThenBy(job => job.Id)
                .Select(job => job.Id),
        ];
        rankOf = new int[jobOf.Length];
        for (int rank = 0; rank < jobOf.Length; rank++)
            rankOf[jobOf[rank]] = rank;
    }

    /// <summary>The rank of a job, each once; 0 is the first.</summary>
    public int RankOf(int job) => rankOf[job];

    /// <summary>The job of a rank.</summary>
    public int JobOf(int rank) => jobOf[rank];

    /// <summary>Takes note of what comes off.</summary>
    public void Picked(int job)
    {
        if (graph.Jobs[job].Action != StepAction.Remove)
            return;
        foreach (Part part in graph.Jobs[job].At)
            offAt.TryAdd(part.Id, offAt.Count);
    }

    /// <summary>How many parts came off before this one; -1 for one that did not come off.</summary>
    public int OffAt(Part part) => offAt.GetValueOrDefault(part.Id, -1);

    private static bool IsDecidingLook(Job job) => job is { Phase: Phase.Confirm, About: LookAbout.Debris } or { Phase: Phase.Confirm, Action: StepAction.Remove };

    private static int Group(Job job, HashSet<PartId> comesOff) => job.Phase switch
    {
        Phase.Confirm => IsDecidingLook(job) ? 1 : job.Action == StepAction.Note && job.Part is null ? 2 : 0,
        Phase.Strip => job.Action == StepAction.SendOut ? 1 : 0,
        // A new bearing is tried on a journal that is clean.
        Phase.CleanOut when job.Action == StepAction.Replace && !job.IsOutside => 2,
        Phase.CleanOut or Phase.Test => job.IsOutside ? 3 : job.At is [var first, ..] && comesOff.Contains(first.Id) ? 0 : 1,
        _ => 0,
    };
}
