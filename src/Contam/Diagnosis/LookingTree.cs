namespace Contam.Diagnosis;

/// <summary>Writes out the branches of a way of looking, the likeliest first.</summary>
internal sealed class LookingTree
{
    /// <summary>How many looks of an exact plan are written out at most; nobody reads more.</summary>
    public const int MostLooks = 40;

    /// <summary>How many of one that takes the best look each time: what follows later is better asked again when it is known what was found.</summary>
    public const int MostGreedyLooks = 12;

    private readonly FindingsModel model;
    private readonly LookTable table;
    private readonly double sure;
    private readonly ILookingPolicy policy;

    private LookingTree(FindingsModel model, LookTable table, double sure, ILookingPolicy policy)
    {
        this.model = model;
        this.table = table;
        this.sure = sure;
        this.policy = policy;
        Root = null!;
    }

    /// <summary>Where it begins.</summary>
    public LookingNode Root { get; private set; }

    /// <summary>The minutes to be expected; <c>null</c> where some branch is not written out.</summary>
    public double? MinutesIfWhole { get; private set; }

    public static LookingTree Grow(FindingsModel model, LookTable table, double sure, ILookingPolicy policy)
    {
        var tree = new LookingTree(model, table, sure, policy);
        var root = new Draft(1, new byte[table.Places.Length], table.Shares, -1);
        List<Draft> drafts = tree.Spread(root, policy is ExactLooking ? MostLooks : MostGreedyLooks);
        tree.Root = tree.Finish(drafts);
        tree.MinutesIfWhole = drafts.Any(draft => draft.Place >= 0 && draft.Found < 0)
            ? null
            : drafts.Where(draft => draft.Place >= 0).Sum(draft => draft.Chance * table.Minutes[draft.Place]);
        return tree;
    }

    // Children stand behind their parent in the list.
    private List<Draft> Spread(Draft root, int most)
    {
        root.Place = policy.Choose(root.Seen, root.Shares);
        var drafts = new List<Draft> { root };
        var waiting = new PriorityQueue<int, (double, int)>();
        waiting.Enqueue(0, (-1, 0));
        for (int looks = 0; looks < most && waiting.TryDequeue(out int at, out _);)
        {
            Draft draft = drafts[at];
            if (draft.Place < 0)
                continue;
            looks++;
            double chance = table.ChanceAt(draft.Place, draft.Shares);
            draft.Found = Add(draft, found: true, chance);
            draft.Clean = Add(draft, found: false, 1 - chance);
        }

        return drafts;

        int Add(Draft before, bool found, double chance)
        {
            var shares = new double[before.Shares.Length];
            table.After(before.Place, found, before.Shares, shares);
            byte[] seen = [.. before.Seen];
            seen[before.Place] = found ? (byte)1 : (byte)2;
            var next = new Draft(before.Chance * chance, seen, shares, policy.Choose(seen, shares));
            drafts.Add(next);
            waiting.Enqueue(drafts.Count - 1, (-Math.Round(next.Chance, 9), drafts.Count));
            return drafts.Count - 1;
        }
    }

    private LookingNode Finish(List<Draft> drafts)
    {
        var nodes = new LookingNode[drafts.Count];
        for (int i = drafts.Count - 1; i >= 0; i--)
        {
            Draft draft = drafts[i];
            double share = table.LeaderOf(draft.Shares).Share;
            var node = new LookingNode(draft.Chance, [.. table.LeadersOf(draft.Shares, share).Select(source => model.Sources[source].Id)], share);
            nodes[i] = draft switch
            {
                { Place: < 0 } => node with { End = LookTable.IsAtLeast(share, sure) ? LookingEnd.Sure : LookingEnd.NothingTells },
                { Found: < 0 } => node with { End = LookingEnd.GoesOn },
                _ => node with { Look = Looking.LookAt(table, draft.Place, draft.Shares), Found = nodes[draft.Found], Clean = nodes[draft.Clean] },
            };
        }

        return nodes[0];
    }

    private sealed class Draft(double chance, byte[] seen, double[] shares, int place)
    {
        public double Chance { get; } = chance;

        public byte[] Seen { get; } = seen;

        public double[] Shares { get; } = shares;

        public int Place { get; set; } = place;

        public int Found { get; set; } = -1;

        public int Clean { get; set; } = -1;
    }
}
