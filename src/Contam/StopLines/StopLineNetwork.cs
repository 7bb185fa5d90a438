using Contam.Graphs;

namespace Contam.StopLines;

/// <summary>
/// The stop line as a cheapest cut, seen upstream: every part that may be spared holds the minutes of its treatment and sends them towards the failure, over joints that let any amount on and
/// through parts that let on no more than a look there costs. Where more comes together than a look costs, the look is the cheaper; where less, the treatments are.
/// <para>
/// A part that cannot be looked at is one node. One that can is two, joined by the look; its own treatment lies on the far side, because its own clean finding spares it too. A failed part and a part
/// where debris was found are the target itself, so no look stands before them. A critical part holds nothing — its treatment is no choice — but passes on what comes.
/// </para>
/// </summary>
internal sealed class StopLineNetwork
{
    private const int Failure = 0;

    private readonly StopLineToday today;
    private readonly PushRelabelMaxFlow flow;
    private readonly int[] arriving;
    private readonly int[] leaving;

    private StopLineNetwork(StopLineToday today, PushRelabelMaxFlow flow, int[] arriving, int[] leaving)
    {
        this.today = today;
        this.flow = flow;
        this.arriving = arriving;
        this.leaving = leaving;
    }

    public static StopLineNetwork Of(StopLineToday today, StopLineCosts costs)
    {
        int count = today.Family.Parts.Length;
        var arriving = new int[count];
        var leaving = new int[count];
        int nodes = 1;
        int looks = 0;
        for (int vertex = 0; vertex < count; vertex++)
        {
            if (today.IsSource[vertex] || !today.IsOpen(vertex))
                continue;
            arriving[vertex] = nodes++;
            leaving[vertex] = today.CanLook[vertex] ? nodes++ : arriving[vertex];
            looks += today.CanLook[vertex] ? 1 : 0;
        }

        // One more than there are looks to a tenth of a minute, and one for each look: so of choices that cost the same, the one of fewest looks is cheapest.
        long scale = looks + 1L;
        var flow = new PushRelabelMaxFlow(nodes, Failure);
        for (int vertex = 0; vertex < count; vertex++)
        {
            if (!today.IsOpen(vertex))
                continue;
            if (leaving[vertex] != arriving[vertex])
                flow.AddArc(leaving[vertex], arriving[vertex], checked((costs.Look(vertex) * scale) + 1));
            if (!today.IsTreatedAnyway(vertex))
                flow.AddSupply(leaving[vertex], checked(costs.Treatment[vertex] * scale));
            for (int place = today.Joints.First[vertex]; place < today.Joints.First[vertex + 1]; place++)
            {
                int next = today.Joints.Target[place];
                if (next != vertex && !today.IsSource[next] && today.Carries(vertex, next))
                    flow.AddArc(arriving[next], leaving[vertex], PushRelabelMaxFlow.Unlimited);
            }
        }

        return new StopLineNetwork(today, flow, arriving, leaving);
    }

    /// <summary>Where to look, rising.</summary>
    public SortedSet<int> CheapestLooks()
    {
        bool[] isBefore = flow.Cut().IsBefore;
        return [.. Enumerable.Range(0, arriving.Length).Where(vertex => today.IsOpen(vertex) && isBefore[arriving[vertex]] && !isBefore[leaving[vertex]])];
    }
}
