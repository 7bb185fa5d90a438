namespace Contam.Looks;

/// <summary>
/// On which looks it hangs that one debris comes to a part.
/// <para>
/// Definition: a look is <em>last</em> for a part when the part can be reached from a place of it without passing the place of another look. What can be
/// reached from a source without passing a look is reached whatever is seen; everything else is reached if debris was found at one of its last looks. A
/// place hangs on its own look. A place on record as clean stops the debris too: beyond it everything hangs on the looks whose find would make the record void.
/// </para>
/// <para>
/// The same rule over the joints that pass a size says by which looks that size comes: a find is of any size and its place holds nothing; what
/// comes by a look from further back must come there in that size.
/// </para>
/// <para>Method: every source, and every place with its look as a bit, is spread over the joints until nothing is added. Cost: linear for each look.</para>
/// </summary>
internal sealed class LookFlow
{
    private readonly FixedLooks looks;
    private readonly DebrisWays ways;
    private readonly int[] stop;
    private readonly bool[] isStop;

    public LookFlow(FixedLooks looks, int debris, Disproofs disproofs)
    {
        this.looks = looks;
        ways = looks.Ways[debris];
        stop = new int[looks.Family.Parts.Length];
        isStop = new bool[stop.Length];
        foreach (int vertex in ways.OnRecord)
        {
            isStop[vertex] = true;
            stop[vertex] = disproofs.VoidersAt(debris, vertex);
        }

        for (int vertex = 0; vertex < stop.Length; vertex++)
        {
            if (!looks.IsPlace(vertex) || !ways.IsReached[vertex])
                continue;
            isStop[vertex] = true;
            stop[vertex] = LookMask.Of(looks.LookAt(vertex));
        }

        Coming = Spread(ways.AnySize, ways.Sources.Select(source => source.Vertex), static _ => true);
    }

    /// <summary>By which looks the debris comes to each part at all; for a place, by which it comes as far as there.</summary>
    public int[] Coming { get; }

    /// <summary>Whether a place holds up the debris until something is found.</summary>
    public bool IsStop(int vertex) => isStop[vertex];

    /// <summary>The looks that open a stop; 0 for one that nothing opens.</summary>
    public int OpenedBy(int vertex) => stop[vertex];

    /// <summary>
    /// By which looks a part is reached: for a place by its own. A look that is made for another debris may find this one where nothing on record lets it come.
    /// </summary>
    public int Reached(int vertex) => isStop[vertex] ? (Coming[vertex] == 0 && !looks.IsPlace(vertex) ? 0 : stop[vertex]) : Coming[vertex];

    /// <summary>By which looks the full size that some source sheds comes to each part.</summary>
    public int[] FullSize()
    {
        int[] all = new int[stop.Length];
        foreach (int level in ways.Sources.Select(source => source.Level).Append(0).Distinct().Order())
        {
            int[] starts = [.. ways.Sources.Where(source => source.Level == level).Select(source => source.Vertex)];
            bool[] comes = ways.Mark(level, level == 0 ? [.. starts, .. Places] : starts, looks.IsPlace);
            // A find is itself a source of any size; by a smaller size a place is one only where that size comes to it.
            Add(Spread(level, starts, vertex => comes[vertex] ? ways.Passes(vertex, level) || looks.IsPlace(vertex) : level == 0 && looks.IsPlace(vertex)));
        }

        return all;

        void Add(int[] more)
        {
            for (int vertex = 0; vertex < all.Length; vertex++)
                all[vertex] = LookMask.Or(all[vertex], more[vertex]);
        }
    }

    /// <summary>By which looks particles at least as large as this level's size come to each part.</summary>
    public int[] AtLeast(int level)
    {
        int[] starts = [.. ways.Sources.Where(source => source.Level <= level).Select(source => source.Vertex)];
        bool[] comes = ways.Mark(level, [.. starts, .. Places], looks.IsPlace);
        return Spread(level, starts, vertex => looks.IsPlace(vertex) || (comes[vertex] && ways.Passes(vertex, level)));
    }

    /// <summary>Where a find is a source of any size.</summary>
    private IEnumerable<int> Places => Enumerable.Range(0, stop.Length).Where(vertex => looks.IsPlace(vertex) && ways.IsReached[vertex]);

    /// <summary>By which looks any particle comes that was found at the place of one, whatever comes from elsewhere.</summary>
    public int[] FromFindsAlone() => Spread(0, [], looks.IsPlace);

    /// <summary>For a place its own look where it counts as a source, else what comes over the joints that pass the size.</summary>
    private int[] Spread(int level, IEnumerable<int> starts, Func<int, bool> opens)
    {
        var comes = new int[stop.Length];
        var isWaiting = new bool[stop.Length];
        var queue = new Queue<int>();
        foreach (int start in starts)
            Come(start, LookMask.Always);
        for (int vertex = 0; vertex < stop.Length; vertex++)
        {
            if (isStop[vertex] && stop[vertex] != 0 && opens(vertex))
                PassOn(vertex, stop[vertex]);
        }

        while (queue.TryDequeue(out int vertex))
        {
            isWaiting[vertex] = false;
            if (ways.Passes(vertex, level))
                PassOn(vertex, comes[vertex]);
        }

        return comes;

        void PassOn(int vertex, int mask)
        {
            for (int place = ways.Joints.First[vertex]; place < ways.Joints.First[vertex + 1]; place++)
            {
                if (ways.PassesJoint(place, level))
                    Come(ways.Joints.Target[place], mask);
            }
        }

        void Come(int vertex, int mask)
        {
            int more = LookMask.Or(comes[vertex], mask);
            if (more == comes[vertex])
                return;
            comes[vertex] = more;
            if (isWaiting[vertex] || isStop[vertex])
                return;
            isWaiting[vertex] = true;
            queue.Enqueue(vertex);
        }
    }
}
