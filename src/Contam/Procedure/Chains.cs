namespace Contam.Procedure;

/// <summary>
/// How long the chains before and after each job are, hands not counted: the critical path method (Kelley and Walker, "Critical-path planning and
/// scheduling", Eastern Joint Computer Conference, 1959). Linear.
/// </summary>
/// <param name="Head">The earliest start of each job.</param>
/// <param name="Tail">The longest chain that begins with each job, its own minutes counted.</param>
internal sealed record Chains(double[] Head, double[] Tail)
{
    public static Chains Of(JobGraph graph)
    {
        int[] order = graph.InOrder();
        var head = new double[order.Length];
        var tail = new double[order.Length];
        foreach (int job in order)
        {
            foreach (int next in graph.After(job))
                head[next] = Math.Max(head[next], head[job] + graph.Jobs[job].Minutes);
        }

        foreach (int job in order.Reverse())
        {
            double longest = 0;
            foreach (int next in graph.After(job))
                longest = Math.Max(longest, tail[next]);
            tail[job] = longest + graph.Jobs[job].Minutes;
        }

        return new Chains(head, tail);
    }

    /// <summary>The longest chain of all: no number of hands can end sooner. Looked for once, for it is asked for every job.</summary>
    public double Longest { get; } = Tail.Length == 0 ? 0 : Tail.Max();
}
