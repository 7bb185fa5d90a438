namespace Contam.Graphs;

/// <summary>A smallest cut, with the flow that proves it.</summary>
/// <param name="Cost">What the cut costs, which is what the greatest flow brings to the target.</param>
/// <param name="IsBefore">The nodes on the target's side of the cut: those that could still send it something. Of all smallest cuts the one with fewest.</param>
internal sealed record MinimumCut(long Cost, bool[] IsBefore);

/// <summary>
/// A network in which nodes hold supplies that want to go to one target over arcs with limited room.
/// <para>
/// Definition: a cut is a set of nodes that holds the target; it costs the supplies in it, and the room of all arcs into it. By the theorem of Ford and
/// Fulkerson ("Maximal flow through a network", Canadian Journal of Mathematics 8, 1956) the cheapest costs as much as can be brought to the target at most.
/// </para>
/// <para>
/// Method: push and relabel, highest node first, heights found anew by a search after every so many relabels (Goldberg and Tarjan, Journal of the ACM 35, 1988; Cherkassky and Goldberg,
/// "On implementing the push–relabel method", Algorithmica 19, 1997). What cannot reach the target any more stays where it is: the cut needs no more.
/// </para>
/// <para>Cost: at worst nodes² × √arcs; on flow graphs of engines near linear.</para>
/// </summary>
internal sealed class PushRelabelMaxFlow(int nodeCount, int target)
{
    /// <summary>Room for anything. Twice this still fits.</summary>
    public const long Unlimited = long.MaxValue / 4;

    private readonly List<int> from = [];
    private readonly List<int> to = [];
    private readonly List<long> capacity = [];
    private readonly long[] supply = new long[nodeCount];

    /// <summary>Adds an arc.</summary>
    public void AddArc(int start, int end, long room)
    {
        from.Add(start);
        to.Add(end);
        capacity.Add(room);
    }

    /// <summary>Adds to what a node holds. All supplies together stay below <see cref="Unlimited"/>.</summary>
    public void AddSupply(int node, long amount) => supply[node] = checked(supply[node] + amount);

    /// <summary>The cheapest cut.</summary>
    /// <exception cref="InvalidOperationException">The flow does not prove the cut: a fault of this class.</exception>
    public MinimumCut Cut()
    {
        var run = new Run(nodeCount, target, [.. from], [.. to], [.. capacity], supply);
        run.PushAll();
        bool[] isBefore = run.CanReachTarget();
        long cost = run.ProvenBy(isBefore, supply, [.. capacity]);
        return new MinimumCut(cost, isBefore);
    }

    /// <summary>One run: arc <c>a</c> of the network leads along as <c>2a</c> and back as <c>2a + 1</c>.</summary>
    private sealed class Run
    {
        // Measured on lines, chains and grids of ten thousand parts: heights found anew after an eighth as many relabels as there are nodes.
        private const int RelabelsOfASearch = 8;

        private readonly int nodeCount;
        private readonly int target;
        private readonly int[] start;
        private readonly int[] end;
        private readonly long[] room;
        private readonly PackedGraph arcs;
        private readonly long[] excess;
        private readonly int[] height;
        private readonly int[] current;
        private readonly int[] firstActive;
        private readonly int[] nextActive;
        private readonly int[] firstAt;
        private readonly int[] nextAt;
        private readonly int[] previousAt;
        private int top;
        private int highest;
        private int relabels;

        public Run(int nodeCount, int target, int[] from, int[] to, long[] capacity, long[] supply)
        {
            this.nodeCount = nodeCount;
            this.target = target;
            start = new int[2 * from.Length];
            end = new int[2 * from.Length];
            room = new long[2 * from.Length];
            for (int arc = 0; arc < from.Length; arc++)
            {
                (start[2 * arc], end[2 * arc], room[2 * arc]) = (from[arc], to[arc], capacity[arc]);
                (start[(2 * arc) + 1], end[(2 * arc) + 1]) = (to[arc], from[arc]);
            }

            arcs = PackedGraph.Of(nodeCount, start, end);
            excess = [.. supply];
            height = new int[nodeCount];
            current = new int[nodeCount];
            firstActive = new int[nodeCount];
            nextActive = new int[nodeCount];
            firstAt = new int[nodeCount];
            nextAt = new int[nodeCount];
            previousAt = new int[nodeCount];
        }

        public void PushAll()
        {
            FindHeights();
            while (highest >= 0)
            {
                int node = firstActive[highest];
                if (node < 0)
                {
                    highest--;
                    continue;
                }

                firstActive[highest] = nextActive[node];
                Discharge(node);
                if (relabels > nodeCount / RelabelsOfASearch)
                    FindHeights();
            }
        }

        public bool[] CanReachTarget()
        {
            FindHeights();
            return [.. height.Select(one => one < nodeCount)];
        }

