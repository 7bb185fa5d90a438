using Contam.Families;

namespace Contam.Procedure;

/// <summary>The jobs of a procedure in the order of a bench, like parts in one job, with times.</summary>
internal static class BenchSchedule
{
    private const double Rounding = 1e-6;

    /// <summary>
    /// The jobs, numbered in the order in which they are worked, with the serial schedule in which each is placed in that order as early as it can be; and how
    /// long the shortest schedule took that was found when the phases are left free.
    /// </summary>
    /// <param name="request">What the procedure is made from.</param>
    /// <param name="draft">Its jobs.</param>
    /// <param name="bearing">Which part stands where.</param>
    /// <param name="technicians">At least 1.</param>
    /// <param name="takesFirst">Whether nothing is searched: then the bench's own time stands for the free one.</param>
    public static (JobGraph Graph, Schedule Schedule, double Free) Of(ProcedureRequest request, ProcedureDraft draft, Bearing bearing, int technicians, bool takesFirst)
    {
        int[] places = PlacesOf(request.Family, draft.Graph);
        var like = new LikeWork(request, draft, bearing);
        (JobGraph Graph, Schedule Schedule) best = For(request.Family, draft.Graph, places, like, takesFirst ? technicians : 1);
        // An order for fewer hands serves more hands too; beginning there keeps one more technician from ever making it longer.
        double longest = Chains.Of(draft.Graph).Longest;
        for (int hands = 2; !takesFirst && hands <= technicians && best.Schedule.Elapsed > longest + Rounding; hands++)
        {
            (JobGraph Graph, Schedule Schedule) withMore = For(request.Family, draft.Graph, places, like, hands);
            if (withMore.Schedule.Elapsed < best.Schedule.Elapsed - Rounding)
                best = withMore;
        }

        double free = takesFirst ? best.Schedule.Elapsed : Math.Min(best.Schedule.Elapsed, Scheduling.Best(draft.Graph, technicians, places).Elapsed);
        return (best.Graph, best.Schedule with { Technicians = technicians }, free);
    }

    private static (JobGraph Graph, Schedule Schedule) For(Family family, JobGraph graph, int[] places, LikeWork like, int technicians)
    {
        int[] order = BenchOrder.Of(graph, new BenchRanks(graph, places), technicians, like.KeyOf);
        JobGraph merged = StepMerging.Merge(graph, order, like.WordedKeyOf, family.IndexOf);
        var scheduler = new SerialScheduler(merged, technicians);
        return (merged, scheduler.ToSchedule(scheduler.Forward([.. merged.Jobs.Select(job => (double)-job.Id)])));
    }

    /// <summary>For each job a number by which ties are decided: circuit and flow order of its part, then file order.</summary>
    public static int[] PlacesOf(Family family, JobGraph graph)
    {
        var placeOf = new Dictionary<PartId, int>();
        foreach (PartId part in family.Circuits.SelectMany(circuit => circuit.Parts).Concat(family.Parts.Select(part => part.Id)))
            placeOf.TryAdd(part, placeOf.Count);
        // Before anything is opened the failure itself is looked at first, in the order in which the looks were asked for.
        return [.. graph.Jobs.Select(job => (job.Phase != Phase.Confirm || job.About is not null) && job.At is [var first, ..] ? placeOf[first.Id] + 1 : 0)];
    }
}
