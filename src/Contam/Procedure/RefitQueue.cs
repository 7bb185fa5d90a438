using Contam.Families;

namespace Contam.Procedure;

/// <summary>
/// What goes back next. The jobs at a part in this phase (its arrival, the check of the new one, its test, its refit) are one group, due when all that
/// they wait for elsewhere is done. Of the groups that are due and wait for nothing on its way, the one whose part came off last; like parts with it.
/// Where everything that is due is still on its way, the one that is there first.
/// </summary>
internal sealed class RefitQueue
{
    private sealed class Group
    {
        public List<int> Jobs { get; } = [];

        public int WaitsFor { get; set; }

        public string? Like { get; set; }

        public Part? Part { get; init; }

        /// <summary>When nothing of it is still on its way or away; known once it is due.</summary>
        public double ThereAt { get; set; }

        /// <summary>By what groups that are there come in turn: the last off first; what is at no part, last.</summary>
        public (int Off, int Rank) Turn { get; set; }
    }

    private readonly JobGraph graph;
    private readonly BenchRanks ranks;
    private readonly BenchClock clock;
    private readonly Dictionary<int, Group> groupOf = [];
    private readonly SortedSet<Group> onTheWay = new(Comparer<Group>.Create((one, other) => (one.ThereAt, one.Turn).CompareTo((other.ThereAt, other.Turn))));
    private readonly SortedSet<Group> there = new(Comparer<Group>.Create((one, other) => one.Turn.CompareTo(other.Turn)));
    private readonly Dictionary<string, SortedSet<Group>> thereLike = new(StringComparer.Ordinal);
    private readonly List<Group> dueFromTheStart = [];
    private bool hasBegun;
    private readonly bool[] isPicked;

    public RefitQueue(JobGraph graph, BenchRanks ranks, BenchClock clock, Func<int, string?> likeKey)
    {
        this.graph = graph;
        this.ranks = ranks;
        this.clock = clock;
        isPicked = new bool[graph.Jobs.Count];
        var ofPart = new Dictionary<PartId, Group>();
        var all = new List<Group>();
        foreach (Job job in graph.Jobs.Where(job => job.Phase == Phase.Refit))
        {
            Group? group = null;
            if (job.Part is not { } part || !ofPart.TryGetValue(part.Id, out group))
            {
                group = new Group { Part = job.Part };
                all.Add(group);
                if (job.Part is not null)
                    ofPart.Add(job.Part.Id, group);
            }

            group.Jobs.Add(job.Id);
            groupOf.Add(job.Id, group);
            if (job.Action == StepAction.Refit)
                group.Like = likeKey(job.Id);
        }

        foreach (Group group in all)
        {
            group.WaitsFor = group.Jobs.Sum(job => graph.Before(job).Count(first => !ReferenceEquals(groupOf.GetValueOrDefault(first), group)));
            if (group.WaitsFor == 0)
                dueFromTheStart.Add(group);
        }
    }

    /// <summary>Takes note that a job is done.</summary>
    public void Picked(int job)
    {
        isPicked[job] = true;
        Group? own = groupOf.GetValueOrDefault(job);
        foreach (int next in graph.After(job))
        {
            if (!groupOf.TryGetValue(next, out Group? group) || ReferenceEquals(group, own) || --group.WaitsFor > 0)
                continue;
            if (hasBegun)
                BecomeDue(group);
            else
                dueFromTheStart.Add(group);
        }
    }

    /// <summary>The jobs that come next, in order; at least one.</summary>
    /// <param name="ready">The jobs of this phase that could be done now, by rank, for where groups wait for one another; not empty.</param>
    public IEnumerable<int> Next(IEnumerable<int> ready)
    {
        if (!hasBegun)
        {
            // Only now is it known what came off when.
            hasBegun = true;
            dueFromTheStart.ForEach(BecomeDue);
        }

        while (onTheWay.Min is { } next && next.ThereAt <= clock.BusyUntil)
            BeThere(next);
        if (there.Count == 0 && onTheWay.Min is { } soonest)
        {
            while (onTheWay.Min is { } next && next.ThereAt <= soonest.ThereAt)
                BeThere(next);
        }

        if (there.Min is not { } first)
            return [ready.First()];
        Group[] together = first.Like is null ? [first] : [.. thereLike[first.Like].OrderBy(group => ranks.RankOf(group.Jobs[^1]))];
        foreach (Group group in together)
            Leave(group);
        return
        [
            .. together.SelectMany(group => group.Jobs)
                .Where(job => !isPicked[job])
                .OrderBy(job => TurnOf(graph.Jobs[job]))
                .ThenBy(ranks.RankOf),
        ];
    }

    private void BecomeDue(Group group)
    {
        if (group.Jobs.TrueForAll(job => isPicked[job]))
            return;
        group.ThereAt = group.Jobs.Max(job => clock.Earliest(job) + (graph.Jobs[job].IsWait ? graph.Jobs[job].Minutes : 0));
        group.Turn = (group.Part is null ? int.MaxValue : -ranks.OffAt(group.Part), ranks.RankOf(group.Jobs[0]));
        onTheWay.Add(group);
    }

    private void BeThere(Group group)
    {
        onTheWay.Remove(group);
        there.Add(group);
        if (group.Like is null)
            return;
        if (!thereLike.TryGetValue(group.Like, out SortedSet<Group>? like))
            thereLike[group.Like] = like = new SortedSet<Group>(there.Comparer);
        like.Add(group);
    }

    private void Leave(Group group)
    {
        there.Remove(group);
        if (group.Like is not null)
            thereLike[group.Like].Remove(group);
    }

    private static int TurnOf(Job job) => job.Action switch
    {
        StepAction.Note => 0,
        StepAction.Replace => 1,
        StepAction.Test => 2,
        _ => 3,
    };
}