        /// <summary>
        /// What the cut costs, once it is shown that the flow is one — no arc carries less than nothing or more than its room, no node sends on more than it
        /// got — and that it brings just as much to the target. No flow brings more than any cut costs, so this one is greatest and the cut cheapest.
        /// </summary>
        public long ProvenBy(bool[] isBefore, long[] supply, long[] capacity)
        {
            long[] balance = [.. supply];
            long cost = 0;
            for (int node = 0; node < nodeCount; node++)
                cost += isBefore[node] ? supply[node] : 0;
            for (int arc = 0; arc < capacity.Length; arc++)
            {
                (int tail, int head, long flow) = (start[2 * arc], end[2 * arc], room[(2 * arc) + 1]);
                if (flow < 0 || flow > capacity[arc] || room[2 * arc] != capacity[arc] - flow)
                    throw new InvalidOperationException($"arc {arc} of room {capacity[arc]} carries {flow}");
                balance[tail] -= flow;
                balance[head] += flow;
                if (isBefore[head] && !isBefore[tail])
                    cost = checked(cost + capacity[arc]);
            }

            if (!isBefore[target] || balance.Any(left => left < 0) || balance[target] != cost)
                throw new InvalidOperationException($"a flow of {balance[target]} does not prove a cut of {cost}");
            return cost;
        }

        /// <summary>The fewest arcs with room from each node to the target; <c>nodeCount</c> where there is no way. Lists the active nodes anew.</summary>
        private void FindHeights()
        {
            relabels = 0;
            Array.Fill(height, nodeCount);
            height[target] = 0;
            var queue = new Queue<int>();
            queue.Enqueue(target);
            while (queue.TryDequeue(out int node))
            {
                for (int place = arcs.First[node]; place < arcs.First[node + 1]; place++)
                {
                    int other = arcs.Target[place];
                    if (height[other] < nodeCount || other == target || room[arcs.Joint[place] ^ 1] == 0)
                        continue;
                    height[other] = height[node] + 1;
                    queue.Enqueue(other);
                }
            }

            highest = -1;
            Array.Fill(firstActive, -1);
            Array.Fill(firstAt, -1);
            top = 0;
            for (int node = 0; node < nodeCount; node++)
            {
                Stand(node);
                current[node] = arcs.First[node];
                if (node != target && excess[node] > 0)
                    Activate(node);
            }
        }

        private void Activate(int node)
        {
            int level = height[node];
            if (level >= nodeCount)
                return;
            nextActive[node] = firstActive[level];
            firstActive[level] = node;
            highest = Math.Max(highest, level);
        }

        /// <summary>Pushes on what a node holds, raising it where it must be, until it holds nothing or has no way left.</summary>
        private void Discharge(int node)
        {
            while (excess[node] > 0 && height[node] < nodeCount)
            {
                if (current[node] == arcs.First[node + 1])
                {
                    Raise(node);
                    continue;
                }

                int place = current[node];
                if (room[arcs.Joint[place]] > 0 && height[node] == height[arcs.Target[place]] + 1)
                    Push(node, arcs.Joint[place]);
                else
                    current[node]++;
            }
        }

        private void Push(int node, int arc)
        {
            int other = end[arc];
            long amount = Math.Min(excess[node], room[arc]);
            bool wasIdle = excess[other] == 0;
            room[arc] -= amount;
            room[arc ^ 1] += amount;
            excess[node] -= amount;
            excess[other] += amount;
            if (wasIdle && other != target)
                Activate(other);
        }

        private void Raise(int node)
        {
            relabels++;
            int lowest = nodeCount;
            for (int place = arcs.First[node]; place < arcs.First[node + 1]; place++)
            {
                if (room[arcs.Joint[place]] > 0)
                    lowest = Math.Min(lowest, height[arcs.Target[place]] + 1);
            }

            int before = height[node];
            Leave(node);
            // Every step down is by one, so nothing gets past a height at which nobody stands: what stands above it has no way left, nor has this node.
            bool isGap = firstAt[before] < 0;
            height[node] = isGap ? nodeCount : lowest;
            current[node] = arcs.First[node];
            Stand(node);
            if (isGap)
                GiveUpAbove(before);
        }

        private void GiveUpAbove(int level)
        {
            for (int above = level + 1; above <= top; above++)
            {
                for (int node = firstAt[above]; node >= 0; node = nextAt[node])
                    height[node] = nodeCount;
                firstAt[above] = -1;
                firstActive[above] = -1;
            }

            top = level;
            highest = Math.Min(highest, level);
        }

        private void Stand(int node)
        {
            int level = height[node];
            if (level >= nodeCount)
                return;
            top = Math.Max(top, level);
            nextAt[node] = firstAt[level];
            previousAt[node] = -1;
            if (firstAt[level] >= 0)
                previousAt[firstAt[level]] = node;
            firstAt[level] = node;
        }

        private void Leave(int node)
        {
            if (previousAt[node] >= 0)
                nextAt[previousAt[node]] = nextAt[node];
            else
                firstAt[height[node]] = nextAt[node];
            if (nextAt[node] >= 0)
                previousAt[nextAt[node]] = previousAt[node];
        }
    }
}
